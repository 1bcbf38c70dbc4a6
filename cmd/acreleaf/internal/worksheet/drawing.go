package worksheet

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/drawing"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// A Drawing is a picture that the numbers of a worksheet draw.
type Drawing struct {
	Of    *Bound
	Rule  *drawing.Rule
	Title string // the author's own; "" for the usual one
	Index int    // place among the drawings of the page, from 1
}

const keyOf = "of"

var drawingKeys = []string{keyOf, keyTitle}

// DrawingKeys lists the keys of a drawing.
func DrawingKeys() []string { return slices.Clone(drawingKeys) }

// Drawing gives what a block was bound to. It is nil for a block with a fault, and for any that is no drawing.
func (p *Page) Drawing(block *markdown.Block) *Drawing { return p.drawings[block.Index] }

// addDrawing keeps a drawing until all worksheets of the page are bound: it may come before the one that it draws.
func (b *binder) addDrawing(block *markdown.Block) { b.drawn = append(b.drawn, block) }

// bindDrawings binds the drawings of the page to their worksheets.
func (b *binder) bindDrawings() {
	for _, block := range b.drawn {
		before, title := len(b.messages), ""
		var of *markdown.Entry
		for i, entry := range block.Entries {
			switch entry.Key {
			case keyOf:
				of = &block.Entries[i]
			case keyTitle:
				title = entry.Value
			default:
				b.fault(entry.KeySpan, "key-unknown", fmt.Sprintf("a drawing has no key %q", entry.Key),
					write("", entry.Key, drawingKeys))
			}
		}
		bound := b.drawnOf(block, of)
		if bound != nil && len(b.messages) == before && !block.Unread && !slices.ContainsFunc(block.Entries, isEmpty) {
			b.page.drawings[block.Index] = &Drawing{Of: bound, Rule: drawing.Of(bound.Sheet.Name), Title: title,
				Index: len(b.page.drawings) + 1}
		}
	}
}

// drawnOf finds the worksheet of a drawing, and reports what keeps it from being drawn.
func (b *binder) drawnOf(block *markdown.Block, of *markdown.Entry) *Bound {
	switch {
	case of == nil && !block.Unread && len(block.Entries) == 0, of == nil && onlyKnown(block):
		if !block.Unread {
			b.fault(block.Span, "drawing-of", "this drawing does not say which worksheet it draws",
				"add a line such as: of: "+b.drawable("season"))
		}
		return nil
	case of == nil || isEmpty(*of) || b.faulty[of.Value]: // reported there
		return nil
	}
	bound := b.named(of.Value)
	if bound == nil {
		b.fault(of.ValueSpan, "drawing-of", fmt.Sprintf("this page has no worksheet %q to draw", of.Value),
			write("", of.Value, b.worksheetNames()))
		return nil
	}
	if drawing.Of(bound.Sheet.Name) == nil {
		b.fault(of.ValueSpan, "drawing-unfit",
			fmt.Sprintf("worksheet %q works %s, of which no picture is made", of.Value, bound.Sheet.Name),
			"take the drawing out, or draw a worksheet of one of: "+strings.Join(drawing.Calculations(), ", "))
		return nil
	}
	return bound
}

// onlyKnown says whether a block has no key that it should not: one may be a misspelt "of".
func onlyKnown(block *markdown.Block) bool {
	return !slices.ContainsFunc(block.Entries, func(e markdown.Entry) bool { return !slices.Contains(drawingKeys, e.Key) })
}

// drawable names a worksheet of the page that can be drawn, or gives another name as an example.
func (b *binder) drawable(other string) string {
	for _, bound := range b.bound {
		if bound.name != "" && bound.Table == nil && drawing.Of(bound.Sheet.Name) != nil {
			return bound.name
		}
	}
	return other
}
