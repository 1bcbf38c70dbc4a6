package book

import (
	"bytes"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// A library is what Read gives: the pages, in their orders and by their names.
type library struct {
	*loaded
	walked   []*draft // as the folder is walked
	pages    []*draft // in the order of the season
	index    map[string]*draft
	kept     []*draft // what the run before had in the places of walked
	fresh    []int    // the places where that is not the same
	sameTree bool     // the files, and the addresses of the pages, are those of the run before
	said     message.List
}

// read reads every page. A worksheet may use a calculation of any page, so that all those are read before any is bound;
// and a page can be linked to from any other, so that all names are known before.
func read(l *loaded, before *library, c changes) *library {
	b := &library{loaded: l, kept: keptDrafts(l, before)}
	b.walked = make([]*draft, len(l.listing.pages))
	each(len(b.walked), func(i int) { b.walked[i] = l.readPage(l.listing.pages[i], b.kept[i], c) })
	b.indexPages(before)
	b.orderSeason(before)
	b.joinTranslations()
	return b
}

// readPage reads the text of a page, or takes over the draft that the press before had of it.
func (l *loaded) readPage(name string, before *draft, c changes) *draft {
	if before != nil && before.failed {
		before = nil // what it failed on need not be in the page
	}
	if before != nil && !c.stale(name) {
		return before
	}
	d := &draft{name: name}
	d.source, d.said.reading = page.Load(l.options.Content, d.name)
	d.source.Name = l.options.called(d.name)
	if message.HasFault(d.said.reading) {
		d.faulty = true
		return d
	}
	if before != nil && !before.faulty && bytes.Equal(before.source.Text, d.source.Text) {
		return before
	}
	d.guarded(func() {
		l.readHead(d)
		if opensCalculation(d.source.Text) {
			d.parse()
		}
	})
	return d
}

// reload reads the text of a page again that was let go, so that a message can show the line.
func (l *loaded) reload(d *draft) {
	if d.source.Text == nil {
		again, _ := page.Load(l.options.Content, d.name) // it could be read before
		d.source.Text = again.Text
	}
}

// readHead reads what is above the text of a page.
func (l *loaded) readHead(d *draft) {
	metadata, start, messages := page.Split(d.source)
	d.metadata, d.start = metadata, start
	main := ""
	if len(l.languages) > 0 {
		main = l.languages[0]
	}
	address, err := page.AddressOf(d.name, metadata, main)
	if err != nil {
		d.said.reading = append(d.said.reading, badAddress(d, err))
	}
	d.address = address
	d.said.reading = append(d.said.reading, messages...)
	if l.languages != nil {
		d.said.reading = append(d.said.reading, page.CheckLanguage(d.source, metadata, l.languages)...)
	}
}

func badAddress(d *draft, err error) message.Message {
	m := message.Message{ID: "page-name", Source: d.source, Text: err.Error()}
	if named, ok := err.(*page.AddressError); ok {
		m.Text, m.Note = named.Text, named.Note
	}
	return m
}

// indexPages finds the pages by name, and sees whether the same files are there as before, and the same pages among
// them could be read and are at the same addresses. Each name has an address of its own (page.Address).
func (b *library) indexPages(before *library) {
	b.sameTree = before != nil && b.listing.same(before.listing)
	for i, d := range b.walked {
		if kept := b.kept[i]; d != kept {
			b.fresh = append(b.fresh, i)
			b.sameTree = b.sameTree && kept != nil && kept.faulty == d.faulty && kept.address == d.address
		}
	}
	if b.sameTree {
		b.index = before.index // that press is over
		for _, i := range b.fresh {
			b.index[b.walked[i].name] = b.walked[i]
		}
		return
	}
	b.index = make(map[string]*draft, len(b.walked))
	for _, d := range b.walked {
		b.index[d.name] = d
	}
}
