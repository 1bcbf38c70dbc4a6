package unit

import (
	"math/big"
	"slices"
)

// A form is a nutrient told as one of its compounds: nitrate holds nitrogen, P2O5 holds phosphorus.
type form struct {
	base    base
	element base
	share   *big.Rat // mass of the element in a unit mass of the compound
}

// forms are the compounds that convert to the element they hold. Those that hold nitrogen convert to the nitrogen of
// their own form only: nitrate is not ammonium, though both hold nitrogen.
var forms = []form{
	{nitrate, nitrateN, mustShare("N", "NO3")},
	{nitrite, nitriteN, mustShare("N", "NO2")},
	{ammonium, ammoniumN, mustShare("N", "NH4")},
	{ammonia, ammoniaN, mustShare("N", "NH3")},
	{urea, ureaN, mustShare("N", "CO(NH2)2")},
	{phosphate, phosphorus, mustShare("P", "P2O5")},
	{potash, potassium, mustShare("K", "K2O")},
	{sulfate, sulfur, mustShare("S", "SO4")},
	{calciumOxide, calcium, mustShare("Ca", "CaO")},
}

func mustShare(element, compound string) *big.Rat {
	r, err := share(element, compound)
	if err != nil {
		panic("unit: " + err.Error())
	}
	return r
}

// reform writes d with the nutrient forms of wanted, and gives the factor that this multiplies a value by. No two forms
// are told by one element, so what d and wanted hold stays the same or stays apart.
func (d Dimension) reform(wanted Dimension) (Dimension, *big.Rat) {
	factor := one
	for _, f := range forms {
		extra := d.powers[f.base] - wanted.powers[f.base]
		if extra == 0 {
			continue
		}
		d.powers[f.base] -= extra
		d.powers[f.element] += extra
		factor = new(big.Rat).Mul(factor, powerOf(f.share, int(extra)))
	}
	return d, factor
}

// plainNitrogen are the forms of nitrogen that are told by the nitrogen in them.
var plainNitrogen = map[base]bool{nitrateN: true, nitriteN: true, ammoniumN: true, ammoniaN: true, ureaN: true}

// Nitrogen gives the same unit with the nitrogen of a form counted as nitrogen and no more: a pound of NO3-N is a pound
// of N. There is no way back, since plain nitrogen does not say which form it is of.
func (u Unit) Nitrogen() Unit {
	terms := slices.Clone(u.terms)
	for i, t := range terms {
		terms[i] = t.plain()
	}
	return Unit{terms: multiplyTerms(nil, terms, 1), dimension: u.plainDimension(), scale: u.scale, tongue: u.tongue}
}

// plain gives a term with the nitrogen of a form counted as nitrogen and no more.
func (t term) plain() term {
	if t.substance != nil && plainNitrogen[t.substance.base] {
		t.substance = substanceBySymbol["N"]
	}
	return t
}

func (u Unit) plainDimension() Dimension {
	d := u.dimension
	for _, t := range u.terms {
		if plain := t.plain(); plain != t {
			d = d.Over(t.dimension().Power(t.power)).Times(plain.dimension().Power(t.power))
		}
	}
	return d
}

// powerOf gives r to the power n, exactly; n may be negative.
func powerOf(r *big.Rat, n int) *big.Rat {
	result := big.NewRat(1, 1)
	for range n {
		result.Mul(result, r)
	}
	for range -n {
		result.Quo(result, r)
	}
	return result
}
