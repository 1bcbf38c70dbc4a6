package sheet

import (
	"html"
	"strings"

	"acreleaf/calc/unit"
)

// A mathPrinter writes presentation MathML Core (W3C), in names or in numbers.
type mathPrinter struct {
	strings.Builder
	o       Outcome
	numbers bool
	mark    Marker
}

const mathOpen, mathClose = `<math displaystyle="true">`, `</math>`

func (o Outcome) symbolsMath(r *Result, body *node) string {
	p := &mathPrinter{o: o}
	p.WriteString(mathOpen + "<mrow>")
	p.name(r.Name)
	p.operator("=")
	p.expression(body, callLevel)
	p.WriteString("</mrow>" + mathClose)
	return p.String()
}

func (o Outcome) numbersMath(r *Result, body *node, mark Marker) string {
	p := &mathPrinter{o: o, numbers: true, mark: mark}
	p.WriteString(mathOpen + "<mrow>")
	p.operator("=")
	if !body.plainly() {
		p.expression(body, callLevel)
		p.operator("=")
	}
	p.valueOf(r.Name)
	p.WriteString("</mrow>" + mathClose)
	return p.String()
}

// expression writes a node, in brackets if it holds less tightly than it must.
func (p *mathPrinter) expression(n *node, level int) {
	n = n.shown()
	if n.level() < level {
		p.bracket("(")
		defer p.bracket(")")
	}
	switch n.kind {
	case kindNumber:
		p.quantity(unit.Quantity{Value: n.value, Unit: n.unit}, "")
	case kindConstant:
		p.constant(n)
	case kindGiven, kindNamed:
		p.leaf(n)
	case kindLookup:
		p.text(n.said)
	case kindRecast:
		p.recast(n)
	case kindConvert:
		p.expression(n.args[0], productLevel)
		sign, number := n.change()
		p.operator(sign)
		p.WriteString("<mn>" + number + "</mn>")
	case kindPower:
		p.power(n)
	case kindOperation, kindArccosine:
		p.operation(n)
	}
}

func (p *mathPrinter) operation(n *node) {
	sign, left, right, between := n.infix()
	switch {
	case between:
		p.expression(n.args[0], left)
		p.operator(sign)
		p.expression(n.args[1], right)
	case n.kind == kindOperation && n.op == SquareRoot:
		p.WriteString("<msqrt>")
		p.expression(n.args[0], callLevel)
		p.WriteString("</msqrt>")
	default:
		p.call(n)
	}
}

func (p *mathPrinter) power(n *node) {
	brackets := n.args[0].misread(p.numbers)
	p.WriteString("<msup><mrow>")
	if brackets {
		p.bracket("(")
	}
	p.expression(n.args[0], callLevel)
	if brackets {
		p.bracket(")")
	}
	p.WriteString("</mrow><mn>" + unit.Text(n.value) + "</mn></msup>")
}

func (p *mathPrinter) call(n *node) {
	before, between := n.callName()
	p.WriteString("<mtext>" + before + "&nbsp;</mtext>")
	for i, arg := range n.args {
		if i > 0 {
			p.WriteString("<mtext>&nbsp;" + between + "&nbsp;</mtext>")
		}
		p.expression(arg, atomLevel)
	}
}

func (p *mathPrinter) leaf(n *node) {
	if p.numbers {
		p.valueOf(n.name)
		return
	}
	p.name(n.name)
}

// recast writes a given as its second kind of quantity.
func (p *mathPrinter) recast(n *node) {
	name := n.args[0].name
	if !p.numbers {
		p.name(name)
		return
	}
	r := p.o.Range(name)
	p.number(unit.Range{Low: r.Low, High: r.High, Unit: n.unit}, p.attributes(name))
}

func (p *mathPrinter) attributes(name string) string {
	if p.mark == nil {
		return ""
	}
	return p.mark(p.o.Use.cells[name])
}

func (p *mathPrinter) valueOf(name string) {
	if p.o.Use.Sheet.IsDate(name) {
		p.WriteString("<mtext" + p.attributes(name) + ">" + p.o.Text(name) + "</mtext>")
		return
	}
	r := p.o.Range(name)
	r.Unit = p.o.Use.Sheet.named[name].unit // a given may have been written as its second kind; recast prints that
	p.number(r, p.attributes(name))
}

func (p *mathPrinter) quantity(q unit.Quantity, attributes string) {
	p.number(unit.Range{Low: q.Value, High: q.Value, Unit: q.Unit}, attributes)
}

// number writes a number or a range with its unit, in the order of a sentence: $2/lb, 12 in, 3 to 4 oz N/tree.
func (p *mathPrinter) number(r unit.Range, attributes string) {
	number := r.Numbers()
	before, after, _ := strings.Cut(r.String(), number)
	together := before != "" || after != "" // so that a line does not end between a number and its unit
	if together {
		p.WriteString("<mrow>")
	}
	p.text(before)
	p.WriteString("<mn" + attributes + ">" + number + "</mn>")
	p.text(after)
	if together {
		p.WriteString("</mrow>")
	}
}

// text writes what stands beside a number; a space at its start must not fall away.
func (p *mathPrinter) text(text string) {
	if text == "" {
		return
	}
	rest, spaced := strings.CutPrefix(text, " ")
	p.WriteString("<mtext>")
	if spaced {
		p.WriteString("&nbsp;")
	}
	p.WriteString(html.EscapeString(rest) + "</mtext>")
}

func (p *mathPrinter) constant(n *node) {
	if n.said != "" {
		p.WriteString("<mtext>" + html.EscapeString(n.said) + "</mtext>")
		return
	}
	p.quantity(unit.Quantity{Value: n.value, Unit: n.unit}, "")
}

func (p *mathPrinter) name(name string) {
	p.WriteString("<mi>" + html.EscapeString(spaced(name)) + "</mi>")
}

func (p *mathPrinter) operator(sign string) { p.WriteString("<mo>" + sign + "</mo>") }

// bracket writes a bracket that stays as it is where a page lets the line wrap, and that a style sheet can tell from
// the operators, to set it closer.
func (p *mathPrinter) bracket(sign string) { p.WriteString(`<mo stretchy="false">` + sign + "</mo>") }
