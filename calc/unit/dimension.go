package unit

// A base is one of the things a dimension counts powers of: a kind of measure, a counted thing, a substance or an
// account.
type base uint8

// The measures come first, then the counted things, then the carriers, then the nutrient forms, then the accounts.
const (
	length base = iota
	mass
	time
	money
	tree
	emitter
	feed
	nut
	head
	hive
	bale
	conductance

	soil
	water
	product
	crop
	kernels
	inShell
	assessed
	husks
	lime

	nitrogen
	nitrateN
	nitriteN
	ammoniumN
	ammoniaN
	ureaN
	nitrate
	nitrite
	ammonium
	ammonia
	urea
	phosphorus
	phosphate
	potassium
	potash
	sulfur
	sulfate
	calcium
	calciumOxide
	zinc
	boron
	sodium
	chloride

	fed
	takenUp
	present

	bases // how many there are

	firstSubstance = soil
	firstNutrient  = nitrogen
	firstAccount   = fed
)

// isCarrier says whether b is a substance that carries nutrients and may be left unsaid.
func (b base) isCarrier() bool { return b >= firstSubstance && b < firstNutrient }

// isCounted says whether b is a thing that is counted.
func (b base) isCounted() bool { return b >= tree && b <= bale }

// isAccount says whether b tells where a nutrient is counted: put on, in the tree, or in the soil.
func (b base) isAccount() bool { return b >= firstAccount }

// A Dimension says what kind of thing a quantity measures: the power of every measure, counted thing, substance and
// account. The zero value is a plain number. Dimensions compare with ==.
type Dimension struct{ powers [bases]int16 }

// of gives the dimension of a base raised to a power.
func (b base) of(power int) Dimension {
	var d Dimension
	d.powers[b] = int16(power)
	return d
}

// Times gives the dimension of a product.
func (d Dimension) Times(e Dimension) Dimension {
	for i, p := range e.powers {
		d.powers[i] += p
	}
	return d
}

// Over gives the dimension of a quotient.
func (d Dimension) Over(e Dimension) Dimension {
	for i, p := range e.powers {
		d.powers[i] -= p
	}
	return d
}

// Power gives the dimension of the n-th power; n may be negative.
func (d Dimension) Power(n int) Dimension {
	for i := range d.powers {
		d.powers[i] *= int16(n)
	}
	return d
}

// Root gives the dimension of the square root, and false when some power is odd.
func (d Dimension) Root() (Dimension, bool) {
	for i, p := range d.powers {
		if p%2 != 0 {
			return Dimension{}, false
		}
		d.powers[i] = p / 2
	}
	return d, true
}

// Plain says whether d is a plain number.
func (d Dimension) Plain() bool { return d == Dimension{} }

// Fits says whether a quantity of dimension d can be where wanted is asked: the two are equal, or d leaves out
// only carriers (soil, water, product, lime, a crop or a part of it) and accounts (fed, taken up, present) that wanted
// has. A nutrient can never be left out, and d may not say a carrier or an account that wanted does not have.
func (d Dimension) Fits(wanted Dimension) bool {
	return d.leavesOut(wanted, func(b base) bool { return b.isCarrier() || b.isAccount() })
}

// SameAccounts says whether d and e tell the same accounts. What one sheet takes from another must, since nobody is
// there who knows which one was meant.
func (d Dimension) SameAccounts(e Dimension) bool {
	return [bases - firstAccount]int16(d.powers[firstAccount:]) == [bases - firstAccount]int16(e.powers[firstAccount:])
}

// LeavesOut is Fits for a figure in a sentence, where the reader knows what is meant: any substance of wanted may be
// left out, a nutrient or an account too (48 lb/ac for lb N/ac fed), but another may never be said.
func (d Dimension) LeavesOut(wanted Dimension) bool {
	return d.leavesOut(wanted, func(b base) bool { return b >= firstSubstance })
}

// leavesOut says whether d is wanted but for bases that d is silent on and that may be silent.
func (d Dimension) leavesOut(wanted Dimension, silent func(base) bool) bool {
	for i, p := range d.powers {
		if p != wanted.powers[i] && (p != 0 || !silent(base(i))) {
			return false
		}
	}
	return true
}

// Bare gives the dimension without its substances and accounts.
func (d Dimension) Bare() Dimension {
	clear(d.powers[firstSubstance:])
	return d
}
