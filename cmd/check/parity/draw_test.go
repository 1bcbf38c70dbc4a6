package main

import (
	"math"
	"testing"
)

func sumOf(values ...float64) sum {
	s := newSum()
	for _, v := range values {
		s.add(v)
	}
	return s
}

func TestSumSeesEveryBitButThoseOfNaN(t *testing.T) {
	base := sumOf(48, 0, 110)
	for name, other := range map[string]sum{
		"the last bit":    sumOf(math.Nextafter(48, 49), 0, 110),
		"the sign of 0":   sumOf(48, math.Copysign(0, -1), 110),
		"the order":       sumOf(0, 48, 110),
		"a value more":    sumOf(48, 0, 110, 0),
		"NaN for a value": sumOf(48, math.NaN(), 110),
	} {
		if other == base {
			t.Errorf("%s makes no difference", name)
		}
	}
	signalling := math.Float64frombits(0xfff0000000000001)
	if sumOf(math.NaN()) != sumOf(signalling) {
		t.Error("two NaN count as different")
	}
}

func TestDrawGivesEverySortOfNumber(t *testing.T) {
	random := newDraw(0)
	var nan, infinite, zero, whole, typed, odd int
	const draws = 10_000
	for range draws {
		switch v := random.number(); {
		case v != v:
			nan++
		case math.IsInf(v, 0):
			infinite++
		case v == 0:
			zero++
		case v == math.Trunc(v) && math.Abs(v) < 6:
			whole++
		case v > 0 && v < 200:
			typed++
		default:
			odd++
		}
	}
	for name, n := range map[string]int{
		"NaN": nan, "infinity": infinite, "0": zero, "small whole number": whole, "typed number": typed, "other": odd,
	} {
		if n < draws/200 {
			t.Errorf("only %d of %d are of the sort %s", n, draws, name)
		}
	}
	if newDraw(1).number() == newDraw(2).number() {
		t.Error("two programs get the same numbers")
	}
}
