package output

import (
	"os"
	"path/filepath"
	"testing"
)

// A site is current only while every file that was written stands as it was, and it was made from the same.
func TestCurrentIsOnlyAWholeSite(t *testing.T) {
	mark := Mark{From: "ab12", Pages: 2}
	for name, spoil := range map[string]func(dir string) error{
		"": func(string) error { return nil },
		"a page edited, with its size and time": func(dir string) error {
			page := filepath.Join(dir, "index.html")
			info, err := os.Stat(page)
			if err == nil {
				err = os.WriteFile(page, []byte("hame"), 0o644)
			}
			if err == nil {
				err = os.Chtimes(page, info.ModTime(), info.ModTime())
			}
			return err
		},
		"a page removed":       func(dir string) error { return os.Remove(filepath.Join(dir, "index.html")) },
		"the list removed":     func(dir string) error { return os.Remove(filepath.Join(dir, manifestName)) },
		"a press that was cut": func(dir string) error { return os.Mkdir(filepath.Join(dir, stagingName), 0o755) },
		"a folder for a page":  func(dir string) error { return swap(filepath.Join(dir, "index.html")) },
		"the list of an old one": func(dir string) error {
			return os.WriteFile(filepath.Join(dir, manifestName), nil, 0o644)
		},
	} {
		dir := filepath.Join(t.TempDir(), "public")
		if _, err := Write(dir, pages("index.html", "home", "guides/soil/index.html", "soil"), mark); err != nil {
			t.Fatal(err)
		}
		if err := spoil(dir); err != nil {
			t.Fatal(err)
		}
		report, found, current := Current(dir, mark.From)
		if current != (name == "") || current && (report.Unchanged != 2 || found != mark) {
			t.Errorf("after %q the site is current: %v, %+v, %+v", name, current, report, found)
		}
		if _, _, other := Current(dir, "cd34"); other {
			t.Errorf("after %q the site is current for another content", name)
		}
	}
}

func swap(name string) error {
	if err := os.Remove(name); err != nil {
		return err
	}
	return os.Mkdir(name, 0o755)
}

// A site whose press had something to say has no mark, so that the next one says it again.
func TestASiteWithoutAMarkIsNeverCurrent(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	if _, err := Write(dir, pages("index.html", "home"), Mark{}); err != nil {
		t.Fatal(err)
	}
	if _, _, current := Current(dir, ""); current {
		t.Error("it is")
	}
}
