package desk

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"path"
	"slices"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A shelf has the last good site, and what is wrong with the one after it.
type shelf struct {
	mutex  sync.RWMutex
	files  map[string]book.File // nil until there has been a good one
	others string               // a hash of the files that are no pages
	faults message.List
}

// put replaces the site and gives how many files are new, changed or gone.
func (s *shelf) put(files []book.File) int {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	if s.files == nil {
		s.files = make(map[string]book.File, len(files))
	}
	s.faults = nil
	changed, others := 0, s.others == ""
	note := func(name string) {
		changed++
		others = others || path.Ext(name) != ".html"
	}
	for _, f := range files {
		if before, there := s.files[f.Path]; !there || before.Hash != f.Hash {
			note(f.Path)
		}
		s.files[f.Path] = f
	}
	if len(s.files) > len(files) {
		stay := make(map[string]bool, len(files))
		for _, f := range files {
			stay[f.Path] = true
		}
		for name := range s.files {
			if !stay[name] {
				note(name)
				delete(s.files, name)
			}
		}
	}
	if others {
		s.others = s.hashOthers()
	}
	return changed
}

// hashOthers hashes pictures, scripts and whatever else is no page.
func (s *shelf) hashOthers() string {
	var names []string
	for name := range s.files {
		if path.Ext(name) != ".html" {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	h := sha256.New()
	for _, name := range names {
		content := s.files[name].Bytes()
		fmt.Fprintf(h, "%q %d\n", name, len(content))
		h.Write(content)
	}
	return hex.EncodeToString(h.Sum(nil)[:8])
}

func (s *shelf) blame(faults message.List) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	s.faults = faults
}

// wrong is what is wrong with the site after the last good one.
func (s *shelf) wrong() message.List {
	s.mutex.RLock()
	defer s.mutex.RUnlock()
	return s.faults
}

// get gives a file of the last good site.
func (s *shelf) get(path string) (file book.File, there bool) {
	s.mutex.RLock()
	defer s.mutex.RUnlock()
	file, there = s.files[path]
	return file, there
}

// has says whether a file is part of the last good site.
func (s *shelf) has(path string) bool {
	_, there := s.get(path)
	return there
}

// blank says whether there has not been a good site yet, and why.
func (s *shelf) blank() (message.List, bool) {
	s.mutex.RLock()
	defer s.mutex.RUnlock()
	return s.faults, s.files == nil
}

// An answer is what the desk shows at a path.
type answer struct {
	name    string // the file; "" for the page that tells the faults
	content []byte
	hash    uint64 // of a file
	there   bool
}

// at gives what is at a path of the site: a file, the page of a folder, or the page for a missing address.
func (s *shelf) at(way string) answer {
	if faults, blank := s.blank(); blank {
		return answer{content: faultPage(faults)}
	}
	name := strings.TrimPrefix(way, "/")
	if name == "" || strings.HasSuffix(name, "/") {
		name += "index.html"
	}
	// A page is made for its bytes, and nobody who changes the shelf waits for that.
	if file, there := s.get(name); there {
		return answer{name, file.Bytes(), file.Hash, true}
	}
	var content []byte
	if missing, there := s.get(missingFile); there {
		// The page is served at any depth here, so its ways start at the root.
		content = bytes.Replace(missing.Bytes(), []byte("<head>"), []byte(`<head><base href="/">`), 1)
	}
	return answer{name: missingFile, content: content}
}

// mark is a short hash of a page as it is shown, a hyphen, and one of the pictures and the rest that are no pages.
func (s *shelf) mark(a answer) string {
	s.mutex.RLock()
	defer s.mutex.RUnlock()
	own := sha256.Sum256(a.content)
	return hex.EncodeToString(own[:8]) + "-" + s.others
}
