package book

import (
	"bytes"
	"fmt"
	"path"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/memo"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
)

// A library is what Read gives: the pages, in their orders and by their names.
type library struct {
	*loaded
	walked []*draft // as the folder is walked
	pages  []*draft // in the order of the season
	index  map[string]*draft
	tree   *tree
	said   message.List
}

// A tree is where everything is: all that the links of a page depend on beside its text. One that did not change is the
// same one as before.
type tree struct {
	pages []located // as the folder is walked
	files []string
}

// A located is where a page is. Each name has an address of its own (page.Address).
type located struct {
	name    string
	address page.Address
	faulty  bool
}

func (t *tree) same(o *tree) bool {
	return slices.Equal(t.pages, o.pages) && slices.Equal(t.files, o.files)
}

// read reads every page. A worksheet may use a calculation of any page, so that all those are read before any is bound;
// and a page can be linked to from any other, so that all names are known before.
func read(l *loaded, before *library, c changes, room *textRoom) *library {
	kept := keptDrafts(l, before)
	b := &library{loaded: l, walked: make([]*draft, len(l.listing.pages)), tree: &tree{files: l.listing.files}}
	each(len(b.walked), func(i int) { b.walked[i] = l.readPage(l.listing.pages[i], kept[i], c, room) })
	b.index = make(map[string]*draft, len(b.walked))
	for _, d := range b.walked {
		b.index[d.name] = d
		b.tree.pages = append(b.tree.pages, located{d.name, d.address, d.faulty})
	}
	if before != nil {
		b.tree = memo.Same(before.tree, b.tree, (*tree).same)
	}
	b.orderSeason(before, kept)
	b.joinTranslations()
	return b
}

// readPage reads the text of a page, or takes over the draft that the press before had of it.
func (l *loaded) readPage(name string, before *draft, c changes, room *textRoom) *draft {
	if before != nil && before.failed != nil {
		before = nil // what it failed on need not be in the page
	}
	if before != nil && !c.stale(name) {
		return before
	}
	d := &draft{name: name}
	d.source, d.read = page.Load(l.options.Content, d.name)
	d.source.Name = l.options.called(d.name)
	if message.HasFault(d.read) {
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
		} else {
			room.rest(d)
		}
	})
	return d
}

// showLines reads the text of pages again that was let go, where a message has to show a line of it: what is wrong
// between pages is found when each of them was worked.
func (p *press) showLines() {
	told := map[*message.Source]bool{}
	for _, m := range p.messages {
		told[m.Source] = true
	}
	for _, d := range p.walked {
		if d.source.Text == nil && told[d.source] {
			again, _ := page.Load(p.options.Content, d.name) // it could be read before
			d.source.Text = again.Text
		}
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
	address, err := addressOf(d.name, metadata, main)
	if err != nil {
		d.read = append(d.read, badAddress(d, err))
	}
	d.address = address
	d.read = append(d.read, messages...)
	if l.languages != nil {
		d.read = append(d.read, page.CheckLanguage(d.source, metadata, l.languages)...)
	}
}

// addressOf gives the address of a page, unless a part of its name is that of a device.
func addressOf(name string, m page.Metadata, main string) (page.Address, error) {
	for part := range strings.SplitSeq(strings.TrimSuffix(name, path.Ext(name)), "/") {
		if output.IsDevice(part) {
			return page.Address{}, &page.AddressError{Text: fmt.Sprintf("the name %q cannot be part of an address", part),
				Note: "Windows keeps it for a device; choose another name"}
		}
	}
	return page.AddressOf(name, m, main)
}

func badAddress(d *draft, err error) message.Message {
	m := message.Message{ID: "page-name", Source: d.source, Text: err.Error()}
	if named, ok := err.(*page.AddressError); ok {
		m.Text, m.Note = named.Text, named.Note
	}
	return m
}
