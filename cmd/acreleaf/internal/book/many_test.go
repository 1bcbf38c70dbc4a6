package book

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"sync"
	"testing"
	"testing/fstest"
)

// counted is a content folder that counts how often files are opened, by their endings.
type counted struct {
	fstest.MapFS
	one    *sync.Mutex
	opened map[string]int
}

func (c counted) Open(name string) (fs.File, error) {
	c.one.Lock()
	c.opened[path.Ext(name)]++
	c.one.Unlock()
	return c.MapFS.Open(name)
}

func (c counted) Stat(name string) (fs.FileInfo, error) { return c.MapFS.Stat(name) }

// A hundred thousand files beside the pages change nothing of what is made. Those that no page can show are not opened,
// and each of the others once, for the mark.
func TestAHundredThousandFilesBesideThePages(t *testing.T) {
	const folders, each = 20, 2500
	files := content(map[string]string{"a": guide("A", 1, "[B](b.md)"), "b": guide("B", 2, "Text.")})
	want, messages := pressed(Options{Content: files, Name: "content"}, newPlain)
	if len(messages) > 0 || len(want) < 4 {
		t.Fatalf("%v, %d files", messages, len(want))
	}
	file := &fstest.MapFile{Data: []byte("A row.")}
	for folder := range folders {
		for n := range each {
			files[fmt.Sprintf("kept/%d/%d.csv", folder, n)] = file
			files[fmt.Sprintf("kept/%d/%d.orig", folder, n)] = file
		}
	}
	c := counted{files, new(sync.Mutex), map[string]int{}}
	mark := MarkOf(Options{Content: c, Name: "content"})
	got, messages := pressed(mark.Options, newPlain)
	if changed := mark.Changed(); mark.Hash == "" || len(messages)+len(changed) > 0 {
		t.Errorf("the mark is %q, %v, changed: %v", mark.Hash, messages, changed)
	}
	if !maps.Equal(got, want) {
		t.Errorf("%d files are made, and %d without the others", len(got), len(want))
	}
	if c.opened[".csv"] != folders*each || c.opened[".orig"] > 0 {
		t.Errorf("opened: %v", c.opened)
	}
}
