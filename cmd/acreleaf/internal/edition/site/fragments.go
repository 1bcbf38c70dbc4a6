package site

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// fragments writes the pieces of a page's text that the Markdown package leaves to us.
type fragments struct {
	edition  *edition
	page     *book.Page
	at       page.Address // of the file that the text is for
	renderer *render.Renderer
	cited    *citations

	worksheets int                   // how many were written
	exercises  int                   // likewise
	drawings   int                   // likewise
	notes      []func(*bytes.Buffer) // of sourced figures and records, still to be written
	below      int                   // of the text, how much comes before the last worksheet ends
	own        []render.Own          // the same of worked figures
}

// blocks has what writes each kind of block that package markdown leaves to us.
var blocks = [construct.Kinds]func(*fragments, *bytes.Buffer, *markdown.Block){
	construct.Drawing:   (*fragments).drawing,
	construct.Exercise:  (*fragments).exercise,
	construct.Reckoner:  (*fragments).reckoner,
	construct.Reference: (*fragments).reference,
	construct.Worksheet: (*fragments).worksheet,
}

// Block writes a block.
func (f *fragments) Block(w *bytes.Buffer, b *markdown.Block) {
	blocks[b.Construct](f, w, b)
}

func (f *fragments) reckoner(w *bytes.Buffer, b *markdown.Block) {
	bound := f.page.Work.Bound(b)
	v := tableView(f.page.Work, bound)
	if !f.hasWorksheet(bound.Sheet) {
		v.Constants = f.cited.constants(bound.Sheet, f.page.Language)
	}
	f.renderer.Reckoner(w, v)
}

func (f *fragments) worksheet(w *bytes.Buffer, b *markdown.Block) {
	bound := f.page.Work.Bound(b)
	f.worksheets++
	chain, cited := f.page.Address.Kind == kind.Block, f.cited
	if chain {
		cited = f.edition.newCitations(f.at) // the page of each calculation lists what its numbers rest on
	}
	v := worksheetView(f.page.Work, bound, cited)
	v.Number = f.worksheets
	if chain {
		f.inChain(v, bound)
	}
	v.CodeHref = f.page.Address.To(calculationAddress(f.page.Address.Language, bound.Sheet))
	f.renderer.Worksheet(w, v)
	f.below = w.Len()
}

// hasWorksheet says whether a worksheet of the page is of that calculation, and so says what a reckoner of it rests on.
func (f *fragments) hasWorksheet(s *sheet.Sheet) bool {
	return slices.ContainsFunc(f.page.Work.Sheets, func(b *worksheet.Bound) bool {
		return b.Kind == construct.Worksheet && b.Sheet == s
	})
}

// Passage writes a passage.
func (f *fragments) Passage(w *bytes.Buffer, p *markdown.Passage, text func(i int)) {
	bound := f.page.Work.Passage(p)
	v := &render.Passage{Index: bound.Index}
	for i := range p.Cases {
		c := render.Case{When: bound.Asked.CaseCell(i)}
		c.Shown, c.Partly, c.Perhaps = holds(c.When, f.page.Work.Cells, f.page.Work.High)
		v.Cases = append(v.Cases, c)
	}
	f.renderer.Passage(w, v, text)
}

// figures has what writes the figures of each scheme.
var figures = [construct.Schemes]func(*fragments, *bytes.Buffer, *markdown.Figure){
	construct.Worked:   (*fragments).worked,
	construct.Sourced:  (*fragments).sourced,
	construct.Recorded: (*fragments).recorded,
	construct.Sized:    (*fragments).sized,
}

// Figure writes a figure of the prose.
func (f *fragments) Figure(w *bytes.Buffer, figure *markdown.Figure) {
	figures[figure.Scheme](f, w, figure)
}

func (f *fragments) recorded(w *bytes.Buffer, figure *markdown.Figure) {
	v := &render.Recorded{Text: figure.Text, What: figure.Title, Day: figure.Target}
	f.renderer.Recorded(w, v)
	f.notes = append(f.notes, func(w *bytes.Buffer) { f.renderer.RecordNote(w, v) })
}

func (f *fragments) sized(w *bytes.Buffer, figure *markdown.Figure) { f.renderer.Size(w, figure.Text) }

func (f *fragments) sourced(w *bytes.Buffer, figure *markdown.Figure) {
	r := f.cited.source(figure.Target)
	v := &render.Sourced{
		Text: figure.Text, Cite: f.cited.figure(r, "", figure.Text),
		Source: citation(r), For: cmp.Or(figure.Title, f.cited.meaning(r, figure.Text)), Kind: string(r.Kind),
	}
	f.renderer.Sourced(w, v)
	f.notes = append(f.notes, func(w *bytes.Buffer) { f.renderer.SourceNote(w, v) })
}

// worked writes a worked figure, and keeps what the margin gives beside it.
func (f *fragments) worked(w *bytes.Buffer, figure *markdown.Figure) {
	worked := f.page.Work.Figure(figure)
	if figure.Passage != nil {
		f.following(w, worked)
		return
	}
	f.renderer.Worked(w, &render.Worked{Href: "#" + construct.Anchor(worked.Bound.Block.Name), Text: figure.Text})
	own := render.Own{Sheet: worked.Bound.Use.Index, Label: book.Label(worked.Bound.Sheet, worked.Name),
		Lang: labelLang(f.page.Work, worked.Bound, worked.Name)}
	if own.Shown = inAuthorsUnit(worked); own.Shown.By == "" {
		own.Shown = *shown(f.page.Work.Example(worked.Bound), worked.Name)
	}
	if !slices.ContainsFunc(f.own, func(o render.Own) bool { return o.Shown.Cell == own.Shown.Cell }) {
		f.own = append(f.own, own)
	}
}

// following writes a worked figure of a passage.
func (f *fragments) following(w *bytes.Buffer, worked *worksheet.Figure) {
	by := ""
	if worked.By.Apply(1) != 1 {
		by = worked.By.Text()
	}
	v := &render.Following{Sheet: worked.Bound.Use.Index, Href: "#" + construct.Anchor(worked.Bound.Block.Name)}
	v.Shown = render.Shown{
		Cell: worked.Cell, Before: worked.Before, Text: worked.Number, After: worked.After, By: by,
		Day:  worked.Bound.Sheet.IsDate(worked.Name),
		Kind: otherKind(f.page.Work.Example(worked.Bound), worked.Name),
	}
	present(&v.Shown, worked.Bound.Use, worked.Name)
	f.renderer.Following(w, v)
}

// inAuthorsUnit is a figure as its author wrote it; with a factor when that is in another unit than the worksheet's.
func inAuthorsUnit(worked *worksheet.Figure) render.Shown {
	s := render.Shown{Cell: worked.Cell, Before: worked.Before, Text: worked.Number, After: worked.After}
	if worked.By.Apply(1) != 1 && strings.TrimSpace(worked.Before+worked.After) != "" {
		s.By = worked.By.Text()
	}
	return s
}

// Notes writes the notes of the figures since it was last called.
func (f *fragments) Notes(w *bytes.Buffer) {
	f.renderer.OwnNote(w, f.own)
	f.own = f.own[:0]
	for _, note := range f.notes {
		note(w)
	}
	f.notes = f.notes[:0]
}

// Size gives the dots of a picture of the content folder.
func (f *fragments) Size(l *markdown.Link) (width, height int) {
	size := f.page.Links[l.Index].Size
	return size.Width, size.Height
}

// Link gives the way from the page to what a link leads to.
func (f *fragments) Link(l *markdown.Link) string { return href(f.at, f.page.Links[l.Index]) }
