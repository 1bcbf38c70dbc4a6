package worksheet

import (
	"errors"
	"fmt"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// The keys of a block that are not givens.
const (
	keyCalculation = "calculation"
	keyTitle       = "title"
)

func (b *binder) bindBlocks() {
	seen := map[string]*markdown.Block{}
	for _, block := range b.doc.Blocks {
		before := len(b.messages)
		bound := b.bindBlock(block)
		if block.Name != "" && block.Construct == "worksheet" {
			if first := seen[block.Name]; first != nil {
				line, _ := b.doc.Source.Position(first.Span.Start)
				b.fault(block.NameSpan, "worksheet-twice",
					fmt.Sprintf("there is a worksheet %q on line %d already", block.Name, line),
					"give this one a name of its own")
			}
			seen[block.Name] = block
		}
		if len(b.messages) > before {
			b.faulty[block.Name] = true
			continue
		}
		b.bound = append(b.bound, bound)
	}
}

// bindBlock reads one block. It reports what is wrong with it; the result counts only when nothing is.
func (b *binder) bindBlock(block *markdown.Block) *Bound {
	if block.Construct == "worksheet" && block.Name == "" {
		b.fault(block.Span, "worksheet-unnamed", "this worksheet has no name",
			"write a short name after the word, such as: worksheet soil")
	}
	bound := &Bound{
		Block: block, Sheet: b.calculation(block), name: block.Name,
		Entries: map[string]sheet.Entry{}, links: map[string]linkEntry{},
	}
	if bound.Sheet == nil {
		return bound
	}
	if block.Construct == "reckoner" {
		bound.Table = &Table{}
		bound.name = fmt.Sprintf("reckoner %d", block.Index) // a space: no author's name has one
	}
	for _, entry := range block.Entries {
		b.bindEntry(bound, entry)
	}
	if bound.Table != nil {
		b.checkTable(bound)
	} else {
		b.checkMissing(bound)
	}
	return bound
}

func (b *binder) calculation(block *markdown.Block) *sheet.Sheet {
	for _, entry := range block.Entries {
		if entry.Key != keyCalculation {
			continue
		}
		if s := b.catalogue.Find(entry.Value); s != nil {
			return s
		}
		b.fault(entry.ValueSpan, "calculation-unknown", fmt.Sprintf("there is no calculation %q", entry.Value),
			nearest("write", entry.Value, b.catalogue.Names()))
		return nil
	}
	b.fault(block.Span, "calculation-missing", fmt.Sprintf("this %s has no calculation", block.Construct),
		"add a line such as: calculation: soil-nitrogen")
	return nil
}

// bindEntry reads one line of a block.
func (b *binder) bindEntry(bound *Bound, entry markdown.Entry) {
	switch {
	case entry.Key == keyCalculation:
	case entry.Key == keyTitle:
		bound.Title = entry.Value
	case bound.Table != nil && b.bindTableEntry(bound, entry):
	default:
		b.bindGiven(bound, entry)
	}
}

func (b *binder) bindGiven(bound *Bound, entry markdown.Entry) {
	given := bound.Sheet.FindGiven(entry.Key)
	if given == nil {
		known := []string{keyCalculation, keyTitle}
		if bound.Table != nil {
			known = append(known, tableKeys...)
		}
		for _, g := range bound.Sheet.Givens {
			known = append(known, g.Name)
		}
		b.fault(entry.KeySpan, "given-unknown",
			fmt.Sprintf("%s has no given %q", bound.Sheet.Name, entry.Key), nearest("write", entry.Key, known))
		return
	}
	if link, is := parseLink(entry); is {
		bound.links[given.Name] = link
		return
	}
	read, err := given.Read(entry.Value)
	if err != nil {
		b.unreadable(entry.ValueSpan, given.Name, err, "for example: "+given.Name+": "+given.Example())
		return
	}
	bound.Entries[given.Name] = read
}

// unreadable reports a quantity that cannot be taken. If the error knows the place of the unit, so does the message.
func (b *binder) unreadable(span message.Span, name string, err error, example string) {
	var place *unit.Error
	note := example
	if errors.As(err, &place) {
		if place.At > 0 && span.Start+place.At < span.End {
			span.Start += place.At
		}
		if place.Nearest != "" {
			note = "did you mean " + place.Nearest + "?\n" + example
		}
	}
	b.fault(span, "quantity-unfit", strings.TrimPrefix(name+": ", ": ")+err.Error(), note)
}

func (b *binder) checkMissing(bound *Bound) {
	for _, given := range bound.Sheet.Givens {
		_, written := bound.Entries[given.Name]
		_, linked := bound.links[given.Name]
		if written || linked || given.Optional || b.tried(bound.Block, given.Name) {
			continue
		}
		b.fault(bound.Block.Span, "given-missing",
			fmt.Sprintf("the %s does not say %s", bound.Block.Construct, given.Name),
			fmt.Sprintf("add a line such as: %s: %s", given.Name, given.Example()))
	}
}

// tried says whether the author wrote a line for the given, which was reported if it could not be read.
func (b *binder) tried(block *markdown.Block, given string) bool {
	for _, entry := range block.Entries {
		if entry.Key == given {
			return true
		}
	}
	return false
}

// nearest is a note that offers the nearest known name, or all of them.
func nearest(verb, name string, known []string) string {
	if near, ok := message.Nearest(name, known); ok {
		return verb + " " + near
	}
	return verb + " one of: " + strings.Join(known, ", ")
}
