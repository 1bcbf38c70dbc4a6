package proof

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A use is a sentence that quotes a figure of a source.
type use struct {
	page   *Page
	figure *markdown.Figure
	topic  topic // of the words in quotes
	named  bool  // they have words of sources.yaml
}

// entries advises on figures in sources.yaml that no sentence quotes, and on those that two sentences take for
// different things.
func entries(pages []*Page, s *Site) message.List {
	var said message.List
	uses := map[*config.SourceFigure][]use{}
	quoted := map[string]bool{} // the sources of which a sentence quotes a figure
	for _, p := range pages {
		c := newFigureCheck(p, s, Rules{})
		for _, f := range p.Document.Figures {
			entry := c.entry(f)
			if entry == nil {
				continue
			}
			words := c.wordsOf(f.Title)
			u := use{p, f, words, words.shared(c.wordsOf(entry.For)) > 0}
			quoted[f.Target] = true
			for _, other := range uses[entry] {
				if m, apart := readTwice(entry, other, u); apart {
					said = append(said, m)
					break
				}
			}
			uses[entry] = append(uses[entry], u)
		}
	}
	if s.Cited == nil {
		return said // a page with a fault may quote them
	}
	for _, id := range s.Sources.IDs() {
		for i := range s.Sources[id].Figures {
			f := &s.Sources[id].Figures[i]
			if quoted[id] && uses[f] == nil {
				said = append(said, message.Message{Level: message.Advice, ID: "source-figure-unused", Source: s.SourcesFile,
					Span: f.Span, Text: fmt.Sprintf("no sentence quotes the %s of source %q", f.Text, id),
					Note: fmt.Sprintf("write it where it is meant, as [%s]%s, or take the line out", f.Text, sourceLink(id, f))})
			}
		}
	}
	return said
}

// readTwice advises when the words in quotes of two sentences have nothing in common with each other, so that one
// number of a source is two things.
func readTwice(entry *config.SourceFigure, a, b use) (message.Message, bool) {
	if a.page.Language != b.page.Language || len(a.topic) == 0 || len(b.topic) == 0 || a.topic.shared(b.topic) > 0 ||
		a.named && b.named {
		return message.Message{}, false
	}
	at, _ := a.page.Source.Position(a.figure.Span.Start)
	return message.Message{Level: message.Advice, ID: "source-figure-read", Source: b.page.Source, Span: b.figure.Span,
		Text: fmt.Sprintf("%s of source %q is %q here, and %q in %s:%d", entry.Text, b.figure.Target, b.figure.Title,
			a.figure.Title, a.page.Source.Name, at),
		Note: fmt.Sprintf("use the words of sources.yaml in both, %q; if the source gives it for both, write both there, "+
			"with a semicolon between", entry.For)}, true
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
