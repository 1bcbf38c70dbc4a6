package unit

import (
	"fmt"
	"math/big"
)

// The water of a well or a drip line is dilute, so a litre of it is a kilogram, and a mass in a volume of it is a
// share: a milligram in a litre is a millionth, and so is a gram in a cubic meter. Soil is another matter.

// ofWater are the shares that are told for a litre of water.
var ofWater = map[string]bool{"mg/L": true, "ug/L": true, "mmol/L": true, "umol/L": true, "meq/L": true}

// isOfWater says whether u can only be told of water.
func (u Unit) isOfWater() bool {
	for _, t := range u.terms {
		if ofWater[t.symbol.name] {
			return true
		}
	}
	return false
}

// carriedBy says whether a carrier is below the line.
func (d Dimension) carriedBy(b base) bool { return d.powers[b] < 0 }

// kilogramOfLitre is a kilogram in a litre, in SI units.
var kilogramOfLitre = big.NewRat(1000, 1)

// inWater gives a mass in a volume of water as a share of its mass, where a share in water is asked for.
func (u Unit) inWater(asked Dimension) Unit {
	d := u.dimension
	share := asked.powers[mass] == 0 && asked.powers[length] == 0 && asked.carriedBy(water)
	if !share || d.powers[mass] != 1 || d.powers[length] != -3 {
		return u
	}
	d.powers[mass], d.powers[length] = 0, 0
	return Unit{written: u.english(), terms: u.terms, dimension: d, tongue: u.tongue,
		scale: new(big.Rat).Quo(u.ratio(), kilogramOfLitre)}
}

// otherCarrier is the sentence for a share that is told of water where one of soil is asked for; "" for any other.
func (m *Mismatch) otherCarrier() string {
	if !m.Unit.isOfWater() || !m.Wanted.dimension.carriedBy(soil) {
		return ""
	}
	return fmt.Sprintf("%s is for a litre of water, and this is a share of soil; "+
		"take the line of a soil report, in %s or in mg/kg", m.Given, m.Wanted)
}
