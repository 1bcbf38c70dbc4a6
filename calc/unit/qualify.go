package unit

import (
	"fmt"
	"strconv"
	"strings"
)

// symbol reads a symbol and its power.
func (p *parser) symbol(t *term) error {
	at := p.peek(0)
	if at.kind != wordToken {
		p.next()
		return p.misplaced(at)
	}
	if t.power > 0 && p.compound(t) {
		return nil
	}
	power := 1
	found, size := p.severalWords()
	if size == 0 {
		if raised, by, ok := p.raisedLength(); ok {
			found, power, size = raised, by, 2
		}
	}
	if size == 0 {
		ok := false
		found, power, ok = lookUp(at.text)
		if !ok {
			p.next()
			return p.unknown(at)
		}
		size = 1
	}
	p.pos += size
	t.spelling, t.inner = found, power
	p.write(found.text + exponent(power))
	return nil
}

// plainPowers writes the powers that are one sign as digits.
var plainPowers = strings.NewReplacer("²", "2", "³", "3")

// lookUpAsWritten finds a symbol with the power written at its end, capitals counting.
func lookUpAsWritten(word string) (spelling, int, bool) {
	if found, ok := spellings[word]; ok {
		return found, 1, true
	}
	if strings.ContainsAny(word, "²³") {
		word = plainPowers.Replace(word)
	}
	name := strings.TrimRight(word, "0123456789")
	if name == word {
		return spelling{}, 0, false // no power is written, and Atoi would make an error of it for each word of a text
	}
	found, ok := spellings[name]
	power, err := strconv.Atoi(word[len(name):])
	if !ok || err != nil || power < 1 || power > highest {
		return spelling{}, 0, false
	}
	return found, power, true
}

// compound reads mg/L, mg/kg and their like, which the trade writes as one unit: the substance after mg/L is in the
// litre.
func (p *parser) compound(t *term) bool {
	if p.peek(1).kind != strokeToken || p.peek(2).kind != wordToken {
		return false
	}
	found, ok := spellings[p.peek(0).text+"/"+p.peek(2).text]
	if !ok {
		found, ok = spellings[p.nameAt(0)+"/"+p.nameAt(2)]
	}
	if !ok || p.carrierAt(3) {
		return false
	}
	p.pos += 3
	t.spelling, t.inner = found, 1
	p.write(found.text)
	return true
}

// nameAt is the tidied spelling of a symbol ahead, or its word when it is none by itself, as meq.
func (p *parser) nameAt(ahead int) string {
	word := p.peek(ahead).text
	if found, power, ok := lookUp(word); ok && power == 1 {
		return found.text
	}
	return strings.NewReplacer("µ", "u", "μ", "u").Replace(strings.ToLower(word))
}

// carrierAt says whether a token ahead is a carrier.
func (p *parser) carrierAt(ahead int) bool {
	s, _ := p.substanceAt(ahead)
	return s != nil && s.base.isCarrier()
}

// qualify reads what a symbol is of, and what carries it.
func (p *parser) qualify(t *term) error {
	for {
		of := p.peek(0).kind == wordToken && (p.peek(0).text == "of" || p.peek(0).text == "as")
		if of {
			p.next()
			if p.peek(0).text == "actual" || p.peek(0).text == "pure" {
				p.next()
			}
		}
		at := p.peek(0)
		s, size := p.substanceAt(0)
		switch {
		case s == nil && of:
			return p.fault(at, "a substance must follow of, as in ppm NO3-N of soil")
		case s == nil:
			return p.molar(t)
		}
		p.pos += size
		if err := p.attach(at, t, s, of); err != nil {
			return err
		}
	}
}

// attach says of a term that it is of a substance, or that the substance carries it: "ppm N of soil".
func (p *parser) attach(at token, t *term, s *substance, of bool) error {
	if of && s.base.isCarrier() && t.symbol.isShare() && t.carrier == nil {
		p.write(" of " + s.symbol)
		t.carrier = s
		return nil
	}
	if t.substance != nil {
		return p.fault(at, fmt.Sprintf("one unit can not be of both %s and %s; take one out", t.substance.symbol, s.symbol))
	}
	if err := p.mayQualify(at, t, s); err != nil {
		if p.moveUp(s) {
			return nil
		}
		return err
	}
	if of && s.base.isCarrier() {
		p.write(" of")
	}
	p.write(" " + s.symbol)
	t.substance = s
	p.joinLitre(t)
	return nil
}

// moveUp puts a substance to the mass above the line that it was written too far behind: lb/ac N is lb N/ac. False when
// there is no such mass.
func (p *parser) moveUp(s *substance) bool {
	for i := range p.terms {
		if t := &p.terms[i]; t.symbol.kind == massKind && t.power > 0 && t.substance == nil {
			t.substance, p.moved = s, true
			return true
		}
	}
	return false
}

// joinLitre reads the rest of "mg N/L", which is mg/L N.
func (p *parser) joinLitre(t *term) {
	found, ok := spellings[t.symbol.name+"/L"]
	if !ok || t.inner != 1 || t.number != "" || t.power < 0 || p.peek(0).kind != strokeToken ||
		p.nameAt(1) != "L" || p.carrierAt(2) {
		return
	}
	p.pos += 2
	t.spelling = found
	p.write("/L")
}

// mayQualify refuses a substance where it makes no sense, as in lb/ac N, which says pounds for each acre of nitrogen.
func (p *parser) mayQualify(at token, t *term, s *substance) error {
	switch {
	case t.symbol.isShare() || t.symbol.kind == massKind:
		return nil
	case s.base.isCarrier() && t.dimension() == length.of(3):
		return nil
	case s.base.isCarrier() && t.text == "in":
		return p.fault(at, fmt.Sprintf("in means inches; write what carries it as \"of %s\"", s.symbol))
	}
	return p.fault(at, fmt.Sprintf("%s can not follow %s; write it after the unit it belongs to, as in lb %s/ac",
		s.symbol, t.text, s.symbol))
}
