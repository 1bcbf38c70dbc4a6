package output

import (
	"errors"
	"io/fs"
	"maps"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"syscall"
	"time"
)

// memory is a disk of a test's own, with the habits of a file system with a journal: names outlast a power cut in the
// order in which they were changed, the bytes of a file only when they were flushed. It remembers each state of its
// names since the last flush.
//
// Calls are numbered from 1 on. Call number failAt fails in a way of the test's; from call number stopAt on nothing is
// done any more, as when the program was killed.
type memory struct {
	mutex  sync.Mutex
	names  map[string]*node // by slash path
	states []map[string]*node
	calls  int
	failAt int
	fail   failure
	stopAt int
	failed bool
	lacks  lacks
	before func(call int, name string) // is called before each call is done
}

// A node is a file or a folder. Two names may lead to one file.
type node struct {
	dir     bool
	content []byte
	flushed bool
}

// A failure is how a call fails. A file that was being written stays, with the part of its bytes.
type failure struct {
	err  error
	part func(content []byte) []byte // nil: the file is not made
}

// lacks is what a file system cannot do.
type lacks struct{ links, exchange bool }

var errStopped = errors.New("the program was stopped")

func newMemory(files tree) *memory {
	m := &memory{names: map[string]*node{"/": {dir: true}, "/office": {dir: true}}}
	m.plant(files)
	return m
}

// plant adds files by hand, flushed.
func (m *memory) plant(files tree) {
	for name, content := range files {
		full := "/office/" + name
		for above := filepath.Dir(full); m.names[above] == nil; above = filepath.Dir(above) {
			m.names[above] = &node{dir: true}
		}
		m.names[full] = &node{content: []byte(content), flushed: true}
	}
	m.states = nil
}

// tree is what is below a folder.
func (m *memory) tree(folder string) tree {
	files := tree{}
	for name, n := range m.names {
		inside, below := strings.CutPrefix(name, folder+"/")
		switch {
		case !below:
		case n.dir:
			files[inside+"/"] = ""
		default:
			files[inside] = string(n.content)
		}
	}
	return files
}

func (m *memory) clone() *memory {
	copied := map[*node]*node{}
	c := &memory{names: map[string]*node{}, lacks: m.lacks}
	take := func(names map[string]*node) map[string]*node {
		state := map[string]*node{}
		for name, n := range names {
			if copied[n] == nil {
				copied[n] = &node{n.dir, slices.Clone(n.content), n.flushed}
			}
			state[name] = copied[n]
		}
		return state
	}
	c.names = take(m.names)
	for _, state := range m.states {
		c.states = append(c.states, take(state))
	}
	return c
}

// cutPower gives the disk after a power cut: the names are those of a state since the last flush, and what was not
// flushed of the bytes is lost, or is other bytes.
func (m *memory) cutPower(state int, garbled bool, random *rand.Rand) *memory {
	c := m.clone()
	if state < len(c.states) {
		c.names = c.states[state]
	}
	c.states = nil
	for _, n := range c.names {
		if n.dir || n.flushed {
			continue
		}
		n.flushed = true
		if n.content = nil; garbled {
			n.content = make([]byte, random.IntN(80))
			for i := range n.content {
				n.content[i] = byte(random.Uint32())
			}
		}
	}
	return c
}

// call counts a call, and says whether it is to fail.
func (m *memory) call(op, name string) error {
	m.calls++
	switch {
	case m.stopAt > 0 && m.calls >= m.stopAt:
		return errStopped
	case m.calls == m.failAt:
		m.failed = true
		return &fs.PathError{Op: op, Path: name, Err: m.fail.err}
	}
	if m.before != nil {
		m.before(m.calls, name)
	}
	return nil
}

// change keeps the names as they are before they are changed.
func (m *memory) change() { m.states = append(m.states, maps.Clone(m.names)) }

func wrong(op, name string, err error) error { return &fs.PathError{Op: op, Path: name, Err: err} }

// parent gives why nothing can be at a path.
func (m *memory) parent(op, name string) error {
	for above := filepath.Dir(name); ; above = filepath.Dir(above) {
		n := m.names[above]
		switch {
		case n != nil && n.dir:
			if above != filepath.Dir(name) {
				return wrong(op, name, syscall.ENOENT)
			}
			return nil
		case n != nil:
			return wrong(op, name, syscall.ENOTDIR)
		}
	}
}

func (m *memory) find(op, name string) (*node, error) {
	if n := m.names[name]; n != nil {
		return n, nil
	}
	if err := m.parent(op, name); err != nil {
		return nil, err
	}
	return nil, wrong(op, name, syscall.ENOENT)
}

func (m *memory) free(op, name string) error {
	if m.names[name] != nil {
		return wrong(op, name, syscall.EEXIST)
	}
	return m.parent(op, name)
}

func (m *memory) below(folder string) []string {
	var names []string
	for name := range m.names {
		if strings.HasPrefix(name, folder+"/") {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// begin takes the disk for one call.
func (m *memory) begin(op, name string) (end func(), err error) {
	m.mutex.Lock()
	return m.mutex.Unlock, m.call(op, name)
}

func (m *memory) Lstat(name string) (fs.FileInfo, error) {
	end, err := m.begin("lstat", name)
	defer end()
	if err != nil {
		return nil, err
	}
	n, err := m.find("lstat", name)
	return look{name, n}, err
}

func (m *memory) ReadFile(name string) ([]byte, error) {
	end, err := m.begin("read", name)
	defer end()
	if err != nil {
		return nil, err
	}
	n, err := m.find("read", name)
	switch {
	case err != nil:
		return nil, err
	case n.dir:
		return nil, wrong("read", name, syscall.EISDIR)
	}
	return slices.Clone(n.content), nil
}

func (m *memory) ReadDir(name string) ([]fs.DirEntry, error) {
	end, err := m.begin("readdir", name)
	defer end()
	if err != nil {
		return nil, err
	}
	if _, err := m.find("readdir", name); err != nil {
		return nil, err
	}
	var entries []fs.DirEntry
	for _, inside := range m.below(name) {
		if filepath.Dir(inside) == name {
			entries = append(entries, fs.FileInfoToDirEntry(look{inside, m.names[inside]}))
		}
	}
	return entries, nil
}

// look is what is known of a node.
type look struct {
	name string
	*node
}

func (l look) Name() string { return filepath.Base(l.name) }
func (l look) Size() int64  { return int64(len(l.content)) }
func (l look) Mode() fs.FileMode {
	if l.dir {
		return fs.ModeDir | 0o755
	}
	return 0o644
}
func (l look) ModTime() time.Time { return time.Time{} }
func (l look) IsDir() bool        { return l.dir }
func (l look) Sys() any           { return nil }
