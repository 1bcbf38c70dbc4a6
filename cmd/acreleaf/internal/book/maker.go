package book

import (
	"io/fs"

	"acreleaf/cmd/acreleaf/internal/message"
)

// A Maker makes the files of an edition again and again, and each time only what is no longer right. What it gives is
// byte for byte what Make gives. It is for one goroutine at a time.
type Maker struct {
	options Options
	new     New
	last    *press
}

// NewMaker prepares a maker. It makes everything the first time.
func NewMaker(o Options, edition New) *Maker { return &Maker{options: o, new: edition} }

// Made is a whole edition.
type Made struct {
	Files []File
	Pages int // how many pages there are that somebody wrote
}

// Changes say what in a content folder may have changed.
type Changes struct {
	Names      []string // slash paths of files that were saved, came or went
	Everything bool     // more may have changed than the names tell
}

// Make makes the edition as the function Make does.
func (m *Maker) Make(c Changes) (*Made, message.List) {
	p := newPress(m.options, m.new)
	p.out = new(taker)
	if m.last != nil {
		p.before, p.changes, p.whole = m.last, c.since(m.last), m.last.whole
		p.whole.forget(p.changes)
	}
	made, whole := p.make()
	p.before = nil // or every press would be kept for ever
	m.last = p
	if p.half {
		m.last = nil // what it keeps may be wrong
	}
	if !whole {
		return nil, p.messages
	}
	return &Made{Files: made, Pages: len(p.pages)}, p.messages
}

// Look makes the maker read from a content folder that was opened again. What it knows of the folder stays, so that
// changes have to be told of.
func (m *Maker) Look(content fs.FS) { m.options.Content = content }
