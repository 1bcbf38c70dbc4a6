package worksheet

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// The keys of a block that are not givens.
const (
	keyCalculation = "calculation"
	keyTitle       = "title"
)

// BlockKeys lists the keys of a worksheet that are not givens, and TableKeys those that a reckoner has on top.
func BlockKeys() []string { return []string{keyCalculation, keyTitle} }
func TableKeys() []string { return slices.Clone(tableKeys) }

// binders has what binds each kind of block. Passages are bound to the graph of the others (closePassages), and a
// calculation is defined before the pages are bound (Define).
var binders = [construct.Kinds]func(*binder, *markdown.Block){
	construct.Drawing:   (*binder).addDrawing,
	construct.Exercise:  (*binder).addExercise,
	construct.Reckoner:  (*binder).addSheet,
	construct.Reference: (*binder).addReference,
	construct.Worksheet: (*binder).addSheet,
}

// Each of what a page may have so many of is worked for every page that is made, and what a reader types into one may
// change all others. Of an exercise all cards are dealt.
const (
	mostBlocks    = 50 // of all kinds together
	mostExercises = 20
	mostPassages  = 100
)

func (b *binder) bindBlocks() {
	exercises := 0
	for i, block := range b.doc.Blocks {
		if block.Construct == construct.Exercise {
			exercises++
		}
		crowded := i >= mostBlocks
		switch {
		case i == mostBlocks:
			b.crowded(block.Span, mostBlocks, "worksheets, reckoners, drawings, exercises and tables")
		case block.Construct == construct.Exercise && exercises > mostExercises && !crowded:
			crowded = true
			if exercises == mostExercises+1 {
				b.crowded(block.Span, mostExercises, "exercises")
			}
		}
		if crowded {
			b.faulty[block.Name] = true // what asks for it is not reported too
			continue
		}
		binders[block.Construct](b, block)
	}
}

// crowded reports the first of something that is more than a page may have.
func (b *binder) crowded(first message.Span, most int, what string) {
	b.fault(first, "page-crowded", fmt.Sprintf("this page has more than %d %s", most, what),
		"divide the page into two, and link them")
}

// addSheet binds a block that works a calculation.
func (b *binder) addSheet(block *markdown.Block) {
	before := len(b.messages)
	bound := b.bindBlock(block)
	b.checkTwice(block)
	// markdown has reported a missing name, an unread line and an empty value, and Define a calculation that cannot be
	// made
	whole := bound.name != "" && !block.Unread && bound.Sheet != nil && !slices.ContainsFunc(block.Entries, isEmpty)
	if len(b.messages) > before || !whole {
		b.faulty[bound.name] = true
		return
	}
	b.bound = append(b.bound, bound)
}

// A blockName is a name among those of the blocks of a kind.
type blockName struct {
	kind construct.Kind
	name string
}

// checkTwice reports a worksheet or an exercise of a name that another has.
func (b *binder) checkTwice(block *markdown.Block) {
	if block.Name == "" || block.Construct.Row().Naming != construct.Named {
		return
	}
	as := blockName{block.Construct, block.Name}
	if first := b.seen[as]; first != nil {
		const note = "give this one a name of its own"
		already := fmt.Sprintf("%q on line %d already", block.Name, b.doc.Source.Line(first.Span.Start))
		if block.Construct == construct.Exercise {
			b.fault(block.NameSpan, "exercise-twice", "there is an exercise "+already, note)
		} else {
			b.fault(block.NameSpan, "worksheet-twice", "there is a worksheet "+already, note)
		}
	}
	b.seen[as] = block
}

func isEmpty(entry markdown.Entry) bool { return strings.TrimSpace(entry.Value) == "" }

// bindBlock reads one block. It reports what is wrong with it; the result counts only when nothing is.
func (b *binder) bindBlock(block *markdown.Block) *Bound {
	bound := &Bound{
		Block: block, Kind: block.Construct, Sheet: b.calculation(block), name: block.Name,
		Entries: map[string]sheet.Entry{}, links: map[string]linkEntry{}, tried: map[string]bool{},
	}
	if bound.Kind == construct.Reckoner {
		bound.Table = &Table{}
		bound.name = fmt.Sprintf("reckoner %d", block.Index) // a space: no author's name has one
	}
	if bound.Sheet == nil {
		return bound
	}
	for _, entry := range block.Entries {
		bound.tried[entry.Key] = true
		if !isEmpty(entry) {
			b.bindEntry(bound, entry)
		}
	}
	switch {
	case block.Unread: // markdown has reported why, and what is missing may be there
	case bound.Kind == construct.Reckoner:
		b.checkTable(bound)
	default:
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
			return s.In(b.tag)
		}
		if !isEmpty(entry) && !b.catalogue.Faulty(entry.Value) {
			b.fault(entry.ValueSpan, "calculation-unknown", fmt.Sprintf("there is no calculation %q", entry.Value),
				write("", entry.Value, b.catalogue.Names()))
		}
		return nil
	}
	if block.Unread {
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
	case bound.Kind == construct.Reckoner && b.bindTableEntry(bound, entry):
	default:
		b.bindGiven(bound, entry)
	}
}

