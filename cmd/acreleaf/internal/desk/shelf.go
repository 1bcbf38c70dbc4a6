package desk

import (
	"bytes"
	"slices"
	"sync"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// A shelf holds the last good site, and what is wrong with the one after it.
type shelf struct {
	mutex  sync.RWMutex
	files  map[string][]byte // nil until there has been a good one
	faults message.List
}

// put replaces the site and gives the paths that are new, changed or gone, sorted.
func (s *shelf) put(files []output.File) []string {
	next := make(map[string][]byte, len(files))
	for _, f := range files {
		next[f.Path] = f.Bytes
	}
	s.mutex.Lock()
	defer s.mutex.Unlock()
	var changed []string
	for path, content := range next {
		if before, there := s.files[path]; !there || !bytes.Equal(before, content) {
			changed = append(changed, path)
		}
	}
	for path := range s.files {
		if _, there := next[path]; !there {
			changed = append(changed, path)
		}
	}
	slices.Sort(changed)
	s.files, s.faults = next, nil
	return changed
}

func (s *shelf) blame(faults message.List) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	s.faults = faults
}

// faulty says whether something is wrong with the site after the last good one.
func (s *shelf) faulty() bool {
	s.mutex.RLock()
	defer s.mutex.RUnlock()
	return len(s.faults) > 0
}

// get gives a file of the last good site.
func (s *shelf) get(path string) (content []byte, there bool) {
	s.mutex.RLock()
	defer s.mutex.RUnlock()
	content, there = s.files[path]
	return content, there
}

// blank says whether there has not been a good site yet, and why.
func (s *shelf) blank() (message.List, bool) {
	s.mutex.RLock()
	defer s.mutex.RUnlock()
	return s.faults, s.files == nil
}
