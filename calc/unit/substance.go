package unit

import "slices"

// A substance is one way to write what a unit is of. Two words for one thing share a base, as product and fertilizer
// do. What only a fact of the trade or of a laboratory makes one of the other has a base of its own: nitrogen in
// nitrate is no nitrogen in ammonium, and kernels are no nuts in the shell.
type substance struct {
	symbol string // as it is written after a unit
	words  string // as it is said in a sentence
	base   base
}

// substances lists every known spelling, the usual one of each base first.
var substances = []substance{
	{"soil", "soil", soil},
	{"water", "water", water},
	{"product", "product", product},
	{"material", "product", product},
	{"fertilizer", "product", product},
	{"crop", "crop", crop},
	{"kernels", "kernels", kernels},
	{"in-shell", "in-shell nuts", inShell},
	{"CPC", "CPC weight", assessed},
	{"shells-and-hulls", "shells and hulls", husks},
	{"lime", "lime", lime},
	{"CaCO3", "lime", lime},
	{"N", "nitrogen", nitrogen},
	{"total N", "total nitrogen", nitrogen},
	{"NO3-N", "nitrate-nitrogen", nitrateN},
	{"NO2-N", "nitrite-nitrogen", nitriteN},
	{"NH4-N", "ammonium-nitrogen", ammoniumN},
	{"NH3-N", "ammonia-nitrogen", ammoniaN},
	{"urea-N", "urea-nitrogen", ureaN},
	{"NO3", "nitrate", nitrate},
	{"NO2", "nitrite", nitrite},
	{"NH4", "ammonium", ammonium},
	{"NH3", "ammonia", ammonia},
	{"urea", "urea", urea},
	{"P", "phosphorus", phosphorus},
	{"P2O5", "phosphate", phosphate},
	{"K", "potassium", potassium},
	{"K2O", "potash", potash},
	{"S", "sulfur", sulfur},
	{"SO4", "sulfate", sulfate},
	{"Ca", "calcium", calcium},
	{"CaO", "calcium oxide", calciumOxide},
	{"Zn", "zinc", zinc},
	{"B", "boron", boron},
	{"Na", "sodium", sodium},
	{"Cl", "chloride", chloride},
}

// substanceBySymbol finds a substance by its spelling.
var substanceBySymbol = indexSubstances()

func indexSubstances() map[string]*substance {
	index := make(map[string]*substance, len(substances))
	for i := range substances {
		index[substances[i].symbol] = &substances[i]
	}
	return index
}

// Substances lists every known spelling of a substance.
func Substances() []string {
	symbols := make([]string, len(substances))
	for i, s := range substances {
		symbols[i] = s.symbol
	}
	return symbols
}

// Of gives u with another substance above the line, or with none for "". False when nothing above the line can be of a
// substance.
func (u Unit) Of(symbol string) (Unit, bool) {
	terms := slices.Clone(u.terms)
	at := slices.IndexFunc(terms, func(t term) bool { return t.power > 0 && t.substance != nil })
	if at < 0 {
		at = slices.IndexFunc(terms, func(t term) bool {
			return t.power > 0 && (t.symbol.kind == massKind || t.symbol.kind == ratio)
		})
	}
	if at < 0 {
		return u, false
	}
	of := Unit{scale: u.scale, tongue: u.tongue, dimension: u.dimension.Over(terms[at].dimension().Power(terms[at].power))}
	terms[at].substance = substanceBySymbol[symbol]
	of.dimension = of.dimension.Times(terms[at].dimension().Power(terms[at].power))
	of.terms = multiplyTerms(nil, terms, 1)
	return of, true
}

// substanceOf gives the usual spelling of a base.
func substanceOf(b base) *substance {
	for i := range substances {
		if substances[i].base == b {
			return &substances[i]
		}
	}
	return nil
}
