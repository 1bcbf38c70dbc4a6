// Package pressed reads a site that Acreleaf has pressed, as it lies on the disk: its pages, its assets, and the
// module that a page carries.
//
// The package owns where things are found in a pressed site. It must not know how a site is made.
package pressed

import (
	"bytes"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// A Site is the files of one pressed folder.
type Site struct {
	Dir   string
	Files []File // sorted by path
}

// A File is one file of a site.
type File struct {
	Path  string // slash-separated, within the site
	Bytes []byte
}

// Read reads every file below dir.
func Read(dir string) (Site, error) {
	site := Site{Dir: dir}
	err := filepath.WalkDir(dir, func(name string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		inside, err := filepath.Rel(dir, name)
		if err != nil {
			return err
		}
		text, err := os.ReadFile(name)
		site.Files = append(site.Files, File{Path: filepath.ToSlash(inside), Bytes: text})
		return err
	})
	if err == nil && len(site.Files) == 0 {
		err = fmt.Errorf("the pressed folder %s is empty", dir)
	}
	return site, err
}

// Ending gives the files whose names end so, such as ".css".
func (s Site) Ending(ending string) []File {
	var found []File
	for _, f := range s.Files {
		if strings.HasSuffix(f.Path, ending) {
			found = append(found, f)
		}
	}
	return found
}

// Guides gives the pages of the folder guides, in any language.
func (s Site) Guides() []File {
	var found []File
	for _, f := range s.Ending("/index.html") {
		if path.Base(path.Dir(path.Dir(f.Path))) == "guides" {
			found = append(found, f)
		}
	}
	return found
}

// Exercising gives the pages that have exercises.
func (s Site) Exercising() []File {
	var found []File
	for _, f := range s.Ending("/index.html") {
		if bytes.Contains(f.Bytes, []byte(" data-exercise=")) {
			found = append(found, f)
		}
	}
	return found
}

// Name is a short name for a page or asset: "guides/soil" for guides/soil/index.html.
func (f File) Name() string {
	return strings.TrimSuffix(f.Path, "/index.html")
}
