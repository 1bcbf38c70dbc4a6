package book

import (
	"fmt"
	"iter"
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/terms"
)

// A Term is a word by which an index leads to a page, or to a part of it.
type Term struct {
	Text, Under string // a word, and what is more narrow below it; as in terms.Item
	Part        string // the anchor of the part; "" for the whole page
	Title       string // of the part, where a reader should see it
}

// termsOf are the terms of an open page that its author wrote, and its title.
func (p *press) termsOf(d *draft) []Term {
	var list []Term
	for _, own := range d.metadata.Terms {
		for _, word := range own.Words {
			text, under, _ := strings.Cut(word.Text, ", ")
			list = append(list, Term{Text: text, Under: under, Part: own.Part.Text, Title: d.partTitle(own.Part.Text)})
		}
	}
	if d.isIndexed() {
		list = append(list, Term{Text: d.metadata.Title})
	}
	list = slices.Clip(list)
	var texts []*string
	for i := range list {
		t := &list[i]
		texts = append(texts, &t.Text, &t.Under, &t.Part, &t.Title)
	}
	pack(texts)
	return list
}

// isIndexed says whether an index leads to a page by what is in it.
func (d *draft) isIndexed() bool {
	return d.address.Kind.Row().Reader == kind.Grower && d.address.Kind != kind.Home
}

// A NamedSheet is a worksheet of a page, by whose words an index leads to it: its title and the labels of its givens.
// They are the same on many pages, so that a page keeps the sheet in their place.
type NamedSheet struct {
	Sheet *sheet.Sheet
	Part  string // the anchor of the worksheet
}

// namedSheets are the worksheets of an open page. A course or a workshop has those of guides.
func (d *draft) namedSheets() []NamedSheet {
	if d.address.Kind != kind.Guide && d.address.Kind != kind.Block {
		return nil
	}
	var list []NamedSheet
	for _, b := range d.work.Sheets {
		if b.Kind != construct.Worksheet {
			continue
		}
		if at := slices.Index(d.anchors(), construct.Anchor(b.Block.Name)); at >= 0 {
			list = append(list, NamedSheet{b.Sheet, d.anchors()[at]})
		}
	}
	return slices.Clip(list)
}

// hasMaterials says whether an open page prints the table of all materials.
func (d *draft) hasMaterials() bool {
	if d.address.Kind != kind.Guide && d.address.Kind != kind.Block {
		return false
	}
	return slices.ContainsFunc(d.doc.Blocks, func(b *markdown.Block) bool { return d.work.Reference(b) != nil })
}

// inLine is a label as it is written within a line: without its first capital, unless that belongs to a name.
func inLine(label, language string) string {
	first, size := utf8.DecodeRuneInString(label)
	second, _ := utf8.DecodeRuneInString(label[size:])
	word, _, _ := strings.Cut(label, " ")
	if !unicode.IsLower(second) || slices.Contains(words.InGeneral(language).Months[:], word) {
		return label
	}
	return string(unicode.ToLower(first)) + label[size:]
}

// partTitle is the heading of a part of an open page, or the title of the worksheet that it is.
func (d *draft) partTitle(part string) string {
	for _, h := range d.doc.Headings {
		if h.ID == part {
			return h.Text
		}
	}
	for _, b := range d.work.Sheets {
		if part != "" && construct.Anchor(b.Block.Name) == part {
			return b.Sheet.Title
		}
	}
	return ""
}

// A TermPlace is what a word of an index leads to.
type TermPlace struct {
	Page *Outline
	Term
}

// Index gives the index of a language, and the places that its entries lead to.
func (b *Book) Index(language string) ([]terms.Letter, []TermPlace) {
	w := b.wordsOf(language)
	letters := terms.Make(language, w.items, seesOf(b.Site.See[language]))
	return letters, w.places
}

// An indexWords is the words of the pages of a language, in the order of the season, and the places that they lead to.
type indexWords struct {
	language string
	outlines []*Outline
	places   []TermPlace // those of the words that were given last
	inLine   map[*sheet.Sheet][]string
}

func (b *Book) wordsOf(language string) *indexWords {
	code := language
	if language == b.Site.Languages[0] {
		code = ""
	}
	w := &indexWords{language: language, inLine: map[*sheet.Sheet][]string{}}
	for _, o := range b.Outlines {
		if o.Address.Language == code {
			w.outlines = append(w.outlines, o)
		}
	}
	return w
}

