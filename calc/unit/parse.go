package unit

import (
	"fmt"
	"math/big"
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
// A number may be below the line, before a unit: per 6 in, /1000 lb crop.
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
	p := &parser{text: text, tokens: inEnglish(tokenize(text)), sign: 1}
	if len(text) > longest {
		return Unit{}, p.fault(p.peek(0), tooLong)
	}
	if p.peek(0).kind == endToken {
		return Unit{}, nil
	}
	if first := p.peek(0); first.kind == numberToken && (first.text != "1" || !p.dividesAt(1)) {
		return Unit{}, p.fault(first, fmt.Sprintf("there is a unit without a number; leave out the %s", first.text))
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
	u := p.unit()
	if len(u.String()) > longest { // short spellings become longer ones: A is ac
		return Unit{}, p.fault(token{}, tooLong)
	}
	return u, nil
}

const tooLong = "this is too long for a unit; write one such as lb N/ac"

// A parser reads one text. It gathers the terms and the tidied text side by side.
type parser struct {
	text   string
	tokens []token
	pos    int
	sign   int // -1 when the enclosing brackets are below the line, otherwise 1
	terms  []term
	tidy   strings.Builder
	moved  bool // a substance was put to another unit than the one it was written at
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
	if p.moved {
		u.written = writeTerms(u.terms)
	}
	for _, t := range p.terms {
		u.dimension = u.dimension.Times(t.dimension().Power(t.power))
		u.scale.Mul(u.scale, powerOf(t.scale(), t.power))
	}
	return u
}
