package unit

import (
	"math/big"
	"strconv"
)

// A Factor converts a value: times Multiply, then over Divide. Both are kept, since multiplying and dividing by whole
// numbers is exact more often than one multiplication by their rounded ratio.
type Factor struct{ Multiply, Divide float64 }

// Apply converts a value. The product is rounded before it is divided, and a step that is 1 is left out; the page's
// script does the same.
func (f Factor) Apply(v float64) float64 {
	if f.Multiply != 1 {
		v = float64(v * f.Multiply)
	}
	if f.Divide != 1 {
		v = float64(v / f.Divide)
	}
	return v
}

// Inverse converts back.
func (f Factor) Inverse() Factor { return Factor{Multiply: f.Divide, Divide: f.Multiply} }

// Text writes the factor as "multiply/divide" in the shortest decimals that read back as the same numbers.
func (f Factor) Text() string {
	return strconv.FormatFloat(f.Multiply, 'f', -1, 64) + "/" + strconv.FormatFloat(f.Divide, 'f', -1, 64)
}

// To gives the factor from u to v. The dimensions must be the same but for carriers and accounts that one of the two
// leaves unsaid; a compound converts to the element or the form in it and back (NO3 to NO3-N, P to P2O5). Otherwise the
// error is a *Mismatch.
func (u Unit) To(v Unit) (Factor, error) {
	d, factor := u.dimension.reform(v.dimension)
	if !d.Fits(v.dimension) && !v.dimension.Fits(d) {
		return Factor{}, &Mismatch{Given: u.String(), Unit: u, Wanted: v}
	}
	return between(factor, u, v), nil
}

// For gives the factor from u, as somebody wrote it, to the unit that is asked for. What was written may leave a
// carrier or an account out, may be a compound of what is asked for, and may be a mass in a volume of water; it may
// say nothing that is not asked for. Otherwise the error is a *Mismatch.
func (u Unit) For(asked Unit) (Factor, error) {
	v := u.inWater(asked.dimension)
	d, factor := v.dimension.reform(asked.dimension)
	if !d.Fits(asked.dimension) || u.isOfWater() && asked.dimension.carriedBy(soil) {
		return Factor{}, &Mismatch{Given: u.String(), Unit: u, Wanted: asked}
	}
	return between(factor, v, asked), nil
}

// between is the factor from one unit to another, with what their forms differ by. Most often the two are one unit.
func between(forms *big.Rat, u, v Unit) Factor {
	if from, to := u.ratio(), v.ratio(); forms != one || from != to {
		r := new(big.Rat).Mul(forms, from)
		return factorOf(r.Quo(r, to))
	}
	return Factor{1, 1}
}

// factorOf writes an exact ratio as two numbers: its own whole parts when a float64 holds both, otherwise the nearest
// single number, below the line when the ratio is less than 1 so that a whole inverse stays exact.
func factorOf(r *big.Rat) Factor {
	multiply, exactAbove := wholeFloat(r.Num())
	divide, exactBelow := wholeFloat(r.Denom())
	if exactAbove && exactBelow {
		return Factor{multiply, divide}
	}
	if r.Cmp(one) > 0 {
		value, _ := r.Float64()
		return Factor{value, 1}
	}
	inverse, _ := new(big.Rat).Inv(r).Float64()
	return Factor{1, inverse}
}

// wholeFloat gives a whole number as a float64, and whether that is exact, as it is for all below 2^53.
func wholeFloat(n *big.Int) (float64, bool) {
	value, accuracy := new(big.Float).SetInt(n).Float64()
	return value, accuracy == big.Exact
}
