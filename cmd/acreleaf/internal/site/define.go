package site

import (
	"bytes"
	"fmt"
	"io/fs"
	"path"
	"regexp"
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
	p.pages = slices.DeleteFunc(p.pages, func(d *draft) bool { return !mayDefine(o.Content, d.name) })
	each(len(p.pages), func(i int) { p.parsePage(p.pages[i]) })
	p.messages = nil // what is wrong with the pages is no concern of who asks for a calculation
	p.define()
	messages := p.messages
	for _, d := range p.pages {
		messages = append(messages, calculationMessages(d)...)
	}
	message.Sort(messages)
	return p.catalogue, messages
}

var opensCalculation = regexp.MustCompile("(?m)(`{3,}|~{3,})[ \t]*calculation\\b")

// mayDefine says whether a page may hold a calculation, so that the others need not be read.
func mayDefine(content fs.FS, name string) bool {
	text, err := fs.ReadFile(content, name)
	return err == nil && opensCalculation.Match(text)
}

// calculationMessages are the messages of a page that stand in its calculations.
func calculationMessages(d *draft) message.List {
	if d.faulty {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(d.messages), func(m message.Message) bool {
		return !slices.ContainsFunc(d.doc.Calculations, func(b *markdown.Block) bool {
			return m.Span.Start >= b.Span.Start && m.Span.Start <= max(b.Span.End, b.Body.End)
		})
	})
}

// define makes the calculations of the content folder, those in files first, and adds them to the catalogue.
func (p *press) define() {
	var faulty []string
	var sheets []*sheet.Sheet
	byName := map[string]*worksheet.Definition{}
	add := func(d *worksheet.Definition, said *message.List) {
		*said = append(*said, worksheet.Define(d, p.sources)...)
		if taken := p.taken(d, byName[d.Name]); taken != nil {
			*said = append(*said, *taken)
			return
		}
		byName[d.Name] = d
		if d.Sheet == nil {
			faulty = append(faulty, d.Name)
			return
		}
		sheets = append(sheets, d.Sheet)
		p.own[d.Sheet] = d
	}
	for _, name := range p.calculations {
		source, messages := message.Load(p.options.Content, name)
		source.Name = p.called(name)
		p.say(messages)
		d := &worksheet.Definition{Name: strings.TrimSuffix(path.Base(name), ".yaml"), Source: source,
			Body: message.Span{End: len(source.Text)}}
		if message.HasFault(messages) {
			faulty = append(faulty, d.Name)
			continue
		}
		add(d, &p.messages)
	}
	for _, d := range p.pages {
		if d.faulty {
			continue
		}
		for _, b := range d.doc.Calculations {
			if b.Name == "" || b.Body == (message.Span{}) || hasMessageAt(d, b.NameSpan) { // markdown has said why
				faulty = append(faulty, b.Name)
				continue
			}
			definition := &worksheet.Definition{Name: b.Name, Source: d.source, Span: b.NameSpan, Body: b.Body}
			add(definition, &d.messages)
			d.defined = append(d.defined, definition)
		}
	}
	p.catalogue = p.catalogue.With(sheets, faulty)
}

func hasMessageAt(d *draft, span message.Span) bool {
	return slices.ContainsFunc(d.messages, func(m message.Message) bool { return m.Span == span })
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
func (p *press) ownCode(s *sheet.Sheet) (string, bool) {
	d := p.own[s]
	if d == nil {
		return "", false
	}
	var w bytes.Buffer
	if err := markdown.Highlight(&w, "yaml", d.Text()); err != nil {
		w.Reset() // the page is whole without it
	}
	return w.String(), true
}