// items gives the words. Those that an author wrote come before the others of the page. A place is one part of one
// page.
func (w *indexWords) items(yield func(terms.Item) bool) {
	w.places = nil
	for _, o := range w.outlines {
		known := map[Term]int{}
		for t := range w.termsOf(o) {
			part := Term{Part: t.Part, Title: t.Title}
			at, found := known[part]
			if !found {
				at = len(w.places)
				known[part] = at
				w.places = append(w.places, TermPlace{o, t})
			}
			if !yield(terms.Item{Text: t.Text, Under: t.Under, Place: at}) {
				return
			}
		}
	}
}

// termsOf gives the terms of a page.
func (w *indexWords) termsOf(o *Outline) iter.Seq[Term] {
	return func(yield func(Term) bool) {
		for _, t := range o.Terms {
			if !yield(t) {
				return
			}
		}
		for _, named := range o.Named {
			for _, label := range w.labelsOf(named.Sheet) {
				if !yield(Term{Text: label, Part: named.Part}) {
					return
				}
			}
		}
		if !o.Materials {
			return
		}
		for _, m := range calc.Materials(w.language) {
			if !yield(Term{Text: inLine(m.Label, w.language)}) {
				return
			}
		}
	}
}

// labelsOf are the words of a worksheet.
func (w *indexWords) labelsOf(s *sheet.Sheet) []string {
	if w.inLine[s] == nil {
		labels := []string{inLine(s.Title, w.language)}
		for _, g := range s.Givens {
			labels = append(labels, inLine(g.Label, w.language))
		}
		w.inLine[s] = labels
	}
	return w.inLine[s]
}

func seesOf(sees []config.See) []terms.See {
	var list []terms.See
	for _, s := range sees {
		one := terms.See{Word: s.Word.Text}
		for _, to := range s.To {
			one.To = append(one.To, to.Text)
		}
		list = append(list, one)
	}
	return list
}

// checkTerms sees that the terms of a page lead to parts that are there.
func checkTerms(d *draft) message.List {
	var said message.List
	for _, own := range d.metadata.Terms {
		if part := own.Part.Text; part != "" && !slices.Contains(d.anchors(), part) {
			note := "write the id of a heading, as a link has it after the #, or \"top\" for the whole page"
			if near, ok := message.Nearest(part, d.anchors()); ok {
				note = fmt.Sprintf("did you mean %q?", near)
			}
			said = append(said, d.fault(own.Part.Span, "terms-part", fmt.Sprintf("this page has no part %q", part), note))
		}
	}
	return said
}

// checkSees sees that words of the index lead to others that it has, and to pages in the end.
func (p *press) checkSees() {
	for _, language := range p.Site.Languages {
		sees := p.Site.See[language]
		if len(sees) == 0 {
			continue
		}
		c := &seeing{press: p, language: language, leads: map[string][]string{},
			own: terms.Known(p.book.wordsOf(language).items)}
		all := maps.Clone(c.own)
		for _, s := range sees {
			all[terms.Key(s.Word.Text)] = true
		}
		c.words = slices.Collect(maps.Keys(all))
		for _, s := range sees {
			for _, to := range s.To {
				c.leads[terms.Key(s.Word.Text)] = append(c.leads[terms.Key(s.Word.Text)], terms.Key(to.Text))
			}
		}
		for _, s := range sees {
			c.check(s)
		}
	}
}

// A seeing is the words of a language while those that lead to others are looked at.
type seeing struct {
	*press
	language string
	words    []string            // that the index has, by their keys
	own      map[string]bool     // those that lead to pages
	leads    map[string][]string // where the others lead
}

func (c *seeing) check(s config.See) {
	for _, to := range s.To {
		key := terms.Key(to.Text)
		switch {
		case !slices.Contains(c.words, key):
			note := fmt.Sprintf("write a term of a page in its place, or add %q to the terms of one", to.Text)
			if near, ok := message.Nearest(key, c.words); ok {
				note = fmt.Sprintf("did you mean %q?", near)
			}
			c.fault(to.Span, "see-unknown", fmt.Sprintf("the index of the language %q has no %q", c.language, to.Text), note)
		case !c.arrives(key, map[string]bool{terms.Key(s.Word.Text): true}):
			c.fault(to.Span, "see-nowhere", fmt.Sprintf("from %q to %q a reader comes to no page", s.Word.Text, to.Text),
				fmt.Sprintf("have %q lead to a term that pages have", to.Text))
		}
	}
}

// arrives says whether a word leads to a page, by words that were not seen on the way.
func (c *seeing) arrives(key string, seen map[string]bool) bool {
	if c.own[key] {
		return true
	}
	if seen[key] {
		return false
	}
	seen[key] = true
	return slices.ContainsFunc(c.leads[key], func(next string) bool { return c.arrives(next, seen) })
}

func (c *seeing) fault(span message.Span, id, text, note string) {
	c.say(message.List{{Level: message.Fault, ID: id, Source: c.SiteFile, Span: span, Text: text, Note: note}})
}
