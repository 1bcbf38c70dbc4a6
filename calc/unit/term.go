package unit

import (
	"math/big"
	"slices"
	"strconv"
	"strings"
)

// A term is one symbol of a unit with all that is said about it: 6 in, lb N, ppm NO3-N of soil.
type term struct {
	spelling
	inner     int        // the power written at the symbol when something else is said too (ft2 soil); otherwise 1
	number    string     // the number written before it, such as the 6 of "per 6 in"; empty is 1
	amount    *big.Rat   // its value; nil is 1
	substance *substance // what it is of; nil says nothing
	carrier   *substance // what carries it; nil says nothing
	power     int        // the power of all of it; below the line it is negative
}

// bare says whether a term is a symbol and nothing else.
func (t term) bare() bool { return t.number == "" && t.substance == nil && t.carrier == nil }

// alike says whether two terms are the same but for their power, however they are spelled.
func (t term) alike(u term) bool {
	return t.symbol == u.symbol && t.inner == u.inner && sameBase(t.substance, u.substance) &&
		sameBase(t.carrier, u.carrier) && sameAmount(t.amount, u.amount)
}

func sameBase(a, b *substance) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.base == b.base
}

func sameAmount(a, b *big.Rat) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Cmp(b) == 0
}

// dimension gives the dimension of a term to the power 1.
func (t term) dimension() Dimension {
	d := t.symbol.dimension.Power(t.inner)
	if t.substance != nil {
		d = d.Times(t.substance.base.of(1))
	}
	if t.carrier != nil {
		d = d.Over(t.carrier.base.of(1))
	}
	return d
}

// scale gives the scale of a term to the power 1.
func (t term) scale() *big.Rat {
	s := powerOf(t.symbol.scale, t.inner)
	if t.symbol.kind == molarKind && t.substance != nil {
		s.Mul(s, t.substance.molarMass(t.symbol.name == "meq/L"))
	}
	if t.amount != nil {
		s.Mul(s, t.amount)
	}
	return s
}

// multiplyTerms gives the terms of a product, or of a quotient when sign is -1. Like terms are joined, and drop out
// when their powers cancel.
func multiplyTerms(left, right []term, sign int) []term {
	product := make([]term, len(left), len(left)+len(right))
	copy(product, left)
	for _, t := range right {
		t.power *= sign
		i := slices.IndexFunc(product, t.alike)
		switch {
		case i < 0:
			product = append(product, t)
		case product[i].power+t.power == 0:
			product = slices.Delete(product, i, i+1)
		default:
			product[i].power += t.power
		}
	}
	return product
}

// writeTerms writes a unit in the form that Parse reads: what is above the line, a stroke, what is below it.
func writeTerms(terms []term) string {
	var above, below []string
	accounts := ""
	for _, t := range terms {
		if t.symbol.kind == accountKind && t.bare() {
			accounts += t.writeAccount()
		} else if t.power > 0 {
			above = append(above, t.write()...)
		} else {
			below = append(below, t.write()...)
		}
	}
	return putAccounts(writeLine(above, below), accounts)
}

// writeLine writes what is above the line, a stroke and what is below it.
func writeLine(above, below []string) string {
	text := strings.Join(above, "·")
	if len(below) == 0 {
		return text
	}
	if len(above) == 0 {
		text = "1"
	}
	if len(below) == 1 && below[0] != "L" { // mg/L means something else
		return text + "/" + below[0]
	}
	return text + "/(" + strings.Join(below, "·") + ")"
}

// putAccounts puts accounts at the end of a unit. Alone, they are a unit by themselves.
func putAccounts(text, accounts string) string {
	switch {
	case text != "":
		return text + accounts
	case strings.HasPrefix(accounts, "/"):
		return "1" + accounts
	}
	return strings.TrimPrefix(accounts, " ")
}

// writeAccount writes an account as it is at the end of a unit: " taken up", "/fed".
func (t term) writeAccount() string {
	times, before := t.power, " "
	if times < 0 {
		times, before = -times, "/"
	}
	return strings.Repeat(before+t.text, times)
}

// write gives a term as the factors to write on its side of the line: several when a power can not be written at it.
func (t term) write() []string {
	times := max(t.power, -t.power)
	if t.bare() && times <= highest && !strings.ContainsAny(t.text, "%$/") {
		return []string{t.text + exponent(times)}
	}
	text := t.text + exponent(t.inner)
	if t.substance != nil {
		text += " " + t.substance.symbol
	}
	if t.carrier != nil {
		text += " of " + t.carrier.symbol
	}
	switch {
	case t.number != "":
		text = "(" + t.number + " " + text + ")"
	case strings.Contains(text, "/"): // mg/L stays together
		text = "(" + text + ")"
	}
	return slices.Repeat([]string{text}, times)
}

// highest is the highest power that is written at a symbol.
const highest = 9

func exponent(power int) string {
	if power == 1 {
		return ""
	}
	return strconv.Itoa(power)
}
