package unit

import (
	"fmt"
	"math/big"
)

// atomicWeights are the abridged standard atomic weights of IUPAC/CIAAW (2021), as decimals so that they stay exact.
var atomicWeights = map[string]string{
	"H":  "1.008",
	"C":  "12.011",
	"N":  "14.007",
	"O":  "15.999",
	"Na": "22.990",
	"Cl": "35.45",
	"P":  "30.974",
	"S":  "32.06",
	"K":  "39.098",
	"Ca": "40.078",
}

// AtomicWeight gives the abridged standard atomic weight of an element in g/mol (IUPAC/CIAAW 2021), and false for an
// element that no fertilizer arithmetic here needs.
func AtomicWeight(element string) (float64, bool) {
	weight, known := atomicWeight(element)
	if !known {
		return 0, false
	}
	value, _ := weight.Float64()
	return value, true
}

func atomicWeight(element string) (*big.Rat, bool) {
	text, known := atomicWeights[element]
	if !known {
		return nil, false
	}
	return rational(text), true
}

// Share gives the mass of an element in a unit mass of a pure compound, from the atomic weights:
// Share("N", "CO(NH2)2") is the nitrogen in urea, 0.466.
func Share(element, compound string) (float64, error) {
	share, err := share(element, compound)
	if err != nil {
		return 0, err
	}
	value, _ := share.Float64()
	return value, nil
}

func share(element, compound string) (*big.Rat, error) {
	counts, err := parseFormula(compound)
	if err != nil {
		return nil, err
	}
	total := new(big.Rat)
	for part, count := range counts {
		weight, known := atomicWeight(part)
		if !known {
			return nil, fmt.Errorf("no atomic weight is known for %q in %q", part, compound)
		}
		total.Add(total, weight.Mul(weight, big.NewRat(int64(count), 1)))
	}
	if counts[element] == 0 {
		return nil, fmt.Errorf("there is no %s in %s", element, compound)
	}
	weight, _ := atomicWeight(element)
	weight.Mul(weight, big.NewRat(int64(counts[element]), 1))
	return weight.Quo(weight, total), nil
}

// rational reads a decimal or a fraction that the program itself wrote.
func rational(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(fmt.Sprintf("unit: %q is not a number", text))
	}
	return r
}
