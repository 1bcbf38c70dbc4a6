package book

import (
	"io/fs"
	"reflect"
	"slices"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// What a press takes over from the one before it because files are the same. What is worked from them is kept by what
// it was worked from (package memo), through a press that stopped at a fault too.

// changes are what may have changed since the press before.
type changes struct {
	all   bool // whatever names tell
	names map[string]bool
}

// since gives the changes since a press.
func (c Changes) since(last *press) changes {
	since := changes{all: c.Everything || last.listing.unsure, names: map[string]bool{}}
	for _, name := range c.Names {
		since.names[name] = true
	}
	return since
}

// stale says whether a file may have changed since it was read.
func (c changes) stale(name string) bool { return c.all || c.names[name] }

// mustWalk says whether the folder has to be walked again. If not, only files changed that were there and still are.
func (c changes) mustWalk(content fs.FS, before *listing) bool {
	if c.all {
		return true
	}
	for name := range c.names {
		info, err := fs.Lstat(content, name)
		there := err == nil && info.Mode().IsRegular()
		known := before.known[name]
		if there != known || err == nil && !there || !known && before.isFolder(name) {
			return true
		}
	}
	return false
}

// keptDrafts are the drafts that the press before had of the pages, in their order. They are nil for pages without, and
// all of them when the languages that they were read for are others now.
func keptDrafts(l *loaded, before *library) []*draft {
	switch {
	case before == nil || !slices.Equal(before.languages, l.languages):
		return make([]*draft, len(l.listing.pages))
	case l.listing == before.listing:
		return before.walked
	}
	kept := make([]*draft, len(l.listing.pages))
	for i, name := range l.listing.pages {
		kept[i] = before.index[name]
	}
	return kept
}

// keepReferences takes over the sources that did not change, so that the pages that rest on them can tell.
func (l *loaded) keepReferences(before *loaded) {
	l.references = make(map[string]*config.Reference, len(l.Sources))
	for id, r := range l.Sources {
		l.references[id] = &r
		if before := before.references[id]; before != nil && sameReference(*before, r) {
			l.references[id] = before
		}
	}
}

// sameReference says whether two sources read the same, wherever they are in the file.
func sameReference(a, b config.Reference) bool {
	return reflect.DeepEqual(withoutPlaces(a), withoutPlaces(b))
}

func withoutPlaces(r config.Reference) config.Reference {
	r.Span = message.Span{}
	r.Figures = slices.Clone(r.Figures)
	for i := range r.Figures {
		r.Figures[i].Span, r.Figures[i].ForSpan = message.Span{}, message.Span{}
	}
	return r
}
