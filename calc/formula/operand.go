package formula

import (
	"fmt"
	"go/ast"
	"regexp"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// An operand is a part of a formula that was read: its term and what is known of it.
type operand struct {
	term   sheet.Term
	span   Span
	text   string         // as the author wrote it
	values sheet.Interval // the least and the most that it can be, as far as the ranges of the givens tell

	truth   bool // a question
	nothing bool // a 0 without a unit, which is 0 of any
	number  bool // a number without a unit, as written
	counted bool // its unit was written by the author, so that "a whole number of it" means something
	name    bool // it is a name
	date    bool // it is a day of the calendar

	quoted *unit.Quantity // as written between quotes; nil for what is not

	degree int // how many symbols its unit may hold
	bad    bool
}

// unitText is what an operand is counted in, for a sentence.
func (o operand) unitText() string { return o.term.Unit().Name() }

// bare says whether an operand has no unit, so that it leaves that of another as it is.
func (o operand) bare() bool { return o.term.Unit().String() == "" }

// called is what an operand is called in a sentence.
func (o operand) called() string {
	if o.name {
		return o.text
	}
	if len(o.text) > 40 {
		return "this part"
	}
	return "“" + o.text + "”"
}

func (o operand) is() string { return o.called() + " is " + o.unitText() }

// A reader reads one formula.
type reader struct {
	*maker
	f Text
	// guard is the question under which the part that is read counts: of the ways of an if, the one to here. Nil: always.
	guard *sheet.Term
	// top says that the part that is read is the whole line, or a way of an if that is.
	top bool
}

func (r *reader) span(n ast.Node) Span { return r.f.part(int(n.Pos())-1, int(n.End())-1) }

func (r *reader) cut(n ast.Node) string {
	return r.f.Text[max(0, int(n.Pos())-1):min(len(r.f.Text), int(n.End())-1)]
}

// faultAt reports a fault at a part of the formula, and gives the operand that stands for it.
func (r *reader) faultAt(n ast.Node, id, text, note string) operand {
	r.fault(id, r.span(n), text, note)
	return operand{bad: true}
}

// of is an operand made from a part of the formula.
func (r *reader) of(n ast.Node, t sheet.Term) operand {
	return operand{term: t, span: r.span(n), text: r.cut(n), values: sheet.Anything, degree: leafDegree}
}

// Units are whole powers of symbols. A leaf has few; a formula that multiplies them past the limit is a slip.
const (
	leafDegree  = 4
	degreeLimit = 200
)

// joined checks the unit of a product or a power before it is made.
func (r *reader) joined(n ast.Node, degree int) bool {
	if degree <= degreeLimit {
		return true
	}
	r.fault("formula-long", r.span(n), "the unit of this has grown beyond any use",
		"give the line above it a unit of its own, under steps")
	return false
}

// quantity says whether an operand is a quantity, and reports one that is a question.
func (r *reader) quantity(o operand) bool {
	if o.bad {
		return false
	}
	if o.truth {
		r.fault("formula-question", o.span, fmt.Sprintf("%s is a question, and a quantity is needed", o.called()),
			"ask it at the top of a line: if("+o.text+", 1, 0)")
	}
	return !o.truth
}

func (r *reader) question(o operand) bool {
	if o.bad {
		return false
	}
	if !o.truth {
		r.fault("formula-question", o.span, fmt.Sprintf("%s is a quantity, and a question is needed", o.called()),
			"compare it with something: "+o.text+" > "+r.sample(o))
	}
	return o.truth
}

// sample is a quantity of the operand's unit, as it may be written.
func (r *reader) sample(o operand) string {
	if text := o.term.Unit().String(); text != "" {
		return `"1 ` + text + `"`
	}
	return "1"
}

// alike makes two operands ready for what only like can do: the second must measure what the first does. A 0 without
// a unit is 0 of the other's.
func (r *reader) alike(a, b operand, at Span, doing string) (operand, operand, bool) {
	if r.page != nil {
		a, b = r.told(a, b), r.told(b, a)
	}
	if a.nothing && !b.term.Unit().Dimension().Plain() {
		a = r.zeroOf(a, b)
	}
	if b.nothing && !a.term.Unit().Dimension().Plain() {
		b = r.zeroOf(b, a)
	}
	if doing == "compared" {
		a, b = a.inAccountOf(b), b.inAccountOf(a)
	}
	if a.term.Unit().Dimension() == b.term.Unit().Dimension() {
		return a, b, true
	}
	r.fault("formula-units", at, fmt.Sprintf("%s and %s: they cannot be %s", a.is(), b.is(), doing), r.bring(a, b))
	return a, b, false
}

// inAccountOf is a quantity in quotes that tells no account, in the account of what it is compared with: a reader knows
// which is meant.
func (o operand) inAccountOf(other operand) operand {
	account := other.term.Unit().Account()
	if account == "" || o.term.Unit().Account() != "" || o.quoted == nil {
		return o
	}
	if told := o.term.CountedAs(account); told.Unit().Dimension() == other.term.Unit().Dimension() {
		o.term = told
	}
	return o
}

// zeroOf is a 0 in the unit of another operand.
func (r *reader) zeroOf(zero, other operand) operand {
	zero.term = r.nothingOf(other.term)
	zero.counted, zero.degree = other.counted, other.degree
	return zero
}

// nothingOf is 0 in the unit of a term.
func (m *maker) nothingOf(t sheet.Term) sheet.Term {
	text := t.Unit().String()
	if u, err := unit.Parse(text); err == nil && u.Same(t.Unit()) {
		return m.s.Zero(text)
	}
	return t.Times(m.s.Number(0))
}

var dayWithoutQuotes = regexp.MustCompile(`^\d{4}-\d\d-\d\d$`)

// bring says how two operands of different kinds may be brought together.
func (r *reader) bring(a, b operand) string {
	if b.number {
		a, b = b, a
	}
	sentence := (&unit.Mismatch{Given: b.called(), Unit: b.term.Unit(), Wanted: a.term.Unit()}).Error()
	at := strings.LastIndex(sentence, ": ")
	switch isStep := at >= 0 && strings.HasSuffix(sentence, " first"); {
	case a.date && dayWithoutQuotes.MatchString(b.text):
		return fmt.Sprintf("write the day between quotes: %q", b.text)
	case a.number:
		return fmt.Sprintf("write the number with its unit, between quotes: %q", a.text+" "+b.term.Unit().String())
	case isStep:
		return sentence[at+len(": "):]
	case r.page != nil && b.quoted != nil:
		return r.ofKind(b, a)
	case r.page != nil && a.quoted != nil:
		return r.ofKind(a, b)
	}
	return "multiply or divide one of them first, so that both measure the same thing"
}

// ofKind says what to write for a quantity in quotes that is compared with one of another kind.
func (r *reader) ofKind(quoted, other operand) string {
	u := other.term.Unit()
	if quoted.quoted.Unit.Shorter(u) {
		return fmt.Sprintf("say what it is of: %q", unit.Quantity{Value: quoted.quoted.Value, Unit: u})
	}
	return "write a quantity of the same kind, such as " + r.sample(other)
}

// inUnitOf is the values of b, in the unit of a.
func inUnitOf(a, b operand) sheet.Interval {
	factor, err := b.term.Unit().To(a.term.Unit())
	if err != nil {
		return sheet.Anything // the two were seen to be alike
	}
	return b.values.Each(factor.Apply)
}
