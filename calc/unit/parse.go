package unit

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"sync"
)

// longest is how many bytes a unit may have. It bounds the work that a made-up text can cause.
const longest = 200

// parsed keeps every unit that was read, since the same few are read again and again.
var parsed sync.Map // string to Unit

// Parse reads a unit: "lb N/ac", "ppm NO3-N of soil", "lb soil/ac per 6 in", "$/lb". An empty text is the unit of a
// plain number. The error is an *Error.
//
// Symbols are joined by a space or "·" (times) and by "/" or "per", which bind only what follows next. A digit at the
// end of a symbol is its power (ft2). A substance follows the unit that it qualifies, and "of" names what carries it.
// A number may stand below the line, before a unit: per 6 in, /1000 lb crop.
func Parse(text string) (Unit, error) {
	if u, ok := parsed.Load(text); ok {
		return u.(Unit), nil
	}
	u, err := parse(text)
	if err != nil {
		return Unit{}, err
	}
	parsed.Store(text, u)
	return u, nil
}

// MustParse is Parse for a unit that the program itself writes; it panics on a fault.
func MustParse(text string) Unit {
	u, err := Parse(text)
	if err != nil {
		panic("unit: " + err.Error())
	}
	return u
}

func parse(text string) (Unit, error) {
	p := &parser{text: text, tokens: tokenize(text), sign: 1}
	if len(text) > longest {
		return Unit{}, p.fault(p.peek(0), "this is too long for a unit; write one such as lb N/ac")
	}
	if p.peek(0).kind == endToken {
		return Unit{}, nil
	}
	if first := p.peek(0); first.kind == numberToken && (first.text != "1" || !p.dividesAt(1)) {
		return Unit{}, p.fault(first, fmt.Sprintf("a unit stands without a number; leave out the %s", first.text))
	} else if first.kind == numberToken {
		p.next() // the 1 of 1/ac
		p.write("1")
	}
	if err := p.expression(); err != nil {
		return Unit{}, err
	}
	if t := p.peek(0); t.kind != endToken {
		return Unit{}, p.fault(t, "this ) closes no bracket; take it out")
	}
	return p.unit(), nil
}

// A parser reads one text. It gathers the terms and the tidied text side by side.
type parser struct {
	text   string
	tokens []token
	pos    int
	depth  int
	sign   int // -1 when the enclosing brackets stand below the line, otherwise 1
	terms  []term
	tidy   strings.Builder
}

func (p *parser) peek(ahead int) token {
	return p.tokens[min(p.pos+ahead, len(p.tokens)-1)]
}

func (p *parser) next() token {
	t := p.peek(0)
	p.pos++
	return t
}

func (p *parser) write(text string) { p.tidy.WriteString(text) }

// unit makes the unit of what was read.
func (p *parser) unit() Unit {
	u := Unit{written: p.tidy.String(), terms: multiplyTerms(nil, p.terms, 1), scale: big.NewRat(1, 1)}
	for _, t := range p.terms {
		u.dimension = u.dimension.Times(t.dimension().Power(t.power))
		u.scale.Mul(u.scale, powerOf(t.scale(), t.power))
	}
	return u
}

// dividesAt says whether a token ahead is "/" or "per".
func (p *parser) dividesAt(ahead int) bool {
	t := p.peek(ahead)
	return t.kind == strokeToken || t.kind == wordToken && t.text == "per"
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
			p.writeDivision(t, first)
		case t.kind == timesToken && !first:
			p.next()
			p.write("·")
		case !first:
			p.write(" ")
		}
		if err := p.factor(sign, first && p.depth > 0); err != nil {
			return err
		}
	}
}

// writeDivision writes a stroke or "per" as it was written.
func (p *parser) writeDivision(t token, first bool) {
	switch {
	case t.kind == strokeToken:
		p.write("/")
	case first && p.tidy.Len() == 0:
		p.write("per ")
	default:
		p.write(" per ")
	}
}

