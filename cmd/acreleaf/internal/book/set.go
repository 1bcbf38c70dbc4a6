package book

import (
	"runtime/debug"
	"slices"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// A setPage is what is known of a page whose files were made: what they were made from, and their hashes.
type setPage struct {
	edition   Edition
	page      Page // without its document and worksheets, and
	start     int  // what these are made from
	catalogue *calc.Catalogue
	rests
	files []File
	said  message.List
}

// rests are what the files of a page depend on beside the page, its edition's form and its place among the others.
type rests struct {
	bound       *bound
	siteFile    *message.Source
	listed      bool                // there is a bibliography
	references  []*config.Reference // that the page rests on
	sourcesFile *message.Source     // in which they are
}

// stands says whether the files of a page that were made before are right as they are.
func (p *press) stands(d *draft) bool {
	if p.out.once() {
		return d.set != nil // there is but one making, and no page is made before all is known that it shows
	}
	if d.set == nil || d.set.bound != d.bound.Kept() || d.set.siteFile != p.SiteFile ||
		d.set.listed != p.Sources.AnyListed() || !p.sameAround(&d.set.page, d) {
		return false
	}
	if d.set.sourcesFile == p.SourcesFile {
		return true
	}
	if !slices.Equal(d.set.references, p.referencesOf(d)) {
		return false
	}
	d.set.sourcesFile = p.SourcesFile
	return true
}

// sameAround says whether a page would show the same of other pages as it did. No page is put together for that, since
// it is asked of all pages at every save.
func (p *press) sameAround(was *Page, d *draft) bool {
	return was.Previous == turnOf(d.previous) && was.Next == turnOf(d.next) && was.Book == p.bookFor(d) &&
		was.Place == placeOf(d) && slices.Equal(was.After, p.after(d)) &&
		slices.Equal(was.Links, d.linked.Kept().targets) && slices.Equal(was.Twins, p.twins(d))
}

// mayFinish says whether the files of a page have to be made, and can be as far as is known. What its links lead to is
// seen later.
func (p *press) mayFinish(d *draft) bool {
	return p.out.wants() && !message.HasFault(d.own()) && !p.stands(d)
}

// finishPage has the files of a page made, and gives them away.
func (p *press) finishPage(d *draft) {
	p.open(d)
	if !d.printable() {
		return
	}
	set := &setPage{edition: p.edition(), page: *p.pageOf(d), start: d.start, catalogue: p.catalogue,
		rests: rests{d.bound.Kept(), p.SiteFile, p.Sources.AnyListed(), p.referencesOf(d), p.SourcesFile}}
	open := set.page
	open.Document, open.Work = d.doc, d.work
	files, said := set.edition.Page(&open)
	set.said = said
	for i, f := range files {
		set.files = append(set.files, p.out.take(f, func() []byte { return set.again()[i].Bytes }))
	}
	d.set = set
}

// again makes the files of a page again. What is wrong in it was told when it was first read.
func (s *setPage) again() []output.File {
	open := s.page
	open.Document, _ = markdown.Parse(open.Source, s.start)
	open.Work, _ = worksheet.Bind(open.Document, s.catalogue, open.Language)
	files, _ := s.edition.Page(&open)
	return files
}

// given is what is known of a page whose files were given away, when there is nothing to say of them.
var given = new(setPage)

// drop lets go of what a press needs of a page no more once its files were given away. A desk needs it to make them
// again.
func (p *press) drop(d *draft) {
	if !p.out.once() || d.set == nil {
		return
	}
	d.parsed.links, d.linked.Kept().targets = nil, nil
	d.metadata.Terms, d.metadata.Glance, d.metadata.Changes = nil, nil, nil // in the outline, as far as others show them
	if said := d.set.said; len(said) > 0 {
		d.set = &setPage{said: said}
	} else {
		d.set = given
	}
	// No message and no calculation shows a part of it.
	if len(d.own())+len(d.set.said)+len(d.parsed.calculations) == 0 {
		d.source.Text = nil // see showLines
	}
}

// manyPages is from how many pages on the lists of all pages take as much memory as what was known of each. The
// collector would not run before them by itself.
const manyPages = 50_000

// keepBook lets go of all that a press knows of its pages, but for the book, when only the files of all pages are left
// to be made.
func (p *press) keepBook() {
	p.parts = nil
	for _, d := range p.pages {
		d.head, d.parsed, d.defined, d.results, d.set = head{}, nil, defined{}, results{}, nil
	}
	if len(p.pages) > manyPages {
		debug.FreeOSMemory()
	}
}

// pageOf is a page as an edition takes it, without its document and worksheets.
func (p *press) pageOf(d *draft) *Page {
	return &Page{Name: d.name, Source: d.source, Address: d.address, Metadata: d.metadata, Language: p.language(d),
		Links: d.linked.Kept().targets, Previous: turnOf(d.previous), Next: turnOf(d.next), Twins: p.twins(d),
		Place: placeOf(d), After: p.after(d), Book: p.bookFor(d)}
}

// bookFor is the book, for a page that lists others.
func (p *press) bookFor(d *draft) *Book {
	if d.address.Kind.Row().Lists {
		return p.book
	}
	return nil
}

func turnOf(d *draft) Turn {
	if d == nil {
		return Turn{}
	}
	return Turn{d.address, d.metadata.Title}
}

// twins are the places of a page in all of its languages. There are none of a page in one language.
func (p *press) twins(d *draft) []Twin {
	all := p.inLanguages(d)
	if len(all) < 2 {
		return nil
	}
	var twins []Twin
	for _, other := range all {
		twins = append(twins, Twin{p.language(other), other.address})
	}
	return twins
}

// referencesOf are the sources that a page rests on, as keepReferences has them.
func (p *press) referencesOf(d *draft) []*config.Reference {
	var list []*config.Reference
	for _, id := range slices.Concat(d.bound.Kept().sourced, d.bound.Kept().tables) {
		list = append(list, p.references[id])
	}
	for _, s := range d.bound.Kept().sheets {
		list = append(list, p.referencesOfSheet(s)...)
	}
	return list
}

func (p *press) referencesOfSheet(s *sheet.Sheet) []*config.Reference {
	var list []*config.Reference
	for _, k := range s.Constants {
		for _, id := range k.Sources {
			list = append(list, p.references[id])
		}
	}
	for _, id := range s.NoteSources() {
		list = append(list, p.references[id])
	}
	return list
}

// printable says whether nothing is missing that the text of an open page asks for.
func (d *draft) printable() bool {
	if !d.work.HasAll(d.doc.Blocks) {
		return false
	}
	for _, written := range d.doc.Passages {
		if d.work.Passage(written) == nil {
			return false
		}
	}
	for _, f := range d.doc.Figures {
		if f.Scheme == construct.Worked && d.work.Figure(f) == nil {
			return false
		}
	}
	return true
}
