package prose

import "math"

// Agrees says whether the amount is a range of the same unit, rounded to the places in which the amount is written. A
// number just between two rounds away from nothing, as everywhere.
func (a Amount) Agrees(low, high float64) bool {
	return roundsTo(low, a.Low, a.LowStep) && roundsTo(high, a.High, a.HighStep)
}

// mostRounding is how far rounding may move a figure. In another unit one can be written too coarsely to be the same: 7
// in is not 1 ft, and 0.8 oz is not 1 oz.
const mostRounding = 0.05

// AgreesClosely says whether the amount may be written for a range of the same unit: it agrees, and its rounding does
// not make another number of it.
func (a Amount) AgreesClosely(low, high float64) bool {
	return a.Agrees(low, high) && RelativeDifference(a.Low, low) <= mostRounding &&
		RelativeDifference(a.High, high) <= mostRounding
}

// RelativeDifference gives how far two numbers are from each other, as a share of the larger. What arithmetic leaves of
// a nothing is nothing.
func RelativeDifference(a, b float64) float64 {
	const nothing = 1e-9
	a, b = math.Abs(a-b), max(math.Abs(a), math.Abs(b))
	if b < nothing {
		return 0
	}
	return a / b
}

// roundsTo says whether a value is what was written when it is rounded to a multiple of step.
func roundsTo(value, written, step float64) bool {
	if value < 0 {
		value, written = -value, -written
	}
	const hair = 1e-9 // for the arithmetic that led to the value
	up, down := written-value, value-written
	return up <= step/2*(1+hair)+value*1e-12 && down < step/2*(1-hair)-value*1e-12
}
