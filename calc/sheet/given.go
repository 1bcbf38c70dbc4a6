package sheet

import "acreleaf/calc/unit"

// A Field says how a given is asked for.
type Field struct {
	Label    string   // what the reader sees beside the box: "Nitrate on the report"
	Hint     string   // one line of help under it
	Typical  float64  // an ordinary value, in the given's unit
	Low      float64  // the least that is taken, in the given's unit
	High     float64  // the most that is taken, in the given's unit
	Of       string   // the carrier that the unit leaves unsaid below its line: soil for a ppm in soil
	Written  string   // how the unit is written, when it leaves its substance unsaid: g/cm3 for g soil/cm3
	Units    []string // other units to offer: "ppm NO3"
	Optional bool     // may be left empty; ask with Stated
}

// A Given is a quantity that the reader fills in.
type Given struct {
	Term
	Name string
	Unit unit.Unit
	Field
	Choices []Option // for a choice from a list: what can be chosen; its value is the index

	stated *node
}

// An Option is one thing to choose.
type Option struct {
	Name  string // "hexagon", as an author writes it
	Label string // "Hexagon (equal triangles)"
}

// Given adds a quantity that must be filled in, or may be if the field is optional.
func (s *Sheet) Given(name, unitText string, f Field) *Given {
	u := s.parseUnit(unitText)
	n := &node{kind: kindGiven, unit: u}
	if f.Of != "" && u.String() != "" {
		n.unit = u.Carried(f.Of)
	}
	if f.Written != "" {
		n.unit = u.As(f.Written)
	}
	g := &Given{Term: s.wrap(n), Name: name, Unit: n.unit, Field: f}
	s.define(name, n)
	if !(f.Low < f.High) || f.Typical < f.Low || f.Typical > f.High {
		s.fault("%q: the typical value %g must lie between %g and %g", name, f.Typical, f.Low, f.High)
	}
	for _, other := range f.Units {
		if _, err := s.parseUnit(other).To(u); err != nil {
			s.fault("%q: %w", name, err)
		}
	}
	if f.Optional {
		g.stated = &node{kind: kindStated, unit: plain, truth: true, name: name}
		s.own[g.stated] = true
	}
	s.Givens = append(s.Givens, g)
	return g
}

// Stated asks whether an optional given was filled in.
func (s *Sheet) Stated(g *Given) Term {
	if g.stated == nil {
		s.fault("%q is not optional, so it is always stated", g.Name)
		return s.Number(0).Same(s.Number(0))
	}
	return s.wrap(g.stated)
}

// Choice adds a given that is one of a list. Field.Typical is the index of an ordinary choice.
func (s *Sheet) Choice(name string, options []Option, f Field) *Given {
	n := &node{kind: kindGiven, unit: plain}
	f.Low, f.High = 0, float64(len(options)-1)
	g := &Given{Term: s.wrap(n), Name: name, Unit: plain, Field: f, Choices: options}
	s.define(name, n)
	if len(options) < 2 || !g.chosen(f.Typical) {
		s.fault("%q needs two things to choose from, and a typical one among them", name)
	}
	if f.Optional {
		s.fault("%q is a choice, and a choice cannot be left empty", name)
	}
	seen := map[string]bool{}
	for _, o := range options {
		if seen[o.Name] {
			s.fault("%q has the option %q twice", name, o.Name)
		}
		seen[o.Name] = true
	}
	s.Givens = append(s.Givens, g)
	return g
}

// Is asks whether the choice is the option of that name.
func (g *Given) Is(option string) Term {
	for i, o := range g.Choices {
		if o.Name == option {
			return g.s.wrap(&node{kind: kindOperation, op: Equal, unit: plain, truth: true,
				args: []*node{g.n, g.s.Number(float64(i)).n},
				said: spaced(g.Name) + " is " + o.Name})
		}
	}
	g.s.fault("%q has no option %q", g.Name, option)
	return g.s.Number(0).Same(g.s.Number(0))
}

// Table adds a step that looks up, for the option chosen, a figure of the given unit. Every option must have one.
func (s *Sheet) Table(name, unitText string, choice *Given, figures map[string]float64, says Says) Term {
	u := s.parseUnit(unitText)
	picked := s.wrap(&node{kind: kindNumber, unit: u})
	if len(figures) != len(choice.Choices) {
		s.fault("%q needs a figure for each of the %d options of %q", name, len(choice.Choices), choice.Name)
	}
	for i := len(choice.Choices) - 1; i >= 0; i-- {
		option := choice.Choices[i].Name
		figure, ok := figures[option]
		if !ok {
			s.fault("%q has no figure for %q", name, option)
		}
		t := s.wrap(&node{kind: kindNumber, value: figure, unit: u})
		if i < len(choice.Choices)-1 {
			t = If(choice.Is(option), t, picked)
		}
		picked = t
	}
	return s.result(name, u, picked, says, false)
}
