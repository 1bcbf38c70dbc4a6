package unit

import (
	"cmp"
	"math/big"
	"slices"
)

// A Unit is a unit of measure: the words for it, its dimension and its exact scale. The zero value is the unit of a
// plain number. Units are values; nothing changes one once it is made.
type Unit struct {
	written   string // as it was read, tidied; empty when the unit was worked out from others
	terms     []term
	dimension Dimension
	scale     *big.Rat // in SI units of the dimension; nil is 1
	tongue    *tongue  // the language that it is written in; nil is English
}

// Dimension says what kind of thing u measures.
func (u Unit) Dimension() Dimension { return u.dimension }

// String gives the unit as it was written, tidied ("lb N/ac"), or as it was worked out. It is empty for a plain
// number. Parse reads it back as the same unit, unless a substance that Carried added is left unsaid in it.
func (u Unit) String() string {
	if u.tongue != nil {
		return u.tongue.write(u.english())
	}
	return u.english()
}

// english gives the unit as it is written in English.
func (u Unit) english() string {
	if u.written != "" {
		return u.written
	}
	return writeTerms(u.terms)
}

// Same says whether u and v measure the same thing on the same scale, however they are written.
func (u Unit) Same(v Unit) bool {
	return u.dimension == v.dimension && u.ratio().Cmp(v.ratio()) == 0
}

// Times gives the unit of a product. What is both above and below the line drops out: oz N/tree × trees/ac = oz N/ac.
func (u Unit) Times(v Unit) Unit {
	return combine(u, v, 1)
}

// Over gives the unit of a quotient.
func (u Unit) Over(v Unit) Unit {
	return combine(u, v, -1)
}

// combine gives u times v to the power of sign, which is 1 or -1.
func combine(u, v Unit, sign int) Unit {
	if len(v.terms) == 0 { // a plain number
		return u
	}
	if len(u.terms) == 0 && sign == 1 {
		return v
	}
	result := Unit{terms: multiplyTerms(u.terms, v.terms, sign), scale: new(big.Rat), tongue: cmp.Or(u.tongue, v.tongue)}
	if sign == 1 {
		result.dimension = u.dimension.Times(v.dimension)
		result.scale.Mul(u.ratio(), v.ratio())
	} else {
		result.dimension = u.dimension.Over(v.dimension)
		result.scale.Quo(u.ratio(), v.ratio())
	}
	return result
}

// Power gives the unit of the n-th power; n may be negative, and the power 0 is the unit of a plain number.
func (u Unit) Power(n int) Unit {
	if n == 1 {
		return u
	}
	if n == 0 {
		return Unit{}
	}
	terms := make([]term, len(u.terms))
	for i, t := range u.terms {
		t.power *= n
		terms[i] = t
	}
	return Unit{terms: terms, dimension: u.dimension.Power(n), scale: powerOf(u.ratio(), n), tongue: u.tongue}
}

// Root gives the unit of the square root. It reports false when there is none: the dimension has an odd power (a
// volume), or no unit made of the same symbols is the root (an acre is the square of nothing; ft2 is).
func (u Unit) Root() (Unit, bool) {
	dimension, even := u.dimension.Root()
	if !even {
		return Unit{}, false
	}
	terms := make([]term, len(u.terms))
	scale := big.NewRat(1, 1)
	for i, t := range u.terms {
		if t.power%2 != 0 {
			return Unit{}, false
		}
		t.power /= 2
		terms[i] = t
		scale.Mul(scale, powerOf(t.scale(), t.power))
	}
	return Unit{terms: terms, dimension: dimension, scale: scale, tongue: u.tongue}, true
}

// Carried gives the same unit with a carrier below the line: ppm NO3-N carried by soil is nitrogen in soil. The text
// stays as it is, since a reader of a soil report knows what carries it. A unit that already names what carries it
// is given back unchanged. Carried panics when the word is no carrier, and when nothing stands
// above the line.
func (u Unit) Carried(carrier string) Unit {
	s := substanceBySymbol[carrier]
	whole := slices.IndexFunc(u.terms, func(t term) bool { return t.power == 1 })
	if s == nil || !s.base.isCarrier() || whole < 0 {
		panic("unit: " + carrier + " can not carry \"" + u.String() + "\"")
	}
	for b := firstSubstance; b < firstNutrient; b++ {
		if u.dimension.powers[b] < 0 {
			return u
		}
	}
	terms := slices.Clone(u.terms)
	terms[whole].carrier = s
	return Unit{
		written:   u.english(),
		terms:     terms,
		dimension: u.dimension.Over(s.base.of(1)),
		scale:     u.scale,
		tongue:    u.tongue,
	}
}

// ratio gives the scale of u, which the caller must not change.
func (u Unit) ratio() *big.Rat {
	if u.scale == nil {
		return one
	}
	return u.scale
}

// one is the scale of a plain number. Nothing may change it.
var one = big.NewRat(1, 1)
