package output

import (
	"fmt"
	"strings"
	"sync"
	"testing"
)

// Two presses into one folder at a time: one may fail, but no page may hold another page's bytes, and a press after
// them puts all in order.
func TestTwoPressesAtATime(t *testing.T) {
	dir := t.TempDir()
	version := func(v int) []File {
		var files []File
		for i := range 30 {
			name := fmt.Sprintf("guides/%d/index.html", i)
			files = append(files, File{name, fmt.Appendf(nil, "%s, version %d", name, v)})
		}
		return files
	}
	write(t, dir, version(0))
	for round := range 5 {
		var wait sync.WaitGroup
		for press := range 2 {
			wait.Go(func() { _, _ = Write(dir, version(2*round+press), Mark{}) })
		}
		wait.Wait()
		for name, content := range readTree(t, dir).withoutList() {
			if !strings.HasSuffix(name, "/") && !strings.HasPrefix(name, stagingName) &&
				!strings.HasPrefix(content, name+", version ") {
				t.Fatalf("%s holds %q", name, content)
			}
		}
	}
	write(t, dir, version(100))
	for name, content := range readTree(t, dir).withoutList() {
		if !strings.HasSuffix(name, "/") && content != name+", version 100" {
			t.Errorf("%s holds %q", name, content)
		}
	}
}
