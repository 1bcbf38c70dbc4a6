package sheet

import (
	"fmt"
	"math"
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
		return Entry{}, fmt.Errorf("%s has no unit; write %s", unit.Text(q.Value), g.withUnit(q.Value))
	}
	own, err := q.In(g.Unit)
	if err != nil {
		return Entry{}, fmt.Errorf("%w; write for example %s", err, g.example(g.Typical))
	}
	return Entry{Value: own.Value, Unit: q.Unit, Typed: q.Value}, g.Check(own.Value)
}

// withUnit is the number that was written with the unit that it lacks, or the typical value if it cannot be meant so.
// Where the number may be of another form (NO3 for NO3-N), that is said too: the report knows, and we do not.
func (g *Given) withUnit(value float64) string {
	if g.Check(value) != nil {
		return "it with its unit, such as " + g.example(g.Typical)
	}
	for _, text := range g.Units {
		other, err := unit.Parse(text)
		if err == nil && !other.Dimension().Fits(g.Unit.Dimension()) {
			return g.example(value) + " or " + unit.Quantity{Value: value, Unit: other}.String() + ", as the report says"
		}
	}
	return g.example(value)
}

// Check says whether a value in the given's own unit is one that the calculation takes.
func (g *Given) Check(value float64) error {
	switch {
	case len(g.Choices) > 0 && !g.chosen(value):
		return fmt.Errorf("option %s is not in the list; choose one of: %s", unit.Text(value), g.optionNames())
	case value >= g.Low && value <= g.High:
		return nil
	}
	return fmt.Errorf("%s is outside what this calculation takes: %s to %s",
		g.example(value), unit.Text(g.Low), g.example(g.High))
}

// chosen says whether a value is the index of an option.
func (g *Given) chosen(value float64) bool {
	return value == math.Trunc(value) && value >= 0 && value < float64(len(g.Choices))
}

func (g *Given) optionNames() string {
	var names []string
	for _, o := range g.Choices {
		names = append(names, o.Name)
	}
	return strings.Join(names, ", ")
}

func (g *Given) readChoice(text string) (Entry, error) {
	for i, o := range g.Choices {
		if o.Name == text {
			return Entry{Value: float64(i), Unit: plain, Typed: float64(i)}, nil
		}
	}
	return Entry{}, fmt.Errorf("there is no %s %q; choose one of: %s", spaced(g.Name), text, g.optionNames())
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
