package output

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
)

// The calls that change the disk of memory.

func (m *memory) Real(name string) (string, error) { return name, nil }

func (m *memory) Writable(name string) error {
	end, err := m.begin("access", name)
	defer end()
	return err
}

func (m *memory) Create(name string, content []byte) error {
	end, err := m.begin("create", name)
	defer end()
	if err != nil && (m.calls != m.failAt || m.fail.part == nil) {
		return err
	}
	if failing := err; failing != nil {
		content = m.fail.part(content)
		err = failing
	}
	if taken := m.free("create", name); taken != nil {
		return taken
	}
	m.change()
	m.names[name] = &node{content: slices.Clone(content)}
	return err
}

func (m *memory) Link(from, to string) error {
	end, err := m.begin("link", to)
	defer end()
	if err != nil {
		return err
	}
	n, err := m.find("link", from)
	if err == nil {
		err = m.free("link", to)
	}
	if err == nil && m.lacks.links {
		err = wrong("link", to, syscall.EPERM)
	}
	if err == nil {
		m.change()
		m.names[to] = n
	}
	return err
}

func (m *memory) Mkdir(name string) error {
	end, err := m.begin("mkdir", name)
	defer end()
	if err == nil {
		err = m.free("mkdir", name)
	}
	if err == nil {
		m.change()
		m.names[name] = &node{dir: true}
	}
	return err
}

func (m *memory) Twin(name, _ string) error { return m.Mkdir(name) }

func (m *memory) Rename(from, to string) error {
	end, err := m.begin("rename", to)
	defer end()
	if err != nil {
		return err
	}
	n, err := m.find("rename", from)
	if err != nil {
		return err
	}
	if err := m.parent("rename", to); err != nil {
		return err
	}
	switch there := m.names[to]; {
	case there == nil:
	case there.dir != n.dir:
		return wrong("rename", to, syscall.EISDIR)
	case there.dir && len(m.below(to)) > 0:
		return wrong("rename", to, syscall.ENOTEMPTY)
	}
	m.change()
	m.move(from, to)
	return nil
}

func (m *memory) move(from, to string) {
	for _, name := range append(m.below(from), from) {
		n := m.names[name]
		delete(m.names, name)
		m.names[to+strings.TrimPrefix(name, from)] = n
	}
}

func (m *memory) Exchange(a, b string) error {
	end, err := m.begin("exchange", a)
	defer end()
	if err != nil {
		return err
	}
	if m.lacks.exchange {
		return wrong("exchange", a, errors.ErrUnsupported)
	}
	if m.names[a] == nil || m.names[b] == nil {
		return wrong("exchange", a, syscall.ENOENT)
	}
	m.change()
	const between = "/between"
	m.move(a, between)
	m.move(b, a)
	m.move(between, b)
	return nil
}

func (m *memory) Remove(name string) error {
	end, err := m.begin("remove", name)
	defer end()
	if err != nil {
		return err
	}
	if _, err := m.find("remove", name); err != nil {
		return err
	}
	if len(m.below(name)) > 0 {
		return wrong("remove", name, syscall.ENOTEMPTY)
	}
	m.change()
	delete(m.names, name)
	return nil
}

// Flush makes the bytes of the files last, and with a folder in it all names so far: a journal is flushed as a whole.
func (m *memory) Flush(names []string) error {
	end, err := m.begin("flush", names[0])
	defer end()
	if err != nil {
		return err
	}
	for _, name := range names {
		n, err := m.find("flush", name)
		if err != nil {
			return err
		}
		n.flushed = true
		if n.dir {
			m.states = nil
		}
	}
	return nil
}

// Lock makes the file as the system's lock does; it is free when the program has ended.
func (m *memory) Lock(name string) (func(), error) {
	end, err := m.begin("lock", name)
	defer end()
	if err != nil {
		return nil, err
	}
	if err := m.parent("lock", filepath.Clean(name)); err != nil {
		return nil, err
	}
	m.change()
	m.names[name] = &node{}
	return func() { _ = m.Remove(name) }, nil
}
