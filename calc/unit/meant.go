package unit

import "math/big"

// Meant is the factor from u to wanted when u is read in the light of wanted: a figure in prose may leave the
// substance out ("48 lb/ac" of N) but may not state another. False when it does, or when it measures something else.
func (u Unit) Meant(wanted Unit) (Factor, bool) {
	if !u.dimension.LeavesOut(wanted.dimension) {
		return Factor{}, false
	}
	return factorOf(new(big.Rat).Quo(u.ratio(), wanted.ratio())), true
}
