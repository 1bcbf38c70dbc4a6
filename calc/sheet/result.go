package sheet

import (
	"strings"
	"sync"

	"acreleaf/calc/unit"
)

// Says is how a step or an answer is named to the reader. Label, Work and Row are texts of the sheet's file, if it
// has one.
type Says struct {
	Label string // "Nitrogen in this layer"
	Work  string // what the work calls it, when its name is not for a reader: "share of nitrogen" for strength
	Also  string // a second unit to show it in: "kg N/ha"
	Date  bool   // a day of the calendar; its unit is days, counted from 1970-01-01
	Twin  string // another answer that it always equals: that one alone is printed, this one is there to be asked for
	When  Value  // a question: without a yes the result is left out, and nothing can take it; nil: it is always there

	// An answer that says the same of one of several choices, which are compared, is of what is chosen there; nil for
	// others. Row is what it says of each: "Cost of an acre".
	Of  *Given
	Row string
}

// A Result is a step or an answer: something worked out, with a name and a unit of its own.
type Result struct {
	Name   string
	Unit   unit.Unit
	Answer bool
	Says

	n    *node
	when *node         // nil: always there
	ways func() []*way // that it may be worked, followed once: they are the same on every page
}

// Step adds a value on the way to an answer. Its dimension must be that of the unit.
func (s *Sheet) Step(name, unitText string, v Value, says Says) Term {
	return s.result(name, s.parseUnit(unitText), v.term(), says, false)
}

// Answer adds what the calculation is for. Its dimension must be that of the unit.
func (s *Sheet) Answer(name, unitText string, v Value, says Says) Term {
	return s.result(name, s.parseUnit(unitText), v.term(), says, true)
}

func (s *Sheet) result(name string, u unit.Unit, t Term, says Says, answer bool) Term {
	t.needQuantity()
	worked := s.convert(t, u, "give as "+name)
	says.Label = s.text("result."+name+".label", says.Label)
	says.Work = s.textIf("result."+name+".work", says.Work)
	if answer && says.Of != nil {
		says.Row = s.text("result."+name+".row", says.Row)
	}
	r := &Result{Name: name, Unit: u, Answer: answer, Says: says}
	if says.When != nil {
		question := says.When.term()
		question.needTruth("a result that may be left out")
		r.when = question.n
		worked = If(question, worked, s.Zero(u.String()))
		worked.n.unit = u
	}
	if says.Date && !u.Same(unit.MustParse("days")) {
		s.fault("%q is a date, so its unit is days", name)
	}
	n := &node{kind: kindNamed, args: []*node{worked.n}, unit: u, date: says.Date,
		work: s.workName("result."+name+".work", name, says.Work)}
	r.n = n
	r.ways = sync.OnceValue(r.followWays)
	s.define(name, n)
	s.Results = append(s.Results, r)
	if says.Also != "" {
		if _, err := u.To(s.parseUnit(says.Also)); err != nil {
			s.fault("%q: %w", name, err)
		}
	}
	return s.wrap(n)
}

// called is what the work calls a result.
func (r *Result) called() string { return r.n.called() }

// called is what the work calls a given, step or answer.
func (n *node) called() string {
	if n.kind == kindRecast {
		n = n.args[0]
	}
	return n.work
}

// A Slip is a known wrong way to work an answer, so that a wrong answer can be told which it is.
type Slip struct {
	Name   string // "nitrate-for-nitrogen"
	Answer string // the answer that it gets wrong
	Text   string // what went wrong, to the one who made it

	n    *node
	when *node // asks whether somebody can make it with the numbers at hand; nil: always
}

// Slip adds a wrong way to work an answer. Its value is compared in the answer's unit whatever its own dimension says,
// because losing the dimension is often the slip. A value of the answer's dimension is converted to its unit, so a slip
// that only forgets to convert must be written as the answer times what was forgotten. The text is given in a sheet
// without a file of texts.
func (s *Sheet) Slip(name, answer string, v Value, text ...string) {
	s.slip(Always, name, answer, v, text)
}

// SlipWhen is Slip for what can go wrong only where the question is answered yes. Elsewhere it is not told, whatever it
// would give.
func (s *Sheet) SlipWhen(when Term, name, answer string, v Value, text ...string) {
	s.slip(when, name, answer, v, text)
}

func (s *Sheet) slip(when Value, name, answer string, v Value, text []string) {
	s.checkName(name)
	said := s.text("slip."+name, strings.Join(text, " "))
	for _, other := range s.Slips {
		if other.Name == name {
			s.fault("the slip %q is there twice", name)
		}
	}
	for _, r := range s.Results {
		if r.Name != answer || !r.Answer {
			continue
		}
		t := v.term()
		t.needQuantity()
		if t.n.unit.Dimension() == r.Unit.Dimension() {
			t = s.convert(t, r.Unit, "slip")
		}
		slip := &Slip{Name: name, Answer: answer, Text: said, n: t.n}
		if q := when.term(); q.n != nil {
			q.needTruth("a slip")
			slip.when = q.n
		}
		s.Slips = append(s.Slips, slip)
		return
	}
	s.fault("slip %q is of %q, which is not an answer", name, answer)
}
