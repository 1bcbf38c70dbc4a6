package sheet

import (
	"fmt"

	"acreleaf/calc/unit"
)

// A Term is one quantity of a sheet: a given, a constant, or something worked out from other terms. It carries its
// unit, and the operations below refuse, while the sheet is being built, what the units do not allow.
type Term struct {
	s *Sheet
	n *node
}

// A Value is anything that a term can be combined with: a Term or a *Given.
type Value interface{ term() Term }

func (t Term) term() Term { return t }

// Unit is the unit in which the term's value is counted.
func (t Term) Unit() unit.Unit { return t.n.unit }

type kind uint8

const (
	kindNumber    kind = iota // value, a plain number
	kindConstant              // value, with a name and a source
	kindGiven                 // filled in from outside
	kindStated                // whether an optional given was filled in
	kindNamed                 // a step or an answer; args[0] is how it is worked
	kindOperation             // op over args
	kindConvert               // args[0] in another unit, by factor
	kindPower                 // args[0] to the whole power in value
	kindArccosine             // the angle in radians whose cosine is args[0]
	kindIf                    // args: condition, then, otherwise
	kindLookup                // the one of figures that args[0], a choice, is at
	kindRecast                // args[0], a given, as its second kind of quantity
)

// A node is a term without its sheet.
type node struct {
	kind   kind
	op     Op
	args   []*node
	unit   unit.Unit
	truth  bool // its value is 1 or 0, the answer to a question
	name   string
	value  float64
	factor unit.Factor
	slack  float64 // by how much a number may pass a whole one and still be rounded to it
	said   string  // how a truth or a lookup reads: "the pattern is square", "by material"
	date   bool    // a day of the calendar
	work   string  // what the work calls it; "": its name

	figures []float64
}

var plain = unit.MustParse("")

// Times is the product, with the product of the units.
func (t Term) Times(v Value) Term {
	u := v.term()
	return t.operate(Multiply, u, t.n.unit.Times(u.n.unit))
}

// Over is the quotient, with the quotient of the units.
func (t Term) Over(v Value) Term {
	u := v.term()
	return t.operate(Divide, u, t.n.unit.Over(u.n.unit))
}

// Plus is the sum; v is converted to the unit of t and must have its dimension.
func (t Term) Plus(v Value) Term { return t.operate(Add, t.alike(v, "add"), t.n.unit) }

// Minus is the difference; v is converted to the unit of t and must have its dimension.
func (t Term) Minus(v Value) Term { return t.operate(Subtract, t.alike(v, "subtract"), t.n.unit) }

// Least is the smaller of the two, in the unit of t.
func (t Term) Least(v Value) Term { return t.operate(Minimum, t.alike(v, "compare"), t.n.unit) }

// Most is the larger of the two, in the unit of t.
func (t Term) Most(v Value) Term { return t.operate(Maximum, t.alike(v, "compare"), t.n.unit) }

// Less asks whether t is below v.
func (t Term) Less(v Value) Term { return t.ask(Less, v) }

// AtMost asks whether t is v or below.
func (t Term) AtMost(v Value) Term { return t.ask(LessOrEqual, v) }

// More asks whether t is above v.
func (t Term) More(v Value) Term { return v.term().ask(Less, t) }

// AtLeast asks whether t is v or above.
func (t Term) AtLeast(v Value) Term { return v.term().ask(LessOrEqual, t) }

// IsNothing asks whether t is nothing, or below it.
func (t Term) IsNothing() Term {
	return t.AtMost(t.s.wrap(&node{kind: kindNumber, unit: t.n.unit}))
}

// Same asks whether the two are equal to the last bit.
func (t Term) Same(v Value) Term { return t.ask(Equal, v) }

// And is true when both questions are answered yes.
func (t Term) And(v Value) Term { return t.connect(And, v) }

// Or is true when one question or both are answered yes.
func (t Term) Or(v Value) Term { return t.connect(Or, v) }

// Not is true when the question is answered no.
func (t Term) Not() Term {
	t.needTruth("not")
	return t.s.wrap(&node{kind: kindOperation, op: Not, args: []*node{t.n}, unit: plain, truth: true})
}

// RoundUp is the smallest whole number of the term's unit that is not below it.
func (t Term) RoundUp() Term { return t.alone(Ceiling) }

// RoundUpPast is RoundUp, but a number that passes a whole one by no more than slack is read as that whole number. It
// is for a number that rounding in the last bit may have moved past it: the slack is no part of the work that is shown.
func (t Term) RoundUpPast(slack float64) Term {
	up := t.RoundUp()
	up.n.slack = slack
	return up
}

// RoundDown is the largest whole number of the term's unit that is not above it.
func (t Term) RoundDown() Term { return t.alone(Floor) }

// Size is the term without its sign.
func (t Term) Size() Term { return t.alone(Absolute) }

// SquareRoot is the root, with the root of the unit; ft2 becomes ft.
func (t Term) SquareRoot() Term {
	t.needQuantity()
	root, ok := t.n.unit.Root()
	if !ok {
		t.s.fault("%s has no square root: its unit is %s", t.describe(), t.n.unit.String())
		root = plain
	}
	return t.s.wrap(&node{kind: kindOperation, op: SquareRoot, args: []*node{t.n}, unit: root})
}

