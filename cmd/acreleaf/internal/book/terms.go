package book

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"acreleaf/calc"
	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/terms"
)

// A Term is a word by which an index leads to a page, or to a part of it.
type Term struct {
	Text, Under string // a word, and what is more narrow below it; as in terms.Item
	Part        string // the anchor of the part; "" for the whole page
	Title       string // of the part, where a reader should see it
}

// termsOf are the terms of an open page: those that its author wrote, then those that it has by what is in it.
func (p *press) termsOf(d *draft) []Term {
	var list []Term
	for _, own := range d.metadata.Terms {
		for _, word := range own.Words {
			text, under, _ := strings.Cut(word.Text, ", ")
			list = append(list, Term{Text: text, Under: under, Part: own.Part.Text, Title: d.partTitle(own.Part.Text)})
		}
	}
	if row := d.address.Kind.Row(); row.Reader != kind.Grower || d.address.Kind == kind.Home {
		return list
	}
	language := p.language(d)
	list = append(list, Term{Text: d.metadata.Title})
	if d.address.Kind != kind.Guide && d.address.Kind != kind.Block {
		return list // a course or a workshop has the worksheets of guides
	}
	for _, b := range d.work.Sheets {
		part := construct.Anchor(b.Block.Name)
		if b.Kind != construct.Worksheet || !slices.Contains(d.anchors(), part) {
			continue
		}
		list = append(list, Term{Text: inLine(b.Sheet.Title, language), Part: part})
		for _, g := range b.Sheet.Givens {
			list = append(list, Term{Text: inLine(g.Label, language), Part: part})
		}
	}
	return append(list, materialTerms(d, language)...)
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

// materialTerms are the materials of the tables that an open page prints.
func materialTerms(d *draft, language string) []Term {
	var list []Term
	for _, b := range d.doc.Blocks {
		if d.work.Reference(b) == nil {
			continue
		}
		for _, m := range calc.Materials(language) {
			list = append(list, Term{Text: inLine(m.Label, language)})
		}
	}
	return list
}

// A TermPlace is what a word of an index leads to.
type TermPlace struct {
	Page *Outline
	Term
}

// Index gives the index of a language, and the places that its entries lead to.
func (b *Book) Index(language string) ([]terms.Letter, []TermPlace) {
	code := language
	if language == b.Site.Languages[0] {
		code = ""
	}
	items, places := itemsOf(b.Outlines, code)
	return terms.Make(language, items, seesOf(b.Site.See[language])), places
}

// itemsOf are the words of the pages of a language, in the order of the season. Those of an author come before the
// others of the page. A place is one part of one page.
func itemsOf(all []*Outline, language string) ([]terms.Item, []TermPlace) {
	var items []terms.Item
	var places []TermPlace
	for _, o := range all {
		if o.Address.Language != language {
			continue
		}
		known := map[Term]int{}
		for _, t := range o.Terms {
			part := Term{Part: t.Part, Title: t.Title}
			at, found := known[part]
			if !found {
				at = len(places)
				known[part] = at
				places = append(places, TermPlace{o, t})
			}
			items = append(items, terms.Item{Text: t.Text, Under: t.Under, Place: at})
		}
	}
	return items, places
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

// checkTerms sees that the terms of pages lead to parts that are there.
func (p *press) checkTerms() {
	for _, d := range p.pages {
		for _, own := range d.metadata.Terms {
			if part := own.Part.Text; part != "" && !d.faulty && !slices.Contains(d.anchors(), part) {
				note := "write the id of a heading, as a link has it after the #, or \"top\" for the whole page"
				if near, ok := message.Nearest(part, d.anchors()); ok {
					note = fmt.Sprintf("did you mean %q?", near)
				}
				p.say(message.List{d.fault(own.Part.Span, "terms-part",
					fmt.Sprintf("this page has no part %q", part), note)})
			}
		}
	}
}

// checkSees sees that words of the index lead to others that it has, and to pages in the end.
func (p *press) checkSees() {
	for i, language := range p.Site.Languages {
		sees := p.Site.See[language]
		if len(sees) == 0 {
			continue
		}
		code := language
		if i == 0 {
			code = ""
		}
		items, _ := itemsOf(p.book.Outlines, code)
		c := &seeing{press: p, language: language, leads: map[string][]string{}, own: terms.Known(items, nil)}
		for word := range terms.Known(items, seesOf(sees)) {
			c.words = append(c.words, word)
		}
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
