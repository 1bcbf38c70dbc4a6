//go:build unix

package folder

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

// TestOnlyPlainFiles opens what would wait, what has no end and what lies outside.
func TestOnlyPlainFiles(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	must(syscall.Mkfifo(at("pipe"), 0o644))
	must(os.WriteFile(at("file"), []byte("text"), 0o644))
	must(os.Symlink("pipe", at("to-pipe")))
	must(os.Symlink("file", at("to-file")))
	must(os.Symlink("/dev/zero", at("to-device")))
	must(os.Symlink("../", at("to-outside")))
	folder, err := Open(dir)
	must(err)
	t.Cleanup(func() { must(folder.Close()) })
	for name, plain := range map[string]bool{"file": true, "to-file": true, ".": true, "pipe": false, "to-pipe": false,
		"to-device": false, "to-outside": false, "none": false} {
		file, err := folder.Open(name)
		if (err == nil) != plain {
			t.Errorf("%s: %v", name, err)
		}
		var not message.NotPlain
		if (name == "pipe" || name == "to-pipe") && !errors.As(err, &not) {
			t.Errorf("%s: %v does not say what it is", name, err)
		}
		if err == nil {
			must(file.Close())
		}
	}
}