// Power is the term multiplied by itself, n factors in all, n from 2 to 8. It is worked as that many products.
func (t Term) Power(n int) Term {
	t.needQuantity()
	if n < 2 || n > 8 {
		t.s.fault("a power must be from 2 to 8, not %d", n)
		n = 2
	}
	return t.s.wrap(&node{kind: kindPower, args: []*node{t.n}, value: float64(n), unit: t.n.unit.Power(n)})
}

// Arccosine is the angle in radians, from 0 to π, whose cosine is the term, which must be a plain number; see
// arccosine.go.
func (t Term) Arccosine() Term {
	t.needQuantity()
	p := t.s.convert(t, plain, "take the arccosine of")
	return t.s.wrap(&node{kind: kindArccosine, args: []*node{p.n}, unit: plain})
}

// In is the same quantity counted in another unit of its dimension.
func (t Term) In(unitText string) Term {
	return t.s.convert(t, t.s.parseUnit(unitText), "convert")
}

// Nitrogen is the nitrogen in nitrate, ammonium or urea (NO3-N, NH4-N, urea-N) counted as plain nitrogen (N).
func (t Term) Nitrogen() Term { return t.recount(t.n.unit.Nitrogen()) }

// CountedAs says in which account a term is that tells none yet: fed, taken up or present. A term that is in an account
// comes into another only through a share with both in its unit.
func (t Term) CountedAs(account string) Term {
	u, ok := t.n.unit.InAccount(account)
	if !ok {
		t.s.fault("%s is in an account already; multiply it by a share with both accounts in its unit", t.describe())
	}
	return t.recount(u)
}

// recount is the same number in a unit that says more, or less, of what it counts.
func (t Term) recount(u unit.Unit) Term {
	t.needQuantity()
	return t.s.wrap(&node{kind: kindConvert, args: []*node{t.n}, unit: u, factor: unit.Factor{Multiply: 1, Divide: 1}})
}

// Uncounted is the same amount in no account: of a pound that is fed, the pound itself, which a material holds. What is
// worked from it is in no account either, so it can stand for none.
func (t Term) Uncounted(unitText string) Term {
	t.needQuantity()
	u, account := t.s.parseUnit(unitText), t.n.unit.Account()
	if account == "" {
		t.s.fault("%s is in no account that it could be taken out of", t.describe())
		return t
	}
	factor, err := t.n.unit.Over(unit.MustParse(account)).To(u)
	if err != nil {
		t.s.fault("cannot take %s out of its account as %s: %w", t.describe(), u, err)
	}
	return t.s.wrap(&node{kind: kindConvert, args: []*node{t.n}, unit: u, factor: factor})
}

func (t Term) alone(op Op) Term {
	t.needQuantity()
	return t.s.wrap(&node{kind: kindOperation, op: op, args: []*node{t.n}, unit: t.n.unit})
}

func (t Term) operate(op Op, u Term, result unit.Unit) Term {
	t.needQuantity()
	u.needQuantity()
	return t.s.wrap(&node{kind: kindOperation, op: op, args: []*node{t.n, u.n}, unit: result})
}

func (t Term) ask(op Op, v Value) Term {
	t.needQuantity()
	u := t.alike(v, "compare")
	u.needQuantity()
	return t.s.wrap(&node{kind: kindOperation, op: op, args: []*node{t.n, u.n}, unit: plain, truth: true})
}

func (t Term) connect(op Op, v Value) Term {
	u := v.term()
	t.needTruth("and, or")
	u.needTruth("and, or")
	return t.s.wrap(&node{kind: kindOperation, op: op, args: []*node{t.n, u.n}, unit: plain, truth: true})
}

func (t Term) needTruth(where string) {
	if !t.n.truth {
		t.s.fault("%s joins questions, and %s is a quantity", where, t.describe())
	}
}

func (t Term) needQuantity() {
	if t.n.truth {
		t.s.fault("a question has no number to reckon with; use If")
	}
}

// alike is v in the unit of t.
func (t Term) alike(v Value, doing string) Term {
	return t.s.convert(v.term(), t.n.unit, doing)
}

func (t Term) describe() string {
	if t.n.name != "" {
		return fmt.Sprintf("%q", t.n.name)
	}
	if text := t.n.unit.String(); text != "" {
		return "a term in " + text
	}
	return "a term without a unit"
}

// If is then when the question is answered yes, and otherwise when it is answered no. Both are worked, and both must
// have one dimension. An If is at the top of a step or an answer, where each way prints as a line.
func If(question, then, otherwise Value) Term {
	q, a := question.term(), then.term()
	q.needTruth("If")
	b := otherwise.term()
	if a.n.unit.Dimension() != b.n.unit.Dimension() {
		b = a.alike(otherwise, "choose between")
	}
	return a.s.wrap(&node{kind: kindIf, args: []*node{q.n, a.n, b.n}, unit: a.n.unit})
}
