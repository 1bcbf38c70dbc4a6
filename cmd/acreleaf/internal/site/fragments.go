package site

import (
	"bytes"
	"cmp"
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// fragments writes the pieces of a page's text that the Markdown package leaves to us.
type fragments struct {
	press    *press
	draft    *draft
	renderer *render.Renderer
	cited    *citations

	worksheets int               // how many were written
	sourced    []*render.Sourced // figures whose notes are still to be written
}

// Block writes a worksheet or a reckoner.
func (f *fragments) Block(w *bytes.Buffer, b *markdown.Block) {
	bound := f.draft.work.Bound(b)
	if bound.Table != nil {
		v := tableView(f.draft.work, bound)
		if !f.worked(bound.Sheet) {
			v.Constants = f.cited.constants(bound.Sheet)
		}
		f.renderer.Reckoner(w, v)
		return
	}
	f.worksheets++
	v := worksheetView(f.draft.work, bound, f.cited)
	v.Number = f.worksheets
	v.CodeHref = f.draft.address.To(calculationAddress(f.draft.address.Language, bound.Sheet)) + "#" + render.CodeAnchor
	f.renderer.Worksheet(w, v)
}

// worked says whether a worksheet of the page is of that calculation, and so says what a reckoner of it rests on.
func (f *fragments) worked(s *sheet.Sheet) bool {
	return slices.ContainsFunc(f.draft.work.Sheets, func(b *worksheet.Bound) bool {
		return b.Table == nil && b.Sheet == s
	})
}

// Figure writes a worked or a sourced figure.
func (f *fragments) Figure(w *bytes.Buffer, figure *markdown.Figure) {
	if figure.Scheme == "source" {
		r := f.press.sources[figure.Target]
		v := &render.Sourced{
			Text: figure.Text, Cite: f.cited.figure(r, figure.Text),
			Source: citation(r), For: cmp.Or(figure.Title, meaning(r, figure.Text)), Kind: string(r.Kind),
		}
		f.renderer.Sourced(w, v)
		f.sourced = append(f.sourced, v)
		return
	}
	worked := f.draft.work.Figure(figure)
	by := ""
	if worked.By.Apply(1) != 1 {
		by = worked.By.Text()
	}
	v := &render.Worked{Sheet: worked.Bound.Use.Index, Href: "#" + render.Anchor(worked.Bound.Block.Name)}
	v.Shown = render.Shown{
		Cell: worked.Cell, Before: worked.Before, Text: worked.Number, After: worked.After, By: by,
		Day:  worked.Bound.Sheet.IsDate(worked.Name),
		Kind: kind(f.draft.work.Example(worked.Bound), worked.Name),
	}
	present(&v.Shown, worked.Bound.Use, worked.Name)
	f.renderer.Worked(w, v)
}

// Notes writes the notes of the sourced figures since it was last called.
func (f *fragments) Notes(w *bytes.Buffer) {
	for _, v := range f.sourced {
		f.renderer.SourceNote(w, v)
	}
	f.sourced = f.sourced[:0]
}

// Link gives the way that join found.
func (f *fragments) Link(l *markdown.Link) string { return f.draft.hrefs[l.Index] }
