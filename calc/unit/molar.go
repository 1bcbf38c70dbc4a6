package unit

import (
	"fmt"
	"math/big"
)

// A laboratory may tell what is in water by the count of its molecules (mmol/L) or of their charges (meq/L). With the
// substance told, the standard atomic weights make milligrams a litre of it.

// ions are the substances that may be counted in this way, each with the formula to weigh and the charges of one.
var ions = map[base]struct {
	formula string
	charges int64
}{
	nitrateN: {"N", 1}, nitrate: {"NO3", 1}, nitriteN: {"N", 1}, nitrite: {"NO2", 1}, ammoniumN: {"N", 1},
	ammonium: {"NH4", 1}, potassium: {"K", 1}, calcium: {"Ca", 2}, sulfate: {"SO4", 2}, sodium: {"Na", 1},
	chloride: {"Cl", 1},
}

// isShare says whether a symbol tells how much of something is in something else.
func (s *symbol) isShare() bool { return s.kind == ratio || s.kind == molarKind }

// molarMass is the weight of a mole in grams, or of a mole of charges.
func (s *substance) molarMass(charges bool) *big.Rat {
	ion := ions[s.base]
	mass := new(big.Rat)
	counts, err := parseFormula(ion.formula)
	if err != nil {
		panic("unit: " + err.Error()) // the formulas are written above
	}
	for element, count := range counts {
		weight, _ := atomicWeight(element)
		mass.Add(mass, weight.Mul(weight, big.NewRat(int64(count), 1)))
	}
	if charges {
		mass.Quo(mass, big.NewRat(ion.charges, 1))
	}
	return mass
}

// molar refuses a count of molecules of what has no formula here, or of nothing.
func (p *parser) molar(t *term) error {
	if t.symbol.kind != molarKind {
		return nil
	}
	if t.substance == nil {
		return p.fault(p.peek(0), fmt.Sprintf("%s must say what it is of; write for example %s NO3", t.text, t.text))
	}
	if _, known := ions[t.substance.base]; !known {
		return p.fault(p.peek(0), fmt.Sprintf("%s of %s cannot be weighed here; write mg/L %s", t.text, t.substance.symbol,
			t.substance.symbol))
	}
	return nil
}
