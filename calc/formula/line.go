package formula

import (
	"cmp"
	"fmt"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// work reads a line and adds its step or answer.
func (m *maker) work(l *line, number int) {
	if l.part == nil {
		return
	}
	m.line = number
	p := l.part
	e := m.parse(l.formula)
	if e == nil {
		p.bad = true
		return
	}
	r := &reader{maker: m, f: l.formula, top: true}
	o := r.read(e)
	if !r.quantity(o) || !r.fit(l, &o) {
		p.bad = true
		return
	}
	says := sheet.Says{Label: sentence(spaced(p.name))}
	add := m.s.Step
	if l.result != nil {
		says = sheet.Says{Label: cmp.Or(l.result.Label, says.Label), Also: m.also(l)}
	}
	if l.answer {
		add = m.s.Answer
	}
	term := add(p.name, o.term.Unit().String(), o.term, says)
	p.operand = operand{term: term, values: o.values, counted: o.counted, degree: o.degree}
	p.made = true
}

// fit brings a line to the unit that its author declared. Without one it is counted in a unit that the author uses for
// such a quantity elsewhere, or else in the one that the arithmetic gives.
func (r *reader) fit(l *line, o *operand) bool {
	switch u := o.term.Unit(); {
	case l.unit != nil:
		return r.fitDeclared(l, o)
	case o.counted:
		return true
	case u.Dimension().Plain():
		o.term, o.values = r.plain(*o)
		return true
	}
	text := o.term.Unit().String()
	if used, ok := r.usedUnit(o.term.Unit()); ok {
		factor, _ := o.term.Unit().To(used) // there always is one between two of one dimension
		o.term, o.values, o.degree = o.term.In(used.String()), o.values.Each(factor.Apply), leafDegree
		return true
	}
	if u, err := unit.Parse(text); err != nil || !u.Same(o.term.Unit()) {
		r.fault("formula-units", r.f.Span, "the unit of this works out as "+text+", which cannot be written",
			"give the line a unit of its own, under steps")
		return false
	}
	return true
}

// usedUnit finds a unit of the same dimension among those of the givens, the constants and the answers.
func (m *maker) usedUnit(like unit.Unit) (unit.Unit, bool) {
	for _, name := range m.order {
		if p := m.parts[name]; p.line == 0 && p.made && p.term.Unit().Dimension() == like.Dimension() {
			return p.term.Unit(), true
		}
	}
	for i := range m.lines {
		if u := m.lines[i].unit; u != nil && u.Dimension() == like.Dimension() {
			return *u, true
		}
	}
	return unit.Unit{}, false
}

// fitDeclared brings a line to the unit that its author declared.
func (r *reader) fitDeclared(l *line, o *operand) bool {
	wanted := *l.unit
	if o.nothing {
		o.term, o.counted, o.degree = r.s.Zero(wanted.String()), true, leafDegree
		return true
	}
	factor, err := o.term.Unit().To(wanted)
	if err != nil {
		r.fault("formula-units", l.result.Unit.Span, fmt.Sprintf("%s works out as %s, and its unit here is %s",
			underscored(l.part.name), o.unitText(), wanted.Name()), r.bringTo(*o, wanted))
		return false
	}
	o.term = o.term.In(wanted.String())
	o.values, o.counted, o.degree = o.values.Each(factor.Apply), true, leafDegree
	return true
}

func (r *reader) bringTo(o operand, wanted unit.Unit) string {
	if o.number {
		return fmt.Sprintf("write the number with its unit, between quotes: %q", o.text+" "+wanted.String())
	}
	return fmt.Sprintf("write %s for its unit, or multiply or divide in the line by what makes %s of that", o.unitText(),
		wanted.Name())
}

// also is the second unit of a result, if it fits the first.
func (m *maker) also(l *line) string {
	text := l.result.Also
	if text.Text == "" {
		return ""
	}
	u := m.unit(text)
	if u == nil || l.unit == nil {
		return ""
	}
	if _, err := u.To(*l.unit); err != nil {
		m.fault("calculation-unit", text.Span, fmt.Sprintf("%s and %s do not measure the same thing", u, l.unit.Name()),
			"write another unit of the kind of "+l.unit.Name())
		return ""
	}
	return text.Text
}

// sentence begins with a capital.
func sentence(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
