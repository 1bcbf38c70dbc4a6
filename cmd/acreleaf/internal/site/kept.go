package site

import (
	"io/fs"
	"maps"
	"reflect"
	"slices"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// What a press may keep of the one before it, and when. Each thing that is kept is held against all that it was made
// from; what was kept through a press that stopped at a fault is no exception.

// stale says whether a file may have changed since it was read.
func (p *press) stale(name string) bool { return p.lookAll() || p.changed[name] }

// lookAll says whether names do not tell all that may have changed.
func (p *press) lookAll() bool {
	return p.before == nil || p.changes.Everything || p.before.listing.unsure
}

// keepCopies takes over the files that were read, but for those that may have changed.
func (p *press) keepCopies() {
	if p.before != nil && !p.lookAll() {
		p.kept = maps.Clone(p.before.kept)
		maps.DeleteFunc(p.kept, func(name string, _ []byte) bool { return p.changed[name] })
	}
}

// mustWalk says whether the folder has to be walked again. If not, only files changed that were there and still are.
func (p *press) mustWalk() bool {
	if p.lookAll() {
		return true
	}
	return slices.ContainsFunc(p.changes.Names, func(name string) bool {
		info, err := fs.Lstat(p.options.Content, name)
		there := err == nil && info.Mode().IsRegular()
		known := p.before.listing.known[name]
		return there != known || err == nil && !there || !known && p.before.listing.isFolder(name)
	})
}

// keptDraft is the draft that the press before had of a page; nil for none that could be kept.
func (p *press) keptDraft(name string) *draft {
	if p.before == nil || !slices.Equal(p.before.site.Languages, p.site.Languages) {
		return nil
	}
	return p.before.index[name]
}

// findSameTree says whether the same files are there as before, and the same pages among them could be read.
func (p *press) findSameTree() bool {
	if p.before == nil || p.listing != p.before.listing && !p.listing.same(p.before.listing) {
		return false
	}
	for name, d := range p.index {
		if before := p.before.index[name]; before != d && before.faulty != d.faulty {
			return false
		}
	}
	return true
}

// sameSettings says whether site.yaml and sources.yaml are as before.
func (p *press) sameSettings() bool {
	return p.before != nil && p.siteFile == p.before.siteFile && p.sourcesFile == p.before.sourcesFile
}

// sameCatalogue says whether the calculations of the site are those from before.
func (p *press) sameCatalogue() bool {
	return p.before != nil && slices.Equal(p.added, p.before.added) && slices.Equal(p.unmade, p.before.unmade)
}

// keepReferences takes over the sources that did not change, so that the pages that rest on them can tell.
func (p *press) keepReferences() {
	p.references = make(map[string]*config.Reference, len(p.sources))
	for id, r := range p.sources {
		p.references[id] = &r
		if p.before == nil {
			continue
		}
		if before := p.before.references[id]; before != nil && sameReference(*before, r) {
			p.references[id] = before
		}
	}
}

// sameReference says whether two sources read the same, wherever they stand in the file.
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
