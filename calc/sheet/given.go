package sheet

import (
	"cmp"
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// A Field says how a given is asked for. Label and Hint are texts of the sheet's file, if it has one.
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
	Usual    bool     // of a choice: the typical option is meant where none is said
	Lab      bool     // a laboratory measures it, and may print that there is less than a number: "<5"
	Date     bool     // a day of the calendar; its unit is days, counted from 1970-01-01
	Forms    []string // what may be said in place of "crop" in its unit: "kernels"; ask with IsForm
	For      []*Given // the choices that it is a figure of, such as the material whose price it is; see belong.go
	Else     Other    // another kind of quantity that may be written instead; ask with IsOther
}

// Other is a second kind of quantity that a given takes: gallons where pounds may stand too.
type Other struct {
	Unit      string // "gal product/ac"; "" for none
	Written   string // as Field.Written
	Low, High float64
}

// A Given is a quantity that the reader fills in.
type Given struct {
	Term
	Name string
	Unit unit.Unit
	Field
	Choices []Option // for a choice from a list: what can be chosen; its value is the index

	stated *node
	other  *other
	forms  []*form
}

// A form is one of the forms that a given may be told in, with its number as it stands: pounds of kernels where pounds
// of a crop are asked for.
type form struct {
	unit unit.Unit
	is   *node // whether the number was told in this form
}

// An other is the second kind of quantity of a given.
type other struct {
	unit unit.Unit
	is   *node // whether the number is of this kind
	n    *node // the number, of this kind
}

// An Option is one thing to choose.
type Option struct {
	Name    string   // "hexagon", as an author writes it
	Label   string   // "Hexagon (equal triangles)"; a text of the sheet's file, if it has one, as the note is
	Note    string   // what there is to say of it in a list of all of them; may be empty
	Sources []string // ids of the bibliography: where the figures of the note are from
}

// Same says whether the same thing is chosen by both.
func (o Option) Same(p Option) bool { return o.Name == p.Name && o.Label == p.Label }

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
	s.ask(name, n, &f)
	g := &Given{Term: s.wrap(n), Name: name, Unit: n.unit, Field: f}
	s.define(name, n)
	if !(f.Low < f.High) || f.Typical < f.Low || f.Typical > f.High {
		s.fault("%q: the typical value %g must lie between %g and %g", name, f.Typical, f.Low, f.High)
	}
	for _, other := range f.Units {
		if _, err := s.parseUnit(other).For(n.unit); err != nil {
			s.fault("%q: %w", name, err)
		}
	}
	if f.Usual {
		s.fault("%q is no choice, so nothing is meant where it is not said", name)
	}
	if f.Optional {
		g.stated = &node{kind: kindStated, unit: plain, truth: true, name: name}
		s.own[g.stated] = true
	}
	if f.Date && !g.Unit.Same(unit.MustParse("days")) {
		s.fault("%q is a date, so its unit is days", name)
	}
	n.date = f.Date
	s.addOther(g)
	if g.other != nil && len(f.Forms) > 0 {
		s.fault("%q: a given with a second kind of quantity has no forms as well; a page tells it by one cell", name)
	}
	for _, word := range f.Forms {
		u := s.parseUnit(strings.Replace(unitText, "crop", word, 1))
		is := &node{kind: kindStated, unit: plain, truth: true, name: name}
		g.forms = append(g.forms, &form{unit: u, is: is})
		s.own[is] = true
	}
	s.checkFor(g)
	s.Givens = append(s.Givens, g)
	return g
}

// ask gives a given its texts.
func (s *Sheet) ask(name string, n *node, f *Field) {
	f.Label, f.Hint = s.text("given."+name+".label", f.Label), s.text("given."+name+".hint", f.Hint)
	n.work = s.workName("given."+name+".work", name, "")
}

// addOther gives a given its second kind of quantity.
func (s *Sheet) addOther(g *Given) {
	if g.Else.Unit == "" {
		return
	}
	u := s.parseUnit(g.Else.Unit)
	if g.Else.Written != "" {
		u = u.As(g.Else.Written)
	}
	if _, err := u.To(g.Unit); err == nil {
		s.fault("%q: %s must be of another kind than %s", g.Name, u, g.Unit)
	}
	g.other = &other{
		unit: u,
		is:   &node{kind: kindStated, unit: plain, truth: true, name: g.Name},
		n:    &node{kind: kindRecast, args: []*node{g.n}, unit: u},
	}
	s.own[g.other.is] = true
}

