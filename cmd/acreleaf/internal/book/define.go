package book

import (
	"bytes"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/memo"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// calculationsFolder is the folder of the content that holds calculations in files of their own.
const calculationsFolder = "calculations"

// isCalculation says whether a file of the content folder is a calculation.
func isCalculation(name string) bool {
	return strings.HasPrefix(name, calculationsFolder+"/") && path.Ext(name) == ".yaml"
}

// A calculations is what Define gives: the calculations that a page may use.
type calculations struct {
	*shelf
	byName map[string]*worksheet.Definition
	files  map[string]*worksheet.Definition // those in files of their own, by the name of the file
	said   message.List
}

// A shelf is what a page can find. One with the same sheets is the same one as before.
type shelf struct {
	catalogue *calc.Catalogue
	own       map[*sheet.Sheet]*worksheet.Definition
	added     []*sheet.Sheet // the sheets of the calculations of this folder, and
	unmade    []string       // the names of those that could not be made
}

func (s *shelf) same(o *shelf) bool {
	return slices.Equal(s.added, o.added) && slices.Equal(s.unmade, o.unmade)
}

// Catalogue is the standard catalogue with the calculations of a content folder, and what is wrong with those. What is
// wrong with the pages is no concern of who asks for a calculation.
func Catalogue(o Options) (*calc.Catalogue, message.List) {
	var c *calculations
	if failed := guard(func() {
		all := changes{all: true}
		l := load(o, nil, all)
		names := slices.DeleteFunc(l.listing.pages, func(name string) bool { return !mayDefine(o.Content, name) })
		pages := make([]*draft, len(names))
		each(len(names), func(i int) { pages[i] = l.readPage(names[i], nil, all, nil) })
		c = define(l, pages, nil, all)
		for _, d := range pages {
			c.say(calculationMessages(d))
		}
	}); failed != nil {
		return standard(), failed.between(o)
	}
	message.Sort(c.said)
	return c.catalogue, c.said
}

// mayDefine says whether a page may hold a calculation, so that the others need not be read.
func mayDefine(content fs.FS, name string) bool {
	text, err := fs.ReadFile(content, name)
	return err == nil && opensCalculation(text)
}

// opensCalculation says whether the word comes after a fence. Pages with worksheets are full of the word alone.
func opensCalculation(text []byte) bool {
	word := []byte("calculation")
	for {
		at := bytes.Index(text, word)
		if at < 0 {
			return false
		}
		fence := bytes.TrimRight(text[:at], " \t")
		if bytes.HasSuffix(fence, []byte("```")) || bytes.HasSuffix(fence, []byte("~~~")) {
			return true
		}
		text = text[at+len(word):]
	}
}

// calculationMessages are the messages of a page that are in its calculations.
func calculationMessages(d *draft) message.List {
	return slices.DeleteFunc(d.said(), func(m message.Message) bool {
		return d.parsed == nil || !slices.ContainsFunc(d.parsed.calculations, func(b *markdown.Block) bool {
			return m.Span.Start >= b.Span.Start && m.Span.Start <= max(b.Span.End, b.Body.End)
		})
	})
}

// standard is the catalogue that the calculations of a folder are added to.
var standard = calc.Standard

// define makes the calculations of the content folder, those in files first, and adds them to the catalogue.
func define(l *loaded, pages []*draft, before *calculations, changed changes) *calculations {
	c := &calculations{shelf: &shelf{catalogue: standard(), own: map[*sheet.Sheet]*worksheet.Definition{}},
		byName: map[string]*worksheet.Definition{}, files: map[string]*worksheet.Definition{}}
	for _, name := range l.listing.calculations {
		d, messages := c.loadFile(l, name, before, changed)
		c.say(messages)
		if message.HasFault(messages) {
			c.unmade = append(c.unmade, d.Name)
			continue
		}
		c.say(c.add(d, l))
	}
	for _, d := range pages {
		if !d.faulty && d.parsed != nil {
			c.defineIn(d, l)
		}
	}
	c.catalogue = c.catalogue.With(c.added, c.unmade)
	if before != nil {
		c.shelf = memo.Same(before.shelf, c.shelf, (*shelf).same)
	}
	return c
}

// defineIn makes the calculations of a page.
func (c *calculations) defineIn(d *draft, l *loaded) {
	d.defined = defined{}
	for _, b := range d.parsed.calculations {
		if b.Name == "" || b.Body == (message.Span{}) || hasMessageAt(d, b.NameSpan) { // markdown has said why
			c.unmade = append(c.unmade, b.Name)
			continue
		}
		definition := &worksheet.Definition{Name: b.Name, Language: l.language(d), Source: d.source, Span: b.NameSpan,
			Body: b.Body}
		d.defined.said = append(d.defined.said, c.add(definition, l)...)
		d.defined.list = append(d.defined.list, definition)
	}
}

func (c *calculations) say(messages message.List) { c.said = append(c.said, messages...) }

// add makes a calculation and gives what there is to say of it.
func (c *calculations) add(d *worksheet.Definition, l *loaded) message.List {
	var said message.List
	if failed := guard(func() { said = worksheet.Define(d, l.Sources, l.Site.Hazards) }); failed != nil {
		said = failed.on(d.Source)
	}
	if taken := c.taken(d, c.byName[d.Name]); taken != nil {
		return append(said, *taken)
	}
	c.byName[d.Name] = d
	if d.Sheet == nil {
		c.unmade = append(c.unmade, d.Name)
		return said
	}
	c.added = append(c.added, d.Sheet)
	c.own[d.Sheet] = d
	return said
}

// loadFile reads a calculation in a file of its own, if it may have changed.
func (c *calculations) loadFile(l *loaded, name string, before *calculations,
	changed changes) (*worksheet.Definition, message.List) {
	var source *message.Source
	var messages message.List
	if !changed.stale(name) && before.files[name] != nil {
		source = before.files[name].Source
	} else {
		source, messages = message.Load(l.options.Content, name)
		source.Name = l.options.called(name)
	}
	d := &worksheet.Definition{Name: strings.TrimSuffix(path.Base(name), ".yaml"), Language: l.mainLanguage(),
		Source: source, Body: message.Span{End: len(source.Text)}}
	if len(messages) == 0 {
		c.files[name] = d
	}
	return d, messages
}

func hasMessageAt(d *draft, span message.Span) bool {
	return slices.ContainsFunc(d.read, func(m message.Message) bool { return m.Span == span })
}

// taken reports a calculation whose name another has. Nil if none has.
func (c *calculations) taken(d, first *worksheet.Definition) *message.Message {
	m := &message.Message{ID: "calculation-taken", Source: d.Source, Span: d.Span,
		Note: "give this one a name of its own; every page can use a calculation of another"}
	switch {
	case c.catalogue.Find(d.Name) != nil:
		m.Text = fmt.Sprintf("%q is a calculation that comes with Acreleaf", d.Name)
		m.Note = "give this one another name, such as own-" + d.Name
	case first != nil:
		line, _ := first.Source.Position(first.Span.Start)
		m.Text = fmt.Sprintf("there is a calculation %q already, at %s:%d", d.Name, first.Source.Name, line)
	default:
		return nil
	}
	return m
}
