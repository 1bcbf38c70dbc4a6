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
	result  string // what is worked
}

// words is one line of the work: "nitrogen = nitrate × … = 12 ppm NO3-N × … = 48 lb N/ac". A formula without names,
// such as a figure from a table, is written once.
func (o Outcome) words(r *Result, body *node) string {
	symbols := &wordPrinter{o: o}
	symbols.expression(body, callLevel)
	numbers := &wordPrinter{o: o, numbers: true, result: r.Name}
	numbers.expression(body, callLevel)
	parts := []string{spaced(r.Name), symbols.String(), numbers.String(), o.Text(r.Name)}
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
		p.leaf(n.name, n.unit)
	case kindRecast:
		p.leaf(n.args[0].name, n.unit)
	case kindLookup:
		if p.numbers {
			p.WriteString(p.o.Text(p.result))
			return
		}
		p.WriteString(n.said)
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

// leaf writes a given, step or answer. Its unit is that of the formula: a given may have been written as its second
// kind.
func (p *wordPrinter) leaf(name string, u unit.Unit) {
	switch r := p.o.Range(name); {
	case !p.numbers:
		p.WriteString(spaced(name))
	case p.o.Use.Sheet.IsDate(name):
		p.WriteString(p.o.Text(name))
	default:
		p.WriteString(unit.Range{Low: r.Low, High: r.High, Unit: u}.String())
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
