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

// An Axis is the values of one given, as written and in the given's own unit.
type Axis struct {
	Given  string
	Unit   unit.Unit // as written
	Typed  []float64
	Values []float64
	kind   sheet.Entry // the kind of quantity and the form that the values are of
}

// axis reads "depth = 6, 12, 18, 24 in". The unit comes after the last number.
func (b *binder) axis(bound *Bound, entry markdown.Entry) Axis {
	name, list, found := strings.Cut(entry.Value, "=")
	name = strings.TrimSpace(name)
	given := bound.Sheet.FindGiven(name)
	if !found || given == nil || len(given.Choices) > 0 {
		b.axisUnfit(bound, entry, name, found)
		return Axis{}
	}
	numbers := strings.Split(list, ", ")
	last, unitText, _ := strings.Cut(strings.TrimSpace(numbers[len(numbers)-1]), " ")
	numbers[len(numbers)-1] = last
	axis := Axis{Given: name}
	at := strings.Index(entry.Value, "=") + 1
	for _, number := range numbers {
		number = strings.TrimSuffix(strings.TrimSpace(number), " "+unitText) // it may be after each of them
		at += strings.Index(entry.Value[at:], number)
		read, err := given.Read(b.language.PointDecimals(strings.TrimSpace(number + " " + unitText)))
		if err != nil {
			b.axisUnread(entry, message.Span{Start: at, End: at + len(number)}, len(entry.Value)-len(unitText), given, err)
			return Axis{}
		}
		axis.Unit, axis.kind = read.Unit, sheet.Entry{Other: read.Other, Form: read.Form}
		axis.Typed = append(axis.Typed, read.Typed)
		axis.Values = append(axis.Values, read.Value)
		at += len(number)
	}
	return axis
}

// axisUnread reports a value of an axis that cannot be taken: at the number, or at the unit if that is unknown. The
// places are offsets in the entry's value.
func (b *binder) axisUnread(entry markdown.Entry, number message.Span, unitAt int, given *sheet.Given, err error) {
	if number.End == number.Start {
		number.Start-- // the = or the comma that nothing follows
	}
	span := entry.Part(number.Start, number.End)
	var place *unit.Error
	if numberLength := number.End - number.Start; errors.As(err, &place) && place.At > numberLength {
		at := unitAt + place.At - numberLength - len(" ")
		span = entry.Part(at, at+wordLength([]byte(entry.Value[at:])))
	}
	b.untaken(span, given.Name, err, axisExample(entry.Key, given))
}

// axisUnfit reports an axis that does not name a given and its values.
func (b *binder) axisUnfit(bound *Bound, entry markdown.Entry, name string, found bool) {
	names := numberGivens(bound.Sheet)
	near, ok := message.Nearest(name, names)
	if !ok {
		near = names[0]
	}
	text := fmt.Sprintf("%q has no = between a given and its values", entry.Value)
	switch given := bound.Sheet.FindGiven(name); {
	case given != nil && found:
		text = fmt.Sprintf("%s is chosen from a list, and cannot run along a reckoner", name)
	case found:
		text = fmt.Sprintf("%s has no given %q", bound.Sheet.Name, name)
	}
	b.fault(entry.ValueSpan, "axis-unfit", text, "for example: "+axisExample(entry.Key, bound.Sheet.FindGiven(near)))
}

// numberGivens lists the givens that can run along an axis. Every sheet has one.
func numberGivens(s *sheet.Sheet) []string {
	var names []string
	for _, g := range s.Givens {
		if len(g.Choices) == 0 {
			names = append(names, g.Name)
		}
	}
	return names
}

// axisExample is an axis as it may be written, around an ordinary value of the given.
func axisExample(key string, given *sheet.Given) string {
	typical := given.Typical
	return fmt.Sprintf("%s: %s = %s, %s, %s", key, given.Name,
		unit.Text(typical/2), unit.Text(typical), unit.Quantity{Value: typical * 3 / 2, Unit: given.Unit})
}
