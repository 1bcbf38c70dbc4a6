package unit

// Meant is the factor from u to wanted when u is read in the light of wanted: a figure in prose may leave the
// substance out ("48 lb/ac" of N) but may not state another. False when it does, or when it measures something else.
func (u Unit) Meant(wanted Unit) (Factor, bool) {
	if !u.dimension.LeavesOut(wanted.dimension) {
		return Factor{}, false
	}
	return between(one, u, wanted), true
}

// MeantPlainly is Meant where nitrogen is wanted in a form, and told as nitrogen and no more. It is false where no form
// is wanted.
func (u Unit) MeantPlainly(wanted Unit) (Factor, bool) {
	plain := wanted.plainDimension()
	if plain == wanted.dimension || !u.dimension.LeavesOut(plain) {
		return Factor{}, false
	}
	return between(one, u, wanted), true
}

// Shorter says whether u is wanted with something left out, of the same size: a substance (ppm for ppm NO3-N), or what
// is counted (1/ac for trees/ac).
func (u Unit) Shorter(wanted Unit) bool {
	leavesOut := u.dimension.leavesOut(wanted.dimension, func(b base) bool { return b.isCounted() || b >= firstSubstance })
	other := u.isOfWater() && wanted.dimension.carriedBy(soil)
	return leavesOut && !other && u.dimension != wanted.dimension && u.ratio().Cmp(wanted.ratio()) == 0
}
