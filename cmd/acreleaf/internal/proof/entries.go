package proof

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A Quote is a sentence that quotes a figure of a source.
type Quote struct {
	entry         *config.SourceFigure
	page          *message.Source
	language      string
	target, title string // of the figure in the text
	span          message.Span
	topic         topic // of the words in quotes
	named         bool  // they have words of sources.yaml
}

// Quotes gives the figures of sources that a page quotes, for Together. They are asked for with advice only.
func Quotes(p *Page, s *Site, r Rules) []Quote {
	if !r.Advice {
		return nil
	}
	var quotes []Quote
	c := newFigureCheck(p, s, Rules{})
	for _, f := range p.Document.Figures {
		if entry := c.entry(f); entry != nil {
			words := c.wordsOf(f.Title)
			quotes = append(quotes, Quote{entry: entry, page: p.Source, language: p.Language, target: f.Target,
				title: f.Title, span: f.Span, topic: words, named: words.shared(c.wordsOf(c.figureOf(entry))) > 0})
		}
	}
	return quotes
}

// entries advises on figures in sources.yaml that no sentence quotes, and on those that two sentences take for
// different things.
func entries(quotes []Quote, s *Site) message.List {
	var messages message.List
	uses := map[*config.SourceFigure][]Quote{}
	quoted := map[string]bool{} // the sources of which a sentence quotes a figure
	for _, q := range quotes {
		quoted[q.target] = true
		for _, other := range uses[q.entry] {
			if m, apart := readTwice(other, q); apart {
				messages = append(messages, m)
				break
			}
		}
		uses[q.entry] = append(uses[q.entry], q)
	}
	if s.Cited == nil {
		return messages // a page with a fault may quote them
	}
	for _, id := range s.Sources.IDs() {
		for i := range s.Sources[id].Figures {
			f := &s.Sources[id].Figures[i]
			if quoted[id] && uses[f] == nil {
				messages = append(messages, message.Message{Level: message.Advice, ID: "source-figure-unused",
					Source: s.SourcesFile, Span: f.Span, Text: fmt.Sprintf("no sentence quotes the %s of source %q", f.Text, id),
					Note: fmt.Sprintf("write it where it is meant, as [%s]%s, or take the line out", f.Text, sourceLink(id, f))})
			}
		}
	}
	return messages
}

// readTwice advises when the words in quotes of two sentences have nothing in common with each other, so that one
// number of a source is two things.
func readTwice(a, b Quote) (message.Message, bool) {
	if a.language != b.language || len(a.topic) == 0 || len(b.topic) == 0 || a.topic.shared(b.topic) > 0 ||
		a.named && b.named {
		return message.Message{}, false
	}
	at, _ := a.page.Position(a.span.Start)
	return message.Message{Level: message.Advice, ID: "source-figure-read", Source: b.page, Span: b.span,
		Text: fmt.Sprintf("%s of source %q is %q here, and %q in %s:%d", b.entry.Text, b.target, b.title,
			a.title, a.page.Name, at),
		Note: fmt.Sprintf("use the words of sources.yaml in both, %q; if the source gives it for both, write both there, "+
			"with a semicolon between", b.entry.For)}, true
}

// entry finds the figure of its source that a figure quotes, nil when none is sure.
func (c *figureCheck) entry(f *markdown.Figure) *config.SourceFigure {
	source, known := c.site.Sources[f.Target]
	if f.Scheme != construct.Sourced || !known || len(source.Figures) == 0 {
		return nil
	}
	var near []against
	for _, a := range c.compareAll(f, "", source.Figures) {
		if a.agrees || !a.fits && a.apart == quiteNear {
			near = append(near, a)
		}
	}
	if named := c.named(near, f.Title); len(named) > 0 {
		near = named
	}
	if len(near) == 0 {
		return nil
	}
	return near[0].figure
}
