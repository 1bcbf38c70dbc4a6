package site

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
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// calculationsFolder is the folder of the content that holds calculations in files of their own.
const calculationsFolder = "calculations"

// isCalculation says whether a file of the content folder is a calculation.
func isCalculation(name string) bool {
	return strings.HasPrefix(name, calculationsFolder+"/") && path.Ext(name) == ".yaml"
}

// Catalogue is the standard catalogue with the calculations of a content folder, and what is wrong with those.
func Catalogue(o Options) (*calc.Catalogue, message.List) {
	p := newPress(o)
	p.load()
	names := slices.DeleteFunc(p.listing.pages, func(name string) bool { return !mayDefine(o.Content, name) })
	p.walked = make([]*draft, len(names))
	each(len(names), func(i int) { p.walked[i] = p.readPage(names[i], nil) })
	p.messages = nil // what is wrong with the pages is no concern of who asks for a calculation
	p.define()
	messages := p.messages
	for _, d := range p.walked {
		messages = append(messages, calculationMessages(d)...)
	}
	message.Sort(messages)
	return p.catalogue, messages
}

// mayDefine says whether a page may hold a calculation, so that the others need not be read.
func mayDefine(content fs.FS, name string) bool {
	text, err := fs.ReadFile(content, name)
	return err == nil && opensCalculation(text)
}

// opensCalculation says whether the word stands behind a fence. Pages with worksheets are full of the word alone.
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
	return slices.DeleteFunc(d.said.all(), func(m message.Message) bool {
		return !slices.ContainsFunc(d.calculations, func(b *markdown.Block) bool {
			return m.Span.Start >= b.Span.Start && m.Span.Start <= max(b.Span.End, b.Body.End)
		})
	})
}

// define makes the calculations of the content folder, those in files first, and adds them to the catalogue.
func (p *press) define() {
	p.texts = map[string]*worksheet.Definition{}
	byName := map[string]*worksheet.Definition{}
	for _, name := range p.listing.calculations {
		d, messages := p.loadCalculation(name)
		p.say(messages)
		if message.HasFault(messages) {
			p.unmade = append(p.unmade, d.Name)
			continue
		}
		p.say(p.add(d, byName))
	}
	for _, d := range p.walked {
		if d.faulty || len(d.calculations) == 0 {
			continue
		}
		d.defined, d.said.defining = nil, nil
		for _, b := range d.calculations {
			if b.Name == "" || b.Body == (message.Span{}) || hasMessageAt(d, b.NameSpan) { // markdown has said why
				p.unmade = append(p.unmade, b.Name)
				continue
			}
			definition := &worksheet.Definition{Name: b.Name, Source: d.source, Span: b.NameSpan, Body: b.Body}
			d.said.defining = append(d.said.defining, p.add(definition, byName)...)
			d.defined = append(d.defined, definition)
		}
	}
	p.catalogue = p.catalogue.With(p.added, p.unmade)
}

// add makes a calculation and gives what there is to say of it.
func (p *press) add(d *worksheet.Definition, byName map[string]*worksheet.Definition) message.List {
	var said message.List
	if failed := guard(d.Source, func() { said = worksheet.Define(d, p.sources, p.site.Hazards) }); failed != nil {
		said = failed
	}
	if taken := p.taken(d, byName[d.Name]); taken != nil {
		return append(said, *taken)
	}
	byName[d.Name] = d
	if d.Sheet == nil {
		p.unmade = append(p.unmade, d.Name)
		return said
	}
	p.added = append(p.added, d.Sheet)
	p.own[d.Sheet] = d
	return said
}

// loadCalculation reads a calculation in a file of its own, if it may have changed.
func (p *press) loadCalculation(name string) (*worksheet.Definition, message.List) {
	var source *message.Source
	var messages message.List
	if !p.stale(name) && p.before.texts[name] != nil {
		source = p.before.texts[name].Source
	} else {
		source, messages = message.Load(p.options.Content, name)
		source.Name = p.called(name)
	}
	d := &worksheet.Definition{Name: strings.TrimSuffix(path.Base(name), ".yaml"), Source: source,
		Body: message.Span{End: len(source.Text)}}
	if len(messages) == 0 {
		p.texts[name] = d
	}
	return d, messages
}

func hasMessageAt(d *draft, span message.Span) bool {
	return slices.ContainsFunc(d.said.reading, func(m message.Message) bool { return m.Span == span })
}

// taken reports a calculation whose name another has. Nil if none has.
func (p *press) taken(d, first *worksheet.Definition) *message.Message {
	m := &message.Message{ID: "calculation-taken", Source: d.Source, Span: d.Span,
		Note: "give this one a name of its own; every page can use a calculation of another"}
	switch {
	case p.catalogue.Find(d.Name) != nil:
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

// ownCode is the text of an author's own calculation, highlighted; false for one of the standard catalogue.
func (c *common) ownCode(s *sheet.Sheet) (string, bool) {
	d := c.own[s]
	if d == nil {
		return "", false
	}
	var w bytes.Buffer
	if err := markdown.Highlight(&w, "yaml", d.Text()); err != nil {
		w.Reset() // the page is whole without it
	}
	return w.String(), true
}
