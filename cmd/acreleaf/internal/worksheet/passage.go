package worksheet

import (
	"fmt"
	"strings"

	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// mostCases is how many cases a passage may have. It is worked thousands of times, to find cases that never hold.
const mostCases = 40

// A Passage is a text of cases that was bound to the worksheets of its page.
type Passage struct {
	Written *markdown.Passage
	Asked   *sheet.Passage
	Index   int // in the module's list of sheets, after the blocks
}

// Passage gives what a passage was bound to. It is nil for one with a fault.
func (p *Page) Passage(written *markdown.Passage) *Passage {
	for _, bound := range p.Passages {
		if bound.Written.Index == written.Index {
			return bound
		}
	}
	return nil
}

// bindPassages reads the conditions of the passages, and adds to the graph what they ask.
func (b *binder) bindPassages(graph *sheet.Graph) {
	for i, written := range b.doc.Passages {
		if i == mostPassages {
			b.crowded(written.Span, mostPassages, "passages")
			return
		}
		if len(written.Cases) > mostCases {
			b.fault(written.Span, "passage-long", fmt.Sprintf("this passage has %d cases, and may have %d",
				len(written.Cases), mostCases), "leave cases out, or make two passages of it")
			continue
		}
		if written.Unread || len(written.Cases) == 0 || written.Cases[len(written.Cases)-1].When != "" {
			continue // reported
		}
		var conditions []formula.Text
		for _, c := range written.Cases[:len(written.Cases)-1] {
			conditions = append(conditions, formula.Text{Text: c.When, Span: formula.Span(c.WhenSpan)})
		}
		scope := formula.Worksheets(graph, func(name string) bool { return b.faulty[name] })
		asked, faults := formula.Conditions(scope, conditions)
		for _, f := range faults {
			b.fault(message.Span(f.Span), f.ID, f.Text, f.Note)
		}
		if asked == nil {
			continue
		}
		for _, f := range b.doc.Figures {
			use, _, _ := strings.Cut(f.Target, ".")
			if u := graph.Find(use); f.Scheme == construct.Worked && u != nil && f.Passage == written {
				asked.Use(u)
			}
		}
		index := len(graph.Uses) + len(b.page.Passages)
		b.page.Passages = append(b.page.Passages, &Passage{Written: written, Asked: asked, Index: index})
		graph.Passages = append(graph.Passages, asked)
	}
}
