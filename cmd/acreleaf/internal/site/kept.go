package site

import (
	"io/fs"
	"maps"
	"reflect"
	"slices"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// What a press may keep of the one before it, and when. Each thing that is kept is compared with all that it was made
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
		p.copied = maps.Clone(p.before.copied)
		maps.DeleteFunc(p.copied, func(name string, _ []byte) bool { return p.changed[name] })
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

// keptDrafts are the drafts that the press before had of the pages, in their order. They are nil for pages without, and
// all of them when the languages that they were read for are others now.
func (p *press) keptDrafts() []*draft {
	switch {
	case p.before == nil || !slices.Equal(p.before.languages, p.languages):
		return make([]*draft, len(p.listing.pages))
	case p.listing == p.before.listing:
		return p.before.walked
	}
	kept := make([]*draft, len(p.listing.pages))
	for i, name := range p.listing.pages {
		kept[i] = p.before.index[name]
	}
	return kept
}

// indexPages finds the pages by name and by address, and sees whether the same files are there as before and the same
// pages among them could be read. Each name has an address of its own (page.Address).
func (p *press) indexPages() {
	p.sameTree = p.before != nil && p.listing.same(p.before.listing)
	for i, d := range p.walked {
		if kept := p.kept[i]; d != kept {
			p.fresh = append(p.fresh, i)
			p.sameTree = p.sameTree && kept != nil && kept.faulty == d.faulty
		}
	}
	if p.sameTree {
		p.index, p.byAddress = p.before.index, p.before.byAddress // that press is over
		for _, i := range p.fresh {
			p.enter(p.walked[i])
		}
		return
	}
	p.index = make(map[string]*draft, len(p.walked))
	p.byAddress = make(map[page.Address]*draft, len(p.walked))
	for _, d := range p.walked {
		p.enter(d)
	}
}

func (p *press) enter(d *draft) {
	p.index[d.name] = d
	if !d.faulty {
		p.byAddress[d.address] = d
	}
}

// keepOrder takes over the order of the season, if no page may have left its place in it.
func (p *press) keepOrder() bool {
	if !p.sameTree {
		return false
	}
	for _, i := range p.fresh {
		if inSeason(p.walked[i], p.kept[i]) != 0 {
			return false
		}
	}
	p.pages = slices.Clone(p.before.pages)
	for _, i := range p.fresh {
		p.walked[i].rank = p.kept[i].rank
		p.pages[p.kept[i].rank] = p.walked[i]
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
