package worksheet

import (
	"fmt"
	"math"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A Table is a reckoner: one answer over a grid of two givens.
type Table struct {
	Down, Across Axis
	Show         string // the answer
	Mark         *Mark  // the band that is marked; nil for none
	Follow       string // the worksheet whose numbers it follows; "" for none
	Values       [][]float64

	showSpan, followSpan message.Span
}

// An Axis is the values of one given, as written and in the given's own unit.
type Axis struct {
	Given  string
	Unit   unit.Unit // as written
	Typed  []float64
	Values []float64
}

// A Mark is a band of answers, in the unit of the answer; an infinity where it is open.
type Mark struct {
	Low, High float64
	Text      string // as the author wrote it
}

// The keys of a reckoner beside its givens.
var tableKeys = []string{"down", "across", "show", "mark", "follow"}

const axisExample = "for example: down: depth = 6, 12, 18, 24 in"

// bindTableEntry reads a line that only a reckoner has. False if the key is not one of those.
func (b *binder) bindTableEntry(bound *Bound, entry markdown.Entry) bool {
	t := bound.Table
	switch entry.Key {
	case "down":
		t.Down = b.axis(bound, entry)
	case "across":
		t.Across = b.axis(bound, entry)
	case "show":
		t.Show, t.showSpan = entry.Value, entry.ValueSpan
	case "mark":
		t.Mark = b.mark(bound, entry)
	case "follow":
		t.Follow, t.followSpan = entry.Value, entry.ValueSpan
	default:
		return false
	}
	return true
}

// axis reads "depth = 6, 12, 18, 24 in".
func (b *binder) axis(bound *Bound, entry markdown.Entry) Axis {
	name, list, found := strings.Cut(entry.Value, "=")
	name = strings.TrimSpace(name)
	given := bound.Sheet.FindGiven(name)
	if !found || given == nil || len(given.Choices) > 0 {
		b.fault(entry.ValueSpan, "axis-unfit", fmt.Sprintf("%q does not name a given and its values", entry.Value),
			axisExample)
		return Axis{}
	}
	parts := strings.Split(list, ", ")
	last := strings.TrimSpace(parts[len(parts)-1])
	_, unitText, _ := strings.Cut(last, " ")
	axis := Axis{Given: name}
	for i, part := range parts {
		part = strings.TrimSpace(part)
		if i < len(parts)-1 {
			part += " " + unitText
		}
		read, err := given.Read(part)
		if err != nil {
			b.unreadable(entry.ValueSpan, name, err, axisExample)
			return Axis{}
		}
		axis.Unit = read.Unit
		axis.Typed = append(axis.Typed, read.Typed)
		axis.Values = append(axis.Values, read.Value)
	}
	return axis
}

// mark reads "25 to 35 lb N/ac", "at least 25 lb N/ac" or "at most 35 lb N/ac".
func (b *binder) mark(bound *Bound, entry markdown.Entry) *Mark {
	text, atLeast := strings.CutPrefix(entry.Value, "at least ")
	text, atMost := strings.CutPrefix(text, "at most ")
	r, err := unit.ParseRange(text)
	const example = "for example: mark: 25 to 35 lb N/ac, or: mark: at least 25 lb N/ac"
	if err != nil {
		b.unreadable(entry.ValueSpan, "mark", err, example)
		return nil
	}
	show := b.shown(bound)
	if show == nil {
		return nil // reported by checkTable
	}
	if !r.Unit.Dimension().Fits(show.Unit.Dimension()) {
		b.fault(entry.ValueSpan, "mark-unfit",
			fmt.Sprintf("the mark is %s; %s is %s", r.Unit.Dimension(), show.Name, show.Unit.Dimension()), example)
		return nil
	}
	factor, err := r.Unit.To(show.Unit)
	if err != nil {
		b.unreadable(entry.ValueSpan, "mark", err, example)
		return nil
	}
	m := &Mark{Low: factor.Apply(r.Low), High: factor.Apply(r.High), Text: entry.Value}
	if atLeast {
		m.High = math.Inf(1)
	}
	if atMost {
		m.Low = math.Inf(-1)
	}
	return m
}

// shown is the answer that the reckoner shows, or nil.
func (b *binder) shown(bound *Bound) *sheet.Result {
	for _, entry := range bound.Block.Entries {
		if entry.Key != "show" {
			continue
		}
		for _, r := range bound.Sheet.Answers() {
			if r.Name == entry.Value {
				return r
			}
		}
	}
	return nil
}

// checkTable sees that a reckoner is whole, and links the givens that it leaves to the worksheet it follows.
func (b *binder) checkTable(bound *Bound) {
	t := bound.Table
	for _, key := range tableKeys[:3] {
		if !b.tried(bound.Block, key) {
			b.fault(bound.Block.Span, "reckoner-short", "this reckoner has no line: "+key,
				"add a line; "+axisExample)
			return
		}
	}
	if b.shown(bound) == nil {
		var names []string
		for _, r := range bound.Sheet.Answers() {
			names = append(names, r.Name)
		}
		b.fault(t.showSpan, "answer-unknown", fmt.Sprintf("%s has no answer %q", bound.Sheet.Name, t.Show),
			nearest("write", t.Show, names))
	}
	if t.Down.Given != "" && t.Down.Given == t.Across.Given {
		b.fault(bound.Block.Span, "axis-unfit", fmt.Sprintf("%s runs both down and across", t.Down.Given), axisExample)
	}
	delete(bound.Entries, t.Down.Given)
	delete(bound.Entries, t.Across.Given)
	for _, given := range bound.Sheet.Givens {
		_, written := bound.Entries[given.Name]
		_, linked := bound.links[given.Name]
		if written || linked || given.Name == t.Down.Given || given.Name == t.Across.Given {
			continue
		}
		switch {
		case t.Follow != "":
			bound.links[given.Name] = linkEntry{sheet.Link{Use: t.Follow, Name: given.Name}, t.followSpan}
		case !given.Optional && !b.tried(bound.Block, given.Name):
			b.fault(bound.Block.Span, "given-missing", "this reckoner does not say "+given.Name,
				fmt.Sprintf("add a line such as: %s: %s", given.Name, given.Example()))
		}
	}
}
