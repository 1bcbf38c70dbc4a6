package sheet

import (
	"strings"

	"acreleaf/calc/unit"
)

// A wordPrinter writes a formula as plain text, in names or in numbers.
type wordPrinter struct {
	strings.Builder
	o       Outcome
	numbers bool
}

// words is one line of the work: "nitrogen = nitrate × … = 12 ppm NO3-N × … = 48 lb N/ac". A formula without names,
// such as a figure from a table, is written once.
func (o Outcome) words(r *Result, body *node) string {
	symbols := &wordPrinter{o: o}
	symbols.expression(body, callLevel)
	numbers := &wordPrinter{o: o, numbers: true}
	numbers.expression(body, callLevel)
	parts := []string{spaced(r.Name), symbols.String(), numbers.String(), o.Value(r.Name).String()}
	line := parts[0]
	for i, part := range parts[1:] {
		if part != parts[i] {
			line += " = " + part
		}
	}
	return line
}

func (p *wordPrinter) expression(n *node, level int) {
	n = n.shown()
	if n.level() < level {
		p.WriteByte('(')
		defer p.WriteByte(')')
	}
	switch n.kind {
	case kindNumber:
		p.WriteString(unit.Quantity{Value: n.value, Unit: n.unit}.String())
	case kindConstant:
		if n.said != "" {
			p.WriteString(n.said)
			return
		}
		p.WriteString(unit.Quantity{Value: n.value, Unit: n.unit}.String())
	case kindGiven, kindNamed:
		if p.numbers {
			p.WriteString(p.o.Value(n.name).String())
			return
		}
		p.WriteString(spaced(n.name))
	case kindConvert:
		p.expression(n.args[0], productLevel)
		sign, number := n.change()
		p.WriteString(" " + sign + " " + number)
	case kindPower:
		p.base(n.args[0])
		p.WriteString(" to the power " + unit.Text(n.value))
	case kindOperation, kindArccosine:
		p.operation(n)
	}
}

func (p *wordPrinter) operation(n *node) {
	sign, left, right, between := n.infix()
	switch {
	case between:
		p.expression(n.args[0], left)
		p.WriteString(" " + sign + " ")
		p.expression(n.args[1], right)
	case n.kind == kindOperation && n.op == SquareRoot:
		p.WriteString("√")
		p.base(n.args[0])
	default:
		p.call(n)
	}
}

// base writes what a power or a root is of.
func (p *wordPrinter) base(n *node) {
	if n.misread(p.numbers) {
		p.WriteByte('(')
		defer p.WriteByte(')')
	}
	p.expression(n, callLevel)
}

func (p *wordPrinter) call(n *node) {
	before, between := n.callName()
	p.WriteString(before + " ")
	for i, arg := range n.args {
		if i > 0 {
			p.WriteString(" " + between + " ")
		}
		p.expression(arg, atomLevel)
	}
}
