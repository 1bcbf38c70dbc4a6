package site

import (
	"bytes"
	"html/template"

	"acreleaf/calc/practice"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// isLed says whether a page has one for its leader: its kind may have one, and it has notes or exercises for it.
func isLed(p *book.Page) bool {
	return p.Address.Kind.Row().Led && len(p.Document.Leader)+len(p.Work.Exercises) > 0
}

// leader makes the page for who leads a workshop: the notes, the exercises for the wall, and the tally. No page links
// to it.
func (e *edition) leader(p *book.Page, r *render.Renderer) (file output.File, said message.List) {
	at := p.Address.Leader()
	words := &r.Words().Leader
	l := &render.Leader{Of: render.Link{Href: at.To(p.Address), Text: p.Metadata.Title}}
	l.Page = e.frame(at, words.TitleOf(p.Metadata.Title), words.Summary)
	l.Page.Unlisted = true
	f := &fragments{edition: e, page: p, at: at, renderer: r, cited: e.newCitations(at)}
	var notes bytes.Buffer
	if err := p.Document.LeaderHTML(&notes, f, markdownWords(r.Words())); err != nil {
		said = message.List{{ID: "page-unprintable", Source: p.Source, Text: err.Error(),
			Note: "look at the listings of the page"}}
	}
	l.Notes, l.Cited = template.HTML(notes.String()), f.cited.list
	l.Module, _ = p.Work.Module() // a fault was told of the page itself
	for i, exercise := range p.Work.Exercises {
		v := exerciseView(p.Work, exercise, p.Language)
		v.Number, v.Index = i+1, i
		tellLeader(v, exercise, words.Unknown)
		l.Exercises = append(l.Exercises, render.LedExercise{Exercise: v, Minutes: exercise.Minutes})
	}
	return output.File{Path: at.File(), Bytes: withBuffer(func(w *bytes.Buffer) { r.Leader(w, l) })}, said
}

// tellLeader changes the sentence on an answer that comes from no known slip: that for learners leads to the hint.
func tellLeader(v *render.Exercise, e *worksheet.Exercise, unknown string) {
	for i, part := range e.Placed.Steps {
		last := int(practice.Unknown)
		if part.Choice != nil {
			last = len(v.Asks[i].Verdicts) - 1
		}
		v.Asks[i].Verdicts[last].Before = unknown
	}
}
