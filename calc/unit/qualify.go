package unit

import (
	"fmt"
	"strconv"
	"strings"
)

// symbol reads a symbol and its power.
func (p *parser) symbol(t *term) error {
	at := p.next()
	if at.kind != wordToken {
		return p.misplaced(at)
	}
	if t.power > 0 && p.compound(at, t) {
		return nil
	}
	if up := p.peek(0); at.text == "taken" && up.kind == wordToken && up.text == "up" {
		p.next()
		at.text = takenUpWord
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
	if !ok || err != nil || power < 1 || power > highest {
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
	for {
		at := p.peek(0)
		of := at.kind == wordToken && at.text == "of"
		if of {
			p.next()
			at = p.peek(0)
		}
		s := substanceBySymbol[at.text]
		switch {
		case s == nil && of:
			return p.fault(at, "a substance must follow of, as in ppm NO3-N of soil")
		case s == nil:
			return nil
		}
		p.next()
		if err := p.attach(at, t, s, of); err != nil {
			return err
		}
	}
}

// attach says of a term that it is of a substance, or that the substance carries it: "ppm N of soil".
func (p *parser) attach(at token, t *term, s *substance, of bool) error {
	if of {
		p.write(" of")
	}
	p.write(" " + s.symbol)
	if of && s.base.isCarrier() && t.symbol.kind == ratio && t.carrier == nil {
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
	p.joinLitre(t)
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
