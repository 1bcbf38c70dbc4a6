package unit

// A substance is one way to write what a unit is of. Several may share a base: ppm NO3-N and ppm N both measure
// nitrogen, and differ only in what a reader is told.
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
	{"kernels", "kernels", crop},
	{"in-shell", "in-shell nuts", crop},
	{"lime", "lime", lime},
	{"CaCO3", "lime", lime},
	{"N", "nitrogen", nitrogen},
	{"NO3-N", "nitrate-nitrogen", nitrogen},
	{"NH4-N", "ammonium-nitrogen", nitrogen},
	{"NO2-N", "nitrite-nitrogen", nitrogen},
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

// substanceOf gives the usual spelling of a base.
func substanceOf(b base) *substance {
	for i := range substances {
		if substances[i].base == b {
			return &substances[i]
		}
	}
	return nil
}
