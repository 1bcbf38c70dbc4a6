package sheet

import (
	"html"
	"strconv"
	"strings"

	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// A mathPrinter writes presentation MathML Core (W3C), in names or in numbers.
type mathPrinter struct {
	strings.Builder
	say  *words.General
	sum  *sum // nil: in names
	mark Marker
	bare bool // the result is a range that no one sum gives
}

const mathOpen, mathClose = `<math>`, `</math>`

// symbolsMath writes how a result is worked in names, which is the same on every page of a language.
func (o Outcome) symbolsMath(r *Result, w *way) string {
	if known, ok := w.symbols.Load(o.say()); ok {
		return known.(string)
	}
	p := &mathPrinter{say: o.say()}
	p.WriteString(mathOpen + "<mrow>")
	p.name(r.called())
	p.operator("=")
	p.expression(w.body, callLevel)
	p.WriteString("</mrow>" + mathClose)
	w.symbols.Store(o.say(), p.String())
	return p.String()
}

// math writes the sum, or of a bare one what leads to the result all the same: a page shows it for other numbers.
func (s *sum) math(mark Marker, bare bool) string {
	p := &mathPrinter{say: s.o.say(), sum: s, mark: mark, bare: bare}
	p.WriteString(mathOpen + "<mrow")
	if mark != nil && !s.body.plainly() {
		if hidden := s.scale(); hidden != 1 {
			p.WriteString(` data-scale="` + strconv.FormatFloat(hidden, 'g', -1, 64) + `"`)
		}
	}
	p.WriteString(">")
	p.operator("=")
	if !s.body.plainly() {
		p.expression(s.body, callLevel)
		p.operator("=")
	}
	p.result()
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
		p.number(unit.Text(n.value), n.unit, "")
	case kindConstant:
		p.constant(n)
	case kindGiven, kindNamed:
		p.leaf(n)
	case kindLookup:
		p.text(n.said)
	case kindRecast:
		p.leaf(n)
	case kindConvert:
		p.expression(n.args[0], productLevel)
		sign, number := n.change()
		p.operator(sign)
		p.WriteString("<mn" + p.exactly(number) + ">" + p.sum.constantText(number) + "</mn>")
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
	brackets := n.args[0].misread(p.sum != nil)
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
	before, between := n.callName(p.say)
	called, joined := n.callName(words.InGeneral(words.English))
	p.WriteString("<mtext" + calledBy(called, before) + ">" + before + "&nbsp;</mtext>")
	for i, arg := range n.args {
		if i > 0 {
			p.WriteString("<mtext" + calledBy(joined, between) + ">&nbsp;" + between + "&nbsp;</mtext>")
		}
		p.expression(arg, atomLevel)
	}
}

// calledBy gives the English word for one of another language as an attribute: the page's script reads the work, and
// knows those.
func calledBy(english, said string) string {
	if said == english {
		return ""
	}
	return ` data-call="` + english + `"`
}

// leaf writes a given, step or answer. Its unit is that of the formula: a given may have been written as its second
// kind of quantity.
func (p *mathPrinter) leaf(n *node) {
	name, _ := n.leaf()
	if p.sum == nil {
		p.name(n.called())
		return
	}
	p.valueOf(name, p.sum.leafText(name, n.unit), n.unit)
}

func (p *mathPrinter) result() {
	r := p.sum.r
	text := p.sum.resultText(p.sum.end)
	if p.bare || p.sum.ranged() {
		text = p.sum.o.numbersOf(r, p.sum.resultText)
	}
	p.valueOf(r.Name, text, r.Unit)
}

// valueOf writes the number or the day of a cell.
func (p *mathPrinter) valueOf(name, text string, u unit.Unit) {
	attributes := ""
	if p.mark != nil {
		attributes = p.mark(p.sum.o.Use.cells[name])
	}
	if p.sum.o.Use.Sheet.IsDate(name) {
		p.WriteString("<mtext" + attributes + ">" + text + "</mtext>")
		return
	}
	p.number(text, u, attributes)
}

// number writes a number with its unit, in the order of a sentence: $2/lb, 12 in.
func (p *mathPrinter) number(number string, u unit.Unit, attributes string) {
	const mark = "0"
	before, after, _ := strings.Cut(u.Label(mark), mark)
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

// text writes what is beside a number; a space at its start must not fall away.
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
	number, after, is := n.reads()
	switch {
	case !is:
		p.WriteString("<mn>" + html.EscapeString(n.said) + "</mn>")
	case n.said == "":
		p.number(p.sum.constantText(number), n.unit, p.exactly(number))
	default:
		p.WriteString("<mrow><mn" + p.exactly(number) + ">" + p.sum.constantText(number) + "</mn>")
		p.text(after)
		p.WriteString("</mrow>")
	}
}

// exactly gives the attribute for a figure that is printed with fewer digits than it has, so that a page can print
// more.
func (p *mathPrinter) exactly(v float64) string {
	if p.sum == nil || p.mark == nil || unit.Few(v, typedDigits) {
		return ""
	}
	return ` data-value="` + strconv.FormatFloat(v, 'g', -1, 64) + `"`
}

func (p *mathPrinter) name(name string) {
	p.WriteString("<mi>" + html.EscapeString(name) + "</mi>")
}

func (p *mathPrinter) operator(sign string) { p.WriteString("<mo>" + sign + "</mo>") }

// bracket writes a bracket that stays as it is where a page lets the line wrap, and that a style sheet can tell from
// the operators, to set it closer.
func (p *mathPrinter) bracket(sign string) { p.WriteString(`<mo stretchy="false">` + sign + "</mo>") }
