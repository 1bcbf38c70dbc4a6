package sheet

import (
	"strings"

	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// A wordPrinter writes a formula as plain text, in names or in numbers.
type wordPrinter struct {
	strings.Builder
	say *words.General
	sum *sum // nil: in names
}

// Words is one line of the work as plain text: "nitrogen = nitrate × … = 12 ppm NO3-N × … = 48 lb N/ac". A formula
// without names, such as a figure from a table, is written once. For ranges the line has what gives the least and what
// gives the most, or where nothing does, the names and the range alone.
func (l Line) Words() string {
	o, sums := l.o, l.sums
	symbols := &wordPrinter{say: o.say()}
	symbols.expression(l.way.body, callLevel)
	result := &sum{o: o, r: l.Result, way: l.way}
	line := chain(l.Result.called(), symbols.String())
	switch len(sums) {
	case 0:
		return chain(line, result.rangeText())
	case 1:
		if !sums[0].ranged() {
			line = chain(line, sums[0].words())
		}
		return chain(line, sums[0].rangeText())
	}
	for i, at := range []string{o.say().AtLeast, o.say().AtMost} {
		line += "; " + at + " " + chain(sums[i].words(), sums[i].label(sums[i].resultText(sums[i].end)))
	}
	return line
}

// chain puts a sign of equality between two parts that are not the same.
func chain(line, part string) string {
	if before := strings.LastIndex(line, " = "); part == line || before >= 0 && line[before+len(" = "):] == part {
		return line
	}
	return line + " = " + part
}

func (s *sum) words() string {
	p := &wordPrinter{say: s.o.say(), sum: s}
	p.expression(s.body, callLevel)
	return p.String()
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
		p.constant(n)
	case kindGiven, kindNamed, kindRecast:
		p.leaf(n)
	case kindLookup:
		if p.sum != nil {
			p.WriteString(p.sum.rangeText())
			return
		}
		p.WriteString(n.said)
	case kindConvert:
		p.expression(n.args[0], productLevel)
		sign, number := n.change()
		p.WriteString(" " + sign + " " + p.sum.constantText(number))
	case kindPower:
		p.base(n.args[0])
		p.WriteString(" " + p.say.Power + " " + unit.Text(n.value))
	case kindOperation, kindArccosine:
		p.operation(n)
	}
}

// leaf writes a given, step or answer. Its unit is that of the formula: a given may have been written as its second
// kind.
func (p *wordPrinter) leaf(n *node) {
	name, _ := n.leaf()
	switch {
	case p.sum == nil:
		p.WriteString(n.called())
	case p.sum.o.Use.Sheet.IsDate(name):
		p.WriteString(p.sum.leafText(name, n.unit))
	default:
		p.WriteString(n.unit.Label(p.sum.leafText(name, n.unit)))
	}
}

func (p *wordPrinter) constant(n *node) {
	number, after, is := n.reads()
	switch {
	case !is:
		p.WriteString(n.said)
	case n.said == "":
		p.WriteString(n.unit.Label(p.sum.constantText(number)))
	default:
		p.WriteString(p.sum.constantText(number) + after)
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
	if n.misread(p.sum != nil) {
		p.WriteByte('(')
		defer p.WriteByte(')')
	}
	p.expression(n, callLevel)
}

func (p *wordPrinter) call(n *node) {
	before, between := n.callName(p.say)
	p.WriteString(before + " ")
	for i, arg := range n.args {
		if i > 0 {
			p.WriteString(" " + between + " ")
		}
		p.expression(arg, atomLevel)
	}
}
