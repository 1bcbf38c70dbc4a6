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
	Show         string      // the answer
	Mark         *Mark       // the band that is marked; nil for none
	Follow       string      // the worksheet whose numbers it follows; "" for none
	Values       [][]float64 // of a range the lower ends
	High         [][]float64

	showSpan, followSpan message.Span
}

// mostCells is how many cells a reckoner may have. A page on paper has room for fewer.
const mostCells = 400

// A Mark is a band of answers, in the unit of the answer; an infinity where it is open.
type Mark struct {
	Low, High float64
	Typed     unit.Range // the numbers as the author wrote them
}

// The keys of a reckoner beside its givens.
var tableKeys = []string{"down", "across", "show", "mark", "follow"}

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

// mark reads "25 to 35 lb N/ac", "at least 25 lb N/ac" or "at most 35 lb N/ac".
func (b *binder) mark(bound *Bound, entry markdown.Entry) *Mark {
	show := b.shown(bound)
	if show == nil {
		return nil // reported by checkTable
	}
	example := fmt.Sprintf("mark: 25 to 35 %s, or: mark: at least 25 %s", show.Unit, show.Unit)
	text, atLeast := strings.CutPrefix(entry.Value, "at least ")
	text, atMost := strings.CutPrefix(text, "at most ")
	typed, err := unit.ParseRange(b.language.PointDecimals(text))
	r := typed
	if err == nil {
		r, err = typed.In(show.Unit)
	}
	switch {
	case err != nil:
		b.unreadable(entry.ValueSpan, "mark", err, example)
		return nil
	case atLeast && atMost || (atLeast || atMost) && r.Low != r.High:
		b.fault(entry.ValueSpan, "mark-unfit", "a mark is open at one end, or goes from one number to another",
			"for example: "+example)
		return nil
	}
	m := &Mark{Low: r.Low, High: r.High, Typed: typed}
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
	b.checkShow(bound)
	if !b.checkAxes(bound) {
		return // what else is missing depends on which givens the axes take
	}
	if cells := len(t.Down.Values) * len(t.Across.Values); cells > mostCells {
		b.fault(bound.Block.Span, "reckoner-long", fmt.Sprintf("this reckoner has %d × %d cells, and may have %d",
			len(t.Down.Values), len(t.Across.Values), mostCells), "leave values out, or make two reckoners of it")
	}
	for _, given := range bound.Sheet.Givens {
		_, written := bound.Entries[given.Name]
		_, linked := bound.links[given.Name]
		if written || linked || given.Name == t.Down.Given || given.Name == t.Across.Given {
			continue
		}
		switch {
		case t.Follow != "":
			link := sheet.Link{Use: t.Follow, Name: given.Name}
			bound.links[given.Name] = linkEntry{Link: link, span: t.followSpan, follows: true}
		case given.Usual:
			bound.Entries[given.Name], _ = given.Unsaid()
		case !given.Optional && !bound.tried[given.Name]:
			b.fault(bound.Block.Span, "given-missing", "this reckoner does not say "+given.Name,
				fmt.Sprintf("add a line such as: %s: %s", given.Name, given.Example()))
		}
	}
}

func (b *binder) checkShow(bound *Bound) {
	var names []string
	for _, r := range bound.Sheet.Answers() {
		names = append(names, r.Name)
	}
	switch {
	case !bound.tried["show"]:
		b.fault(bound.Block.Span, "reckoner-short", "this reckoner does not say what it shows",
			"add a line such as: show: "+names[0])
	case bound.Table.Show != "" && b.shown(bound) == nil:
		b.fault(bound.Table.showSpan, "answer-unknown",
			fmt.Sprintf("%s has no answer %q", bound.Sheet.Name, bound.Table.Show), write("", bound.Table.Show, names))
	}
}

// checkAxes sees that two givens run along the reckoner, and that nothing else sets them.
func (b *binder) checkAxes(bound *Bound) bool {
	t := bound.Table
	for _, key := range []string{"down", "across"} {
		if !bound.tried[key] {
			b.fault(bound.Block.Span, "reckoner-short", "this reckoner does not say what runs "+key,
				"add a line such as: "+axisExample(key, bound.Sheet.FindGiven(numberGivens(bound.Sheet)[0])))
		}
	}
	if t.Down.Given == "" || t.Across.Given == "" {
		return false
	}
	if t.Down.Given == t.Across.Given {
		b.fault(bound.Block.Span, "axis-unfit", fmt.Sprintf("%s runs both down and across", t.Down.Given),
			"let another given run one of the two ways")
		return false
	}
	for _, entry := range bound.Block.Entries {
		if entry.Key == t.Down.Given || entry.Key == t.Across.Given {
			b.fault(entry.KeySpan, "given-on-axis", fmt.Sprintf("%s runs along the reckoner already", entry.Key),
				"take this line out")
		}
	}
	return true
}
