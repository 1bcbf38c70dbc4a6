package unit

import (
	"fmt"
	"strings"
)

// dividesAt says whether a token ahead is "/", "per" or a word like it.
func (p *parser) dividesAt(ahead int) bool {
	t := p.peek(ahead)
	return t.kind == strokeToken || divisionWords[t.text]
}

// expression reads factors and what joins them, up to the end or a closing bracket.
func (p *parser) expression() error {
	for first := true; ; first = false {
		t := p.peek(0)
		if !first && (t.kind == endToken || t.kind == closeToken) {
			return nil
		}
		sign := 1
		switch {
		case p.dividesAt(0):
			p.next()
			sign = -1
			p.writeDivision(t)
		case t.kind == timesToken && !first:
			p.next()
			p.write("·")
		case !first:
			p.write(" ")
		}
		if err := p.factor(sign, first); err != nil {
			return err
		}
	}
}

// writeDivision writes a stroke or "per" as it was written.
func (p *parser) writeDivision(t token) {
	tidy := p.tidy.String()
	switch {
	case t.text == "per" && (tidy == "" || strings.HasSuffix(tidy, "(")):
		p.write("per ")
	case t.text == "per":
		p.write(" per ")
	case tidy == "":
		p.write("1/")
	default:
		p.write("/")
	}
}

// factor reads a bracket, or a symbol with all that is said about it. A number may come before the symbol below the
// line, and first in a bracket.
func (p *parser) factor(sign int, opens bool) error {
	var t term
	t.power = sign
	first := p.peek(0)
	if first.kind == numberToken {
		if sign == 1 && !opens {
			return p.fault(first, fmt.Sprintf("a number cannot be here; take out the %s", first.text))
		}
		if err := p.number(&t); err != nil {
			return err
		}
	} else if first.kind == openToken {
		return p.bracket(sign)
	}
	if err := p.symbol(&t); err != nil {
		return err
	}
	if err := p.qualify(&t); err != nil {
		return err
	}
	if t.bare() {
		t.power, t.inner = t.power*t.inner, 1
	}
	t.power *= p.sign
	p.terms = append(p.terms, t)
	return nil
}

// bracket reads an expression in brackets.
func (p *parser) bracket(sign int) error {
	open := p.next()
	outside := p.sign
	p.sign *= sign
	p.write("(")
	if err := p.expression(); err != nil {
		return err
	}
	if p.next().kind != closeToken {
		return p.fault(open, "this bracket is not closed; write the ) where it ends")
	}
	p.write(")")
	p.sign = outside
	return nil
}

// number reads the scale before a symbol.
func (p *parser) number(t *term) error {
	at := p.next()
	value, message := readNumber(at.text)
	if message != "" {
		return p.fault(at, message)
	}
	if value == 0 {
		return p.fault(at, "nothing can be counted per 0; write another number")
	}
	if next := p.peek(0); next.kind != wordToken {
		return p.fault(at, fmt.Sprintf("a unit must follow the %s; write it, such as %s lb", at.text, at.text))
	}
	t.number = at.text
	t.amount = rational(strings.ReplaceAll(at.text, ",", ""))
	p.write(at.text + " ")
	return nil
}
