package sheet

import (
	"errors"
	"fmt"
	"strings"

	"acreleaf/calc/unit"
)

// An Entry is what somebody filled in for a given.
type Entry struct {
	Value float64   // in the given's own unit; for a choice, the index of the option
	Unit  unit.Unit // as it was written
	Typed float64   // as it was written, in that unit
}

// Read reads what somebody wrote for a given: "12 ppm NO3-N", or the name of an option. The error is a sentence that
// says what was written, what is needed and what to write; it may wrap a *unit.Error that has the place.
func (g *Given) Read(text string) (Entry, error) {
	if len(g.Choices) > 0 {
		return g.readChoice(text)
	}
	q, err := unit.ParseQuantity(text)
	if err != nil {
		return Entry{}, err
	}
	if q.Unit.String() == "" && g.Unit.String() != "" {
		return Entry{}, fmt.Errorf("%s has no unit; write %s", unit.Text(q.Value), g.example(q.Value))
	}
	if !q.Unit.Dimension().Fits(g.Unit.Dimension()) && !chemical(q.Unit, g.Unit) {
		return Entry{}, g.mismatch(q)
	}
	factor, err := q.Unit.To(g.Unit)
	if err != nil {
		return Entry{}, err
	}
	e := Entry{Value: factor.Apply(q.Value), Unit: q.Unit, Typed: q.Value}
	return e, g.Check(e.Value)
}

// chemical says whether the two are forms of one element, so that one converts to the other.
func chemical(from, to unit.Unit) bool {
	_, err := from.To(to)
	var mismatch *unit.Mismatch
	return err == nil || !errors.As(err, &mismatch)
}

func (g *Given) mismatch(q unit.Quantity) error {
	_, err := q.Unit.To(g.Unit)
	if err == nil {
		err = fmt.Errorf("%s is %s; %s is needed", q, q.Unit.Dimension(), g.Unit.Dimension())
	}
	return fmt.Errorf("%w; write %s", err, g.example(g.Typical))
}

// Check says whether a value in the given's own unit is one that the calculation takes.
func (g *Given) Check(value float64) error {
	if value >= g.Low && value <= g.High {
		return nil
	}
	return fmt.Errorf("%s is outside what this calculation takes: %s to %s",
		g.example(value), unit.Text(g.Low), g.example(g.High))
}

func (g *Given) readChoice(text string) (Entry, error) {
	var names []string
	for i, o := range g.Choices {
		if o.Name == text {
			return Entry{Value: float64(i), Unit: plain, Typed: float64(i)}, nil
		}
		names = append(names, o.Name)
	}
	return Entry{}, fmt.Errorf("there is no %s %q; choose one of: %s", spaced(g.Name), text, strings.Join(names, ", "))
}

// example is a value as it may be written.
func (g *Given) example(value float64) string {
	return unit.Quantity{Value: value, Unit: g.Unit}.String()
}

// Example is the typical value as an author or a caller may write it.
func (g *Given) Example() string {
	if len(g.Choices) > 0 {
		return g.Choices[int(g.Typical)].Name
	}
	return g.example(g.Typical)
}
