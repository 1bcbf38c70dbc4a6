package proof

import (
	"fmt"

	"acreleaf/calc/prose"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// worksheets compares the numbers of a translation's blocks with those of the original. Blocks of the same name belong
// together, and those without a name by their order. Worked figures need no look of their own: each is compared with
// its worksheet, and where the worksheets have the same numbers, so have the figures.
func (t *translation) worksheets() {
	ours := blocksByName(t.page.Document.Blocks)
	for name, theirs := range orderedBlocks(t.original.Document.Blocks) {
		block := ours[name]
		if block == nil {
			t.lacks(fmt.Sprintf("the original has %s on line %d that this translation lacks",
				named(theirs), t.lineOf(theirs.Span.Start)), "copy it from "+t.at(theirs.Span.Start))
			continue
		}
		t.block(block, theirs)
	}
}

func named(b *markdown.Block) string {
	if b.Name == "" {
		return b.Construct.One()
	}
	return fmt.Sprintf("%s %q", b.Construct.One(), b.Name)
}

func (t *translation) lineOf(offset int) int { return t.original.Source.Line(offset) }

// key tells blocks of a page apart: by their names, else by their place among those without one.
type key struct {
	construct construct.Kind
	name      string
	order     int
}

func orderedBlocks(blocks []*markdown.Block) func(yield func(key, *markdown.Block) bool) {
	return func(yield func(key, *markdown.Block) bool) {
		nameless := map[construct.Kind]int{}
		for _, b := range blocks {
			k := key{construct: b.Construct, name: b.Name}
			if b.Name == "" {
				nameless[b.Construct]++
				k.order = nameless[b.Construct]
			}
			if !yield(k, b) {
				return
			}
		}
	}
}

func blocksByName(blocks []*markdown.Block) map[key]*markdown.Block {
	byName := make(map[key]*markdown.Block, len(blocks))
	for k, b := range orderedBlocks(blocks) {
		byName[k] = b
	}
	return byName
}

// block compares two blocks line by line. A title is a text, and is translated.
func (t *translation) block(ours, theirs *markdown.Block) {
	written := map[string]markdown.Entry{}
	for _, e := range ours.Entries {
		written[e.Key] = e
	}
	a, b := t.page.Work.Bound(ours), t.original.Work.Bound(theirs)
	if !t.page.Work.Has(ours) || !t.original.Work.Has(theirs) {
		return // a block with a fault has a message already, and is no pattern for the other
	}
	for _, e := range theirs.Entries {
		if theirs.Construct.HasText(e.Key) {
			continue
		}
		own, is := written[e.Key]
		delete(written, e.Key)
		switch {
		case !is:
			t.fault(ours.Span, "translation-differs",
				fmt.Sprintf("the original has %s: %s (%s), and this %s has no %s", e.Key, e.Value, t.at(e.KeySpan.Start),
					ours.Construct, e.Key), "add a line: "+e.Key+": "+e.Value)
		case !sameEntry(own, e, a, b):
			t.fault(own.ValueSpan, "translation-differs",
				fmt.Sprintf("the translation has %s: %s, and the original has %s (%s)", e.Key, own.Value, e.Value,
					t.at(e.ValueSpan.Start)), "write "+e.Value+" here, or correct the original")
		}
	}
	for _, own := range ours.Entries {
		if _, left := written[own.Key]; left && !ours.Construct.HasText(own.Key) {
			t.fault(own.KeySpan, "translation-differs",
				fmt.Sprintf("the translation has %s: %s, and the original says nothing of it (%s)", own.Key, own.Value,
					t.at(theirs.Span.Start)), "take the line out here, or add it to the original")
		}
	}
}

// sameEntry says whether two lines say the same, be it in other units or as another text of the same number.
func sameEntry(ours, theirs markdown.Entry, a, b *worksheet.Bound) bool {
	if oneLine(ours.Value) == oneLine(theirs.Value) {
		return true
	}
	if a == nil || b == nil {
		return false // it works no calculation, so its lines are names
	}
	own, is := a.Entries[ours.Key]
	original, has := b.Entries[theirs.Key]
	if !is || !has {
		return false
	}
	return own.Other == original.Other && own.Form == original.Form &&
		near(own.Value, original.Value) && near(own.High, original.High)
}

// near says whether two numbers are one, but for the rounding of a conversion.
func near(a, b float64) bool { return prose.RelativeDifference(a, b) < 1e-9 || a == b }
