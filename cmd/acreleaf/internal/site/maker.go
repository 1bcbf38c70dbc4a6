package site

import (
	"io/fs"

	"acreleaf/cmd/acreleaf/internal/message"
)

// A Maker makes a site again and again, and each time only what is no longer right. What it gives is byte for byte what
// Make gives. It is for one goroutine at a time.
type Maker struct {
	options Options
	last    *press
}

// NewMaker prepares a maker. It makes everything the first time.
func NewMaker(o Options) *Maker { return &Maker{options: o} }

// Made is a finished site.
type Made struct {
	Files []File
	Pages int // how many of the files are pages that somebody wrote
}

// Changes say what in a content folder may have changed.
type Changes struct {
	Names      []string // slash paths of files that were saved, came or went
	Everything bool     // more may have changed than the names tell
}

// Make makes the site as the function Make does.
func (m *Maker) Make(c Changes) (*Made, message.List) {
	p := newPress(m.options)
	p.before, p.changes, p.changed = m.last, c, map[string]bool{}
	for _, name := range c.Names {
		p.changed[name] = true
	}
	if m.last != nil {
		p.outlines, p.common = m.last.outlines, m.last.common // a press that stops at a fault makes none
	}
	whole := p.make()
	p.before, p.kept = nil, nil // or every press would be kept for ever
	m.last = p
	if !whole {
		return nil, p.messages
	}
	return &Made{Files: p.files, Pages: len(p.pages)}, p.messages
}

// Look makes the maker read from a content folder that was opened again. What it knows of the folder stays, so that
// changes have to be told of.
func (m *Maker) Look(content fs.FS) { m.options.Content = content }
