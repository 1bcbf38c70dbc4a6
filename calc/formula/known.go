package formula

import (
	"errors"
	"fmt"
	"slices"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// unlist takes the figures that are one of a unit ("1 day") off the list of what the sheet takes as known: they are
// definitions, and nobody asks for their source.
func (m *maker) unlist(s *sheet.Sheet) {
	s.Constants = slices.DeleteFunc(s.Constants, func(c *sheet.Constant) bool {
		return m.figureNames[c.Name] && c.Quantity.Value == 1
	})
}

// placeIn is where an error of calc has its place in a text.
func placeIn(err error, text string) int {
	var place *unit.Error
	if errors.As(err, &place) && place.At < len(text) {
		return place.At
	}
	return 0
}

// given adds a given, if all that is written of it can be read.
func (m *maker) given(g *Given) {
	p := m.parts[g.Name.Text]
	if p == nil || p.span != g.Name.Span {
		return // its name was refused
	}
	p.bad = true
	q, err := unit.ParseQuantity(g.Example.Text)
	if err != nil {
		m.unread("calculation-given", g.Example, err, "write a number and its unit, such as 12 in")
		return
	}
	allowed, ok := m.allowed(g, q)
	units, okUnits := m.offered(g, q.Unit)
	if !ok || !okUnits {
		return
	}
	made := m.s.Given(g.Name.Text, q.Unit.String(), sheet.Field{
		Label: g.Label, Hint: g.Hint, Typical: q.Value, Low: allowed.Low, High: allowed.High, Units: units,
		Lab: true, // nobody says which numbers of a calculation of an author's own a laboratory finds
	})
	values := sheet.Interval{Low: allowed.Low, High: allowed.High}
	p.operand = operand{term: made.Term, values: values, counted: true, degree: leafDegree}
	p.made = true
}

// allowed reads the range of a given, in the unit of its example unless it has one of its own.
func (m *maker) allowed(g *Given, example unit.Quantity) (unit.Range, bool) {
	r, err := unit.ParseRange(g.Range.Text)
	if err != nil {
		m.unread("calculation-range", g.Range, err, "write two numbers, such as 0 to 600")
		return r, false
	}
	if r.Unit.String() == "" {
		r.Unit = example.Unit
	}
	own, err := r.In(example.Unit)
	switch {
	case err != nil:
		m.unread("calculation-range", g.Range, err, "write the range in the unit of the example")
	case !(own.Low < own.High):
		m.fault("calculation-range", g.Range.Span, "a range needs two different numbers",
			"write the least and the most that are taken, such as 0 to 600")
	case example.Value < own.Low || example.Value > own.High:
		m.fault("calculation-range", g.Range.Span, fmt.Sprintf("the example, %s, is outside this range", example),
			"write a wider range, or another example")
	default:
		return own, true
	}
	return own, false
}

// offered reads the other units that a given may be typed in. False when one is wrong: it may be the example's that is,
// and then what the given is used for is not what is wrong.
func (m *maker) offered(g *Given, own unit.Unit) (units []string, fine bool) {
	fine = true
	for _, text := range g.Units {
		u := m.unit(text)
		if u == nil {
			fine = false
			continue
		}
		if _, err := u.To(own); err != nil {
			m.fault("calculation-unit", text.Span, fmt.Sprintf("%s and %s do not measure the same thing", u, own.Name()),
				"write another unit of the kind of "+own.Name())
			fine = false
		}
		units = append(units, text.Text)
	}
	return units, fine
}

// constant adds a constant, if its value can be read.
func (m *maker) constant(c *Constant) {
	p := m.parts[c.Name.Text]
	if p == nil || p.span != c.Name.Span {
		return
	}
	p.bad = true
	q, err := unit.ParseQuantity(c.Value.Text)
	if err != nil {
		m.unread("calculation-constant", c.Value, err, "write a number and its unit, such as 8.34 lb water/gal")
		return
	}
	term := m.s.Constant(c.Name.Text, c.Value.Text, sheet.Fact{
		Label: c.Label, Sources: []string{c.Source}, Note: c.Note,
	})
	p.operand = operand{term: term, values: sheet.Only(q.Value), counted: true, degree: leafDegree}
	p.made = true
}