// factor reads a bracket, or a symbol with all that is said about it. A number may stand before the symbol below the
// line, and first in a bracket.
func (p *parser) factor(sign int, opens bool) error {
	var t term
	t.power = sign
	first := p.peek(0)
	if first.kind == numberToken {
		if sign == 1 && !opens {
			return p.fault(first, fmt.Sprintf("a number can not stand here; take out the %s", first.text))
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
	p.depth++
	p.write("(")
	if err := p.expression(); err != nil {
		return err
	}
	if p.next().kind != closeToken {
		return p.fault(open, "this bracket is not closed; write the ) where it ends")
	}
	p.write(")")
	p.depth--
	p.sign = outside
	return nil
}

// number reads the scale before a symbol.
func (p *parser) number(t *term) error {
	at := p.next()
	value, err := ParseNumber(at.text)
	if err != nil {
		return p.fault(at, err.Error())
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

// symbol reads a symbol and its power.
func (p *parser) symbol(t *term) error {
	at := p.next()
	if at.kind != wordToken {
		return p.misplaced(at)
	}
	if t.power > 0 && p.compound(at, t) {
		return nil
	}
	found, power, ok := lookUp(at.text)
	if !ok {
		return p.unknown(at)
	}
	t.spelling, t.inner = found, power
	p.write(found.text + exponent(power))
	return nil
}

// lookUp finds a symbol with the power written at its end.
func lookUp(word string) (spelling, int, bool) {
	if found, ok := spellings[word]; ok {
		return found, 1, true
	}
	word = strings.NewReplacer("²", "2", "³", "3").Replace(word)
	name := strings.TrimRight(word, "0123456789")
	found, ok := spellings[name]
	power, err := strconv.Atoi(word[len(name):])
	if !ok || err != nil || power < 1 || power > 9 {
		return spelling{}, 0, false
	}
	return found, power, true
}

// compound reads mg/L, mg/kg and g/kg, which the trade writes as one unit: the substance after mg/L is in the litre.
func (p *parser) compound(first token, t *term) bool {
	below := p.peek(1)
	if p.peek(0).kind != strokeToken || below.kind != wordToken {
		return false
	}
	bottom := spellings[below.text]
	found, ok := spellings[first.text+"/"+bottom.text]
	if !ok || p.carrierAt(2) {
		return false
	}
	p.pos += 2
	t.spelling, t.inner = found, 1
	p.write(found.text)
	return true
}

// carrierAt says whether a token ahead is a carrier.
func (p *parser) carrierAt(ahead int) bool {
	s := substanceBySymbol[p.peek(ahead).text]
	return s != nil && s.base.isCarrier()
}

// qualify reads what a symbol is of, and what carries it.
func (p *parser) qualify(t *term) error {
	if s := substanceBySymbol[p.peek(0).text]; s != nil {
		at := p.next()
		if err := p.mayQualify(at, t, s); err != nil {
			return err
		}
		t.substance = s
		p.write(" " + s.symbol)
		p.joinLitre(t)
	}
	if of := p.peek(0); of.kind != wordToken || of.text != "of" {
		return nil
	}
	p.next()
	at := p.next()
	s := substanceBySymbol[at.text]
	if s == nil {
		return p.unknown(at)
	}
	p.write(" of " + s.symbol)
	if s.base.isCarrier() && t.symbol.kind == ratio && t.carrier == nil {
		t.carrier = s
		return nil
	}
	if t.substance != nil {
		return p.fault(at, fmt.Sprintf("one unit can not be of both %s and %s; take one out", t.substance.symbol, s.symbol))
	}
	if err := p.mayQualify(at, t, s); err != nil {
		return err
	}
	t.substance = s
	return nil
}

// joinLitre reads the rest of "mg N/L", which is mg/L N.
func (p *parser) joinLitre(t *term) {
	if t.symbol.name != "mg" || t.inner != 1 || t.number != "" || t.power < 0 || p.peek(0).kind != strokeToken ||
		spellings[p.peek(1).text].text != "L" || p.carrierAt(2) {
		return
	}
	p.pos += 2
	t.spelling = spellings["mg/L"]
	p.write("/L")
}

// mayQualify refuses a substance where it makes no sense, as in lb/ac N, which says pounds for each acre of nitrogen.
func (p *parser) mayQualify(at token, t *term, s *substance) error {
	switch {
	case t.symbol.kind == ratio || t.symbol.kind == massKind:
		return nil
	case s.base.isCarrier() && t.dimension() == length.of(3):
		return nil
	case s.base.isCarrier() && t.text == "in":
		return p.fault(at, fmt.Sprintf("in means inches; write what carries it as \"of %s\"", s.symbol))
	}
	return p.fault(at, fmt.Sprintf("%s can not follow %s; write it after the unit it belongs to, as in lb %s/ac",
		s.symbol, t.text, s.symbol))
}
