package formula

import (
	"fmt"
	"go/ast"
	"math"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// functionNames are the functions, for notes.
const functionNames = "min, max, round_up, round_down, sqrt, size, pow, if"

// A function is one that a formula may call.
type function struct {
	example     string
	least, most int // how many operands it takes
}

var functions = map[string]function{
	"min":        {"min(a, b)", 2, 9},
	"max":        {"max(a, b)", 2, 9},
	"round_up":   {"round_up(a)", 1, 1},
	"round_down": {"round_down(a)", 1, 1},
	"sqrt":       {"sqrt(a)", 1, 1},
	"size":       {"size(a)", 1, 1},
	"pow":        {"pow(a, 2)", 2, 2},
	"if":         {"if(a > b, a, b)", 3, 3},
}

// Functions lists the functions by the alphabet, as their names would be written outside of the work. Nothing else may
// be called so.
func Functions() []string {
	var names []string
	for word := range functions {
		names = append(names, hyphened(word))
	}
	slices.Sort(names)
	return names
}

// meant are words that people know from elsewhere for our functions.
var meant = map[string]string{
	"abs": "size", "minimum": "min", "maximum": "max", "ceil": "round_up", "ceiling": "round_up", "floor": "round_down",
	"round": "round_up or round_down", "roundup": "round_up", "rounddown": "round_down", "root": "sqrt", "power": "pow",
}

// call reads a function and its operands.
func (r *reader) call(e *ast.CallExpr, top bool) operand {
	word := r.cut(e.Fun)
	ident, named := e.Fun.(*ast.Ident)
	f, known := functions[word]
	switch {
	case !named || e.Ellipsis.IsValid():
		return r.faultAt(e, "formula", fmt.Sprintf("“%s” is not arithmetic", short(r.cut(e))), grammar)
	case !known:
		return r.noFunction(ident, word)
	case len(e.Args) < f.least || len(e.Args) > f.most:
		return r.faultAt(e, "formula-call",
			fmt.Sprintf("%s takes %s, and its brackets hold %d", word, f.count(), len(e.Args)), "write "+f.example)
	case word == "if":
		return r.either(e, top)
	case word == "pow":
		return r.power(e)
	}
	operands := make([]operand, len(e.Args))
	fine := true
	for i, arg := range e.Args {
		operands[i] = r.read(arg)
		fine = r.quantity(operands[i]) && fine
	}
	switch {
	case !fine:
		return operand{bad: true}
	case word == "min" || word == "max":
		return r.among(e, word, operands)
	case word == "sqrt":
		return r.root(e, operands[0])
	case word == "size":
		o := operands[0]
		o.term, o.values = o.term.Size(), o.values.Size()
		return r.over(e, o)
	}
	return r.round(e, word, operands[0])
}

// count says how many operands a function takes.
func (f function) count() string {
	switch {
	case f.most == 1:
		return "one quantity"
	case f.least < f.most:
		return "two or more quantities"
	case f.least == 3:
		return "a question and two quantities"
	}
	return "a quantity and a whole number"
}

func (r *reader) noFunction(e *ast.Ident, word string) operand {
	known := strings.Split(functionNames, ", ")
	note := "there are: " + functionNames
	if other := meant[strings.ToLower(word)]; other != "" {
		note = "write " + other
	} else if near := unit.Nearest(word, known); near != "" {
		note = "write " + functions[near].example
	}
	if r.part(hyphened(word)) != nil {
		return r.faultAt(e, "formula-call", word+" is a quantity, and no function", "write * before the bracket to multiply")
	}
	return r.faultAt(e, "formula-call", fmt.Sprintf("there is no function “%s”", word), note)
}

// over is an operand that takes the place of its call.
func (r *reader) over(e ast.Node, o operand) operand {
	o.span, o.text, o.name, o.number, o.nothing = r.span(e), r.cut(e), false, false, false
	return o
}

func (r *reader) among(e *ast.CallExpr, word string, operands []operand) operand {
	// a 0 takes the unit of the others, so one that has a unit gives it to the first
	named := operands[max(0, slices.IndexFunc(operands, func(o operand) bool { return !o.nothing }))]
	first, _, _ := r.alike(operands[0], named, named.span, "compared")
	for _, o := range operands[1:] {
		first.text, first.name = named.text, named.name // for its messages
		a, b, ok := r.alike(first, o, o.span, "compared")
		if !ok {
			return operand{bad: true}
		}
		a.counted = a.counted && (b.counted || b.nothing)
		values := inUnitOf(a, b)
		if word == "min" {
			a.term, a.values = a.term.Least(b.term), a.values.Least(values)
		} else {
			a.term, a.values = a.term.Most(b.term), a.values.Most(values)
		}
		first = r.over(e, a)
	}
	return first
}

func (r *reader) root(e *ast.CallExpr, o operand) operand {
	if o.term.Unit().Dimension().Plain() {
		o.term, o.values = r.plain(o)
	}
	if _, ok := o.term.Unit().Root(); !ok {
		r.fault("formula-units", o.span, fmt.Sprintf("%s, which has no square root", o.is()),
			"bring it to a unit of squares, such as ft2, in a line of its own with a unit under steps")
		return operand{bad: true}
	}
	if o.values.High < 0 {
		r.fault("formula-zero", o.span, fmt.Sprintf("%s is below 0, and has no square root", o.called()),
			"turn the difference around, or write size( ) around it")
		return operand{bad: true}
	}
	if o.values.Low < 0 {
		r.refuse(o.term.Less(r.nothingOf(o.term)), words.Fill(texts().BelowZero, "name", r.speak(o)))
	}
	o.term, o.values, o.counted = o.term.SquareRoot(), o.values.Root(), false
	return r.over(e, o)
}

// plain is an operand of no dimension as a plain number: 20 % as 0.2, and a ton for each pound as 2000.
func (r *reader) plain(o operand) (sheet.Term, sheet.Interval) {
	factor, _ := o.term.Unit().To(unit.Unit{}) // there always is one
	return o.term.In(""), o.values.Each(factor.Apply)
}

// round counts in the unit that the author wrote. The unit of a product is one that nobody chose.
func (r *reader) round(e *ast.CallExpr, word string, o operand) operand {
	switch {
	case o.counted:
	case o.term.Unit().Dimension().Plain():
		o.term, o.values = r.plain(o)
	default:
		r.fault("formula-units", o.span, fmt.Sprintf("%s does not say in what unit %s is to count", word, o.called()),
			"work it out in a line of its own, and give that a unit under steps")
		return operand{bad: true}
	}
	if word == "round_up" {
		o.term, o.values = o.term.RoundUp(), o.values.Each(math.Ceil)
	} else {
		o.term, o.values = o.term.RoundDown(), o.values.Each(math.Floor)
	}
	return r.over(e, o)
}

func (r *reader) power(e *ast.CallExpr) operand {
	o := r.read(e.Args[0])
	if !r.quantity(o) {
		return operand{bad: true}
	}
	var n int
	if literal, is := e.Args[1].(*ast.BasicLit); is {
		n, _ = strconv.Atoi(literal.Value) // 0 for what is no whole number
	}
	if n < 2 || n > 8 {
		return r.faultAt(e.Args[1], "formula-call", "a power is a whole number from 2 to 8, in digits", "write pow(a, 2)")
	}
	if !r.joined(e, o.degree*n) {
		return operand{bad: true}
	}
	o.term, o.values, o.degree, o.counted = o.term.Power(n), powerOf(o.values, n), o.degree*n, false
	return r.over(e, o)
}

// powerOf is the interval of a power, worked as the products that the sheet works it by.
func powerOf(values sheet.Interval, n int) sheet.Interval {
	p := values
	for range n - 1 {
		p = p.Times(values)
	}
	return p
}

// either reads an if, which stands only where each of its ways prints as a line.
func (r *reader) either(e *ast.CallExpr, top bool) operand {
	if !top {
		return r.faultAt(e, "formula-if", "an if can only be at the top of a line",
			"give this if a line of its own, with a name")
	}
	question := r.read(e.Args[0])
	if !r.question(question) {
		return operand{bad: true}
	}
	outside := r.guard
	then := r.way(e.Args[1], outside, question.term)
	otherwise := r.way(e.Args[2], outside, question.term.Not())
	if okThen, okOtherwise := r.quantity(then), r.quantity(otherwise); !okThen || !okOtherwise {
		return operand{bad: true}
	}
	a, b, ok := r.alike(then, otherwise, otherwise.span, "the two ways of one line")
	if !ok {
		return operand{bad: true}
	}
	values := a.values.Either(inUnitOf(a, b))
	a.term, a.values, a.counted = sheet.If(question.term, a.term, b.term), values, a.counted && b.counted
	return r.over(e, a)
}

// way reads one way of an if, under the question that leads to it.
func (r *reader) way(e ast.Expr, outside *sheet.Term, question sheet.Term) operand {
	if outside != nil {
		question = outside.And(question)
	}
	r.guard, r.top = &question, true
	return r.read(e)
}
