package unit

import (
	"fmt"
	"strings"
)

// A Range is two numbers with one unit, the lower first; a single number has both the same.
type Range struct {
	Low, High float64
	Unit      Unit
}

// ParseRange reads "3 to 4 oz N/tree", "3–4 oz N/tree" or a single quantity. The error is an *Error.
func ParseRange(text string) (Range, error) {
	low, high, u, err := ParseNumbers(text)
	return Range{low.Value, high.Value, u}, err
}

// ParseNumbers is ParseRange with how finely each end is written. The two of a single quantity are the same.
func ParseNumbers(text string) (low, high Number, u Unit, err error) {
	if length, ok := feetInches(text); ok {
		low = Number{Value: length.Low, Step: 1, Digits: true}
		return low, low, length.Unit, nil
	}
	r := newReader(text)
	if low, err = r.number(); err == nil {
		high, err = r.second(low)
	}
	if err != nil {
		return Number{}, Number{}, Unit{}, err
	}
	if first, second, twice := r.secondUnit(); twice {
		return r.eachWithUnit(first, second)
	}
	if u, err = r.unit(); err != nil {
		return Number{}, Number{}, Unit{}, err
	}
	return low, high, u, nil
}

// second reads the second number of a range, if there is one.
func (r *reader) second(low Number) (Number, error) {
	if !r.separator() {
		return low, nil
	}
	if strings.TrimSpace(r.text[r.at:]) == "" {
		return Number{}, r.fault(r.at, "the second number is missing; write it, as in 3 to 4 oz N/tree")
	}
	high, err := r.number()
	if err == nil && low.Value > high.Value {
		err = r.fault(0, fmt.Sprintf("the lower number goes first; write %s to %s", Text(high.Value), Text(low.Value)))
	}
	return high, err
}

// eachWithUnit reads a range whose ends have a unit each, which must be one: 3 oz to 4 oz.
func (r *reader) eachWithUnit(first, second string) (low, high Number, u Unit, err error) {
	low, lowEnd, lowUnit, err := ParseNumbers(first)
	if err == nil {
		var highEnd Number
		high, highEnd, u, err = ParseNumbers(second)
		if err == nil && lowUnit.Same(u) && low == lowEnd && high == highEnd && low.Value <= high.Value {
			return low, high, u, nil
		}
	}
	return Number{}, Number{}, Unit{}, r.fault(r.at, "the unit goes once, after both numbers, as in 3 to 4 oz N/tree")
}

// In gives the same range in another unit. When the two do not measure the same thing the error is a *Mismatch.
func (r Range) In(u Unit) (Range, error) {
	factor, err := r.Unit.To(u)
	if err != nil {
		return Range{}, &Mismatch{Given: r.String(), Unit: r.Unit, Wanted: u}
	}
	return Range{factor.Apply(r.Low), factor.Apply(r.High), u}, nil
}

// For gives the range, as somebody wrote it, in the unit that is asked for; see Unit.For.
func (r Range) For(asked Unit) (Range, error) {
	factor, err := r.Unit.For(asked)
	if err != nil {
		return Range{}, &Mismatch{Given: r.String(), Unit: r.Unit, Wanted: asked}
	}
	return Range{factor.Apply(r.Low), factor.Apply(r.High), asked}, nil
}

// String writes the range for a reader: "3 to 4 oz N/tree".
func (r Range) String() string {
	if r.Low == r.High {
		return Quantity{r.Low, r.Unit}.String()
	}
	return r.Unit.Counted(r.Numbers())
}

// Numbers writes the range without its unit: "3 to 4".
func (r Range) Numbers() string { return r.Unit.Between(r.Unit.Number(r.Low), r.Unit.Number(r.High)) }

// Between writes the two ends of a range in the language of the unit. Ends that a reader sees alike are written once.
func (u Unit) Between(low, high string) string {
	switch {
	case low == high:
		return low
	case u.tongue != nil:
		return low + " " + u.tongue.to + " " + high
	}
	return low + " to " + high
}