func (b *binder) bindGiven(bound *Bound, entry markdown.Entry) {
	given := bound.Sheet.FindGiven(entry.Key)
	if given == nil {
		known := []string{keyCalculation, keyTitle}
		if bound.Kind == construct.Reckoner {
			known = append(known, tableKeys...)
		}
		for _, g := range bound.Sheet.Givens {
			known = append(known, g.Name)
		}
		note := "take the line out, or write one of: " + strings.Join(known, ", ")
		if near, ok := message.Nearest(entry.Key, known); ok {
			bound.tried[near] = true // so that it is not said to be missing too
			note = "write " + near
		}
		b.fault(entry.KeySpan, "given-unknown",
			fmt.Sprintf("%s has no given %q", bound.Sheet.Name, entry.Key), note)
		return
	}
	if link, is := parseLink(entry); is {
		bound.links[given.Name] = link
		return
	}
	read, err := given.Read(b.language.PointDecimals(entry.Value))
	if err != nil {
		b.unreadable(entry.ValueSpan, given.Name, err, given.Name+": "+given.Example())
		return
	}
	if given.Date && read.Value != read.High {
		b.unreadable(entry.ValueSpan, given.Name,
			fmt.Errorf("a page has one day here, which a reader can change; write %s", sheet.ISODate(read.Value)), "")
		return
	}
	bound.Entries[given.Name] = read
}

// unreadable reports a quantity that cannot be taken. If the error knows the place of the unit, so does the message.
func (b *binder) unreadable(span message.Span, name string, err error, example string) {
	var place *unit.Error
	if errors.As(err, &place) && place.At > 0 && span.Start+place.At < span.End {
		span.Start += place.At
		span.End = span.Start + wordLength(b.doc.Source.Text[span.Start:span.End])
	}
	b.untaken(span, name, err, example)
}

// untaken reports a quantity that cannot be taken, at its place. What its error advises is the note, and the example if
// that holds none.
func (b *binder) untaken(span message.Span, name string, err error, example string) {
	text, advice := unit.Advice(err)
	note := "for example: " + example
	if advice != "" {
		_, value, _ := strings.Cut(example, ": ")
		if strings.Contains(advice, cmp.Or(value, example)) || isWhole(advice) {
			note = advice
		} else {
			note = anyExample.Replace(advice) + "\n" + note
		}
	}
	if name != "" {
		text = name + ": " + text
	}
	b.fault(span, "quantity-unfit", text, note)
}

// anyExample takes out the example of a message that knows no given, where one for the given follows.
var anyExample = strings.NewReplacer(", such as 12 ppm NO3-N", "", ", as in 2027-04-15", "")

// isWhole says whether advice begins with a quantity or a day to write, and needs no other example.
func isWhole(advice string) bool {
	text, writes := strings.CutPrefix(advice, "write ")
	text, _, _ = strings.Cut(text, " or ")
	r, err := unit.ParseRange(strings.TrimPrefix(text, "<"))
	_, noDay := sheet.ReadDay(text)
	return writes && (err == nil && r.Unit.String() != "" || noDay == nil)
}

// wordLength is how much of a unit the word at its start takes.
func wordLength(unitText []byte) int {
	if end := bytes.IndexAny(unitText, " /()·"); end > 0 {
		return end
	}
	return len(unitText)
}

func (b *binder) checkMissing(bound *Bound) {
	for _, given := range bound.Sheet.Givens {
		_, written := bound.Entries[given.Name]
		_, linked := bound.links[given.Name]
		if written || linked || given.Optional || bound.tried[given.Name] {
			continue
		}
		if meant, usual := given.Unsaid(); usual {
			bound.Entries[given.Name] = meant
			continue
		}
		b.fault(bound.Block.Span, "given-missing",
			fmt.Sprintf("the %s does not say %s", bound.Block.Construct, given.Name),
			fmt.Sprintf("add a line such as: %s: %s", given.Name, given.Example()))
	}
}

// write is a note that offers the nearest known name, or all of them, as they are written: with what comes before.
func write(before, name string, known []string) string {
	if near, ok := message.Nearest(name, known); ok {
		return "write " + before + near
	}
	switch len(known) {
	case 0:
		return "there is none of them here yet: write one first"
	case 1:
		return "write " + before + known[0]
	}
	return "write one of: " + before + strings.Join(known, ", "+before)
}