// kinds are the units of the kinds of quantity that a given takes.
func (g *Given) kinds() []unit.Unit {
	kinds := []unit.Unit{g.Unit}
	if g.other != nil {
		kinds = append(kinds, g.other.unit)
	}
	for _, f := range g.forms {
		kinds = append(kinds, f.unit)
	}
	return kinds
}

// sameKinds says whether two givens take the same two kinds of quantity, so that one can follow the other whichever it
// is.
func (g *Given) sameKinds(h *Given) bool {
	return g.other != nil && h.other != nil && g.Unit.Same(h.Unit) && g.other.unit.Same(h.other.unit)
}

// kindOf is the place in kinds of the first for which fits holds: the given's second kind of quantity, or the form from
// 1 on that it is told in, or neither.
func (g *Given) kindOf(fits func(unit.Unit) bool) (u unit.Unit, other bool, form int, ok bool) {
	kinds := g.kinds()
	at := slices.IndexFunc(kinds, fits)
	switch {
	case at < 0:
		return unit.Unit{}, false, 0, false
	case at >= len(kinds)-len(g.forms):
		return kinds[at], false, at - (len(kinds) - len(g.forms)) + 1, true
	}
	return kinds[at], at == 1, 0, true
}

// takes names the units of the kinds of quantity that a given takes.
func (g *Given) takes() string {
	if g.other == nil {
		return g.Unit.String()
	}
	return g.Unit.String() + " or " + g.other.unit.String()
}

// MayBeLeftOut says whether nothing need be written for a given.
func (g *Given) MayBeLeftOut() bool { return g.Optional || g.Usual }

// Unsaid is what is meant by a choice where nothing is written for it. False if something must be written, or if
// nothing at all may be there.
func (g *Given) Unsaid() (Entry, bool) {
	return Entry{Value: g.Typical, High: g.Typical}, g.Usual
}

// IsForm asks whether a given was told in a form: "kernels". It is no when no form was told.
func (g *Given) IsForm(word string) Term {
	return g.s.wrap(g.forms[slices.Index(g.Forms, word)].is)
}

// UnitFor is the unit that the value of an entry is in.
func (g *Given) UnitFor(e Entry) unit.Unit {
	switch {
	case e.Form > 0:
		return g.formUnit(e.Form)
	case e.Other:
		return g.other.unit
	}
	return g.Unit
}

// formUnit is the unit of a given that is told in a form, from 1 on.
func (g *Given) formUnit(form int) unit.Unit { return g.forms[form-1].unit }

// HasTwoKinds says whether a given may be written as one of two kinds of quantity, so that no condition can ask about
// it.
func (g *Given) HasTwoKinds() bool { return g.other != nil }

// IsOther asks whether a given was written as its second kind of quantity.
func (g *Given) IsOther() Term { return g.s.wrap(g.other.is) }

// AsOther is the number of a given as its second kind of quantity. It means something only when IsOther.
func (g *Given) AsOther() Term { return g.s.wrap(g.other.n) }

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
	s.ask(name, n, &f)
	g := &Given{Term: s.wrap(n), Name: name, Unit: plain, Field: f, Choices: s.optionTexts(name, options)}
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

// optionTexts gives the options of a choice their texts.
func (s *Sheet) optionTexts(choice string, options []Option) []Option {
	if s.Texts == nil {
		return options
	}
	told := slices.Clone(options)
	for i := range told {
		o := &told[i]
		o.Label = cmp.Or(s.textIf("given."+choice+".option."+o.Name, ""), s.textIf("option."+o.Name, ""))
		o.Note = cmp.Or(s.textIf("given."+choice+".note."+o.Name, ""), s.textIf("note."+o.Name, ""))
		if o.Label == "" {
			s.text("given."+choice+".option."+o.Name, "") // reports it
		}
	}
	return told
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
