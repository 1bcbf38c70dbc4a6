package sheet

import "math"

// An Interval is the least and the greatest that a value can be, as far as that can be told from the ranges of what it
// is worked from. Its ends are rounded as the values themselves are, to the nearest. Rounding keeps the order of
// numbers, so no value that a program works out from numbers of the ranges lies outside.
type Interval struct{ Low, High float64 }

// Anything is the interval of a value of which nothing can be told: its divisor may be 0.
var Anything = Interval{math.Inf(-1), math.Inf(1)}

// Only is the interval of one value.
func Only(v float64) Interval { return Interval{v, v} }

var eitherTruth = Interval{0, 1}

// among is the interval of four values. One of them that is no number makes it anything.
func among(a, b, c, d float64) Interval {
	i := Interval{math.Min(math.Min(a, b), math.Min(c, d)), math.Max(math.Max(a, b), math.Max(c, d))}
	if math.IsNaN(a+b+c+d) && (math.IsNaN(a) || math.IsNaN(b) || math.IsNaN(c) || math.IsNaN(d)) {
		return Anything
	}
	return i
}

// Has says whether the value can be v.
func (i Interval) Has(v float64) bool { return i.Low <= v && v <= i.High }

func (i Interval) single() bool { return i.Low == i.High }

// Each is the interval of a function of the value that keeps or turns the order of numbers.
func (i Interval) Each(f func(float64) float64) Interval {
	a, b := f(i.Low), f(i.High)
	return among(a, b, a, b)
}

// Plus is the interval of a sum.
func (i Interval) Plus(j Interval) Interval {
	a, b := i.Low+j.Low, i.High+j.High
	return among(a, b, a, b)
}

// Minus is the interval of a difference.
func (i Interval) Minus(j Interval) Interval {
	a, b := i.Low-j.High, i.High-j.Low
	return among(a, b, a, b)
}

// Times is the interval of a product.
func (i Interval) Times(j Interval) Interval {
	return among(float64(i.Low*j.Low), float64(i.Low*j.High), float64(i.High*j.Low), float64(i.High*j.High))
}

// Over is the interval of a quotient: anything where the divisor may be 0.
func (i Interval) Over(j Interval) Interval {
	if j.Has(0) {
		return Anything
	}
	return among(i.Low/j.Low, i.Low/j.High, i.High/j.Low, i.High/j.High)
}

// Least is the interval of the smaller of two values.
func (i Interval) Least(j Interval) Interval {
	return Interval{math.Min(i.Low, j.Low), math.Min(i.High, j.High)}
}

// Most is the interval of the larger of two values.
func (i Interval) Most(j Interval) Interval {
	return Interval{math.Max(i.Low, j.Low), math.Max(i.High, j.High)}
}

// Either is the interval of a value that is in one of two.
func (i Interval) Either(j Interval) Interval {
	return Interval{math.Min(i.Low, j.Low), math.Max(i.High, j.High)}
}

// both is the interval of a value that is in two of them; its ends are the wrong way round if it cannot be.
func (i Interval) both(j Interval) Interval {
	return Interval{math.Max(i.Low, j.Low), math.Min(i.High, j.High)}
}

// Size is the interval of the value without its sign.
func (i Interval) Size() Interval {
	if i.Has(0) {
		return Interval{0, math.Max(-i.Low, i.High)}
	}
	return i.Each(math.Abs)
}

// Root is the interval of the square root. What is below 0 has none, and is left out where some is not.
func (i Interval) Root() Interval {
	if i.High < 0 {
		return Anything
	}
	return Interval{math.Sqrt(math.Max(0, i.Low)), math.Sqrt(i.High)}
}

// ask is the interval of a truth that is surely so, or surely not, or may be either.
func ask(surely, surelyNot bool) Interval {
	switch {
	case surely:
		return Only(1)
	case surelyNot:
		return Only(0)
	}
	return eitherTruth
}
