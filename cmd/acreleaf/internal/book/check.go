package book

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
	"acreleaf/cmd/acreleaf/internal/record"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// Checked is what Check found.
type Checked struct {
	Messages               message.List
	Pages, Worked, Sourced int // how many pages and figures were read
	Exercises              []CountedCards
	Courses                []record.Course
}

// CountedCards is what is known of the cards of an exercise.
type CountedCards struct {
	Page string // its file, as messages call it
	worksheet.CardCount
}

// countCards looks at every card that the exercises of a page ask for.
func (p *press) countCards(d *draft) []CountedCards {
	var list []CountedCards
	for _, e := range d.work.Exercises {
		list = append(list, CountedCards{p.options.called(d.name), e.CountCards(p.language(d))})
	}
	return list
}

// Check does all that Make does before it makes anything. With rules for advice and a day it looks further than Make.
func Check(o Options, edition New, rules proof.Rules) Checked {
	p := newPress(o, edition)
	p.rules = rules
	p.check()
	message.Sort(p.messages)
	if p.half {
		return Checked{Messages: p.messages}
	}
	checked := Checked{Messages: p.messages, Pages: len(p.pages), Courses: p.book.Courses()}
	for _, d := range p.pages {
		if !d.faulty {
			checked.Worked += d.bound.Kept().worked
			checked.Sourced += len(d.bound.Kept().sourced)
			checked.Exercises = append(checked.Exercises, d.proofed.Kept().exercises...)
		}
	}
	return checked
}

// checkSources sees that every sourced figure has an entry in the bibliography.
func (l *loaded) checkSources(d *draft) message.List {
	var said message.List
	unread := !l.Sources.AnyListed() && message.HasFault(l.sourcesSaid) // whatever is cited may be there
	for _, f := range d.doc.Figures {
		if f.Scheme != construct.Sourced || f.Target == "" || unread {
			continue
		}
		if _, ok := l.Sources[f.Target]; !ok {
			said = append(said, d.fault(f.TargetSpan, "source-unknown",
				fmt.Sprintf("there is no source %q in %s", f.Target, l.options.called(sourcesFileName)),
				nearestSource(f, l.Sources)))
		}
	}
	return said
}

func nearestSource(f *markdown.Figure, sources config.Sources) string {
	if near, ok := message.Nearest(f.Target, sources.IDs()); ok {
		return "write source:" + near
	}
	lines := "add lines to that file, such as:\n" + f.Target + ":\n  title: The title of the work\n" +
		"  address: https://www.example.org/\n  kind: handbook"
	if own := sources.Own(); len(own) > 0 {
		return lines + "\nor write one of: source:" + strings.Join(own, ", source:")
	}
	return lines
}

// checkGlance sees that the line at a glance asks for what the page's worksheets have.
func checkGlance(d *draft) message.List {
	var said message.List
	for _, item := range d.metadata.Glance {
		use, name, _ := strings.Cut(item.Text, ".")
		bound := d.work.Find(use)
		if bound == nil {
			if !hasBlock(d, use) {
				said = append(said, d.fault(item.Span, "figure-unknown",
					fmt.Sprintf("there is no worksheet %q in this page", use), nearestAnswer(d, use)))
			}
			continue
		}
		if _, ok := bound.Sheet.UnitOf(name); !ok {
			note := "write one of: " + strings.Join(bound.Sheet.Names(), ", ")
			if near, ok := message.Nearest(name, bound.Sheet.Names()); ok {
				note = "write " + use + "." + near
			}
			said = append(said,
				d.fault(item.Span, "figure-unknown", fmt.Sprintf("worksheet %q has no figure %q", use, name), note))
		}
	}
	return said
}

// nearestAnswer is a note that offers an answer of the worksheet that was most likely meant.
func nearestAnswer(d *draft, use string) string {
	var names []string
	for _, b := range d.work.Sheets {
		if b.Kind == construct.Worksheet {
			names = append(names, b.Block.Name)
		}
	}
	near, ok := message.Nearest(use, names)
	switch {
	case len(names) == 0:
		return "write a worksheet of that name in the page, or take this out"
	case !ok:
		near = names[0]
	}
	return "write an answer of a worksheet, such as " + near + "." + d.work.Find(near).Sheet.Answers()[0].Name
}

// hasBlock says whether the page has a worksheet of that name, even one with a fault.
func hasBlock(d *draft, name string) bool {
	return slices.ContainsFunc(d.doc.Blocks, func(b *markdown.Block) bool { return b.Name == name })
}
