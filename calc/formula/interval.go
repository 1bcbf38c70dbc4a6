package formula

import "math"

// An interval is the least and the most that a value can be, in its own unit, as far as that can be told from the
// ranges of the givens. It tells where a division by nothing or the root of a negative number may come about.
type interval struct{ low, high float64 }

var anything = interval{math.Inf(-1), math.Inf(1)}

func only(v float64) interval { return interval{v, v} }

// among is the interval of some values. One of them that is no number makes it anything.
func among(values ...float64) interval {
	i := interval{math.Inf(1), math.Inf(-1)}
	for _, v := range values {
		if math.IsNaN(v) {
			return anything
		}
		i.low, i.high = math.Min(i.low, v), math.Max(i.high, v)
	}
	return i
}

func (i interval) each(f func(float64) float64) interval { return among(f(i.low), f(i.high)) }

func (i interval) plus(j interval) interval  { return among(i.low+j.low, i.high+j.high) }
func (i interval) minus(j interval) interval { return among(i.low-j.high, i.high-j.low) }

func (i interval) times(j interval) interval {
	return among(i.low*j.low, i.low*j.high, i.high*j.low, i.high*j.high)
}

func (i interval) over(j interval) interval {
	if j.has(0) {
		return anything
	}
	return among(i.low/j.low, i.low/j.high, i.high/j.low, i.high/j.high)
}

func (i interval) least(j interval) interval {
	return interval{math.Min(i.low, j.low), math.Min(i.high, j.high)}
}

func (i interval) most(j interval) interval {
	return interval{math.Max(i.low, j.low), math.Max(i.high, j.high)}
}

// either is the interval of a value that is in one of two.
func (i interval) either(j interval) interval {
	return interval{math.Min(i.low, j.low), math.Max(i.high, j.high)}
}

func (i interval) size() interval {
	if i.has(0) {
		return interval{0, math.Max(-i.low, i.high)}
	}
	return i.each(math.Abs)
}

func (i interval) power(n int) interval {
	p := i
	for range n - 1 {
		p = p.times(i)
	}
	return p
}

func (i interval) root() interval {
	return interval{math.Sqrt(math.Max(0, i.low)), math.Sqrt(math.Max(0, i.high))}
}

func (i interval) has(v float64) bool { return i.low <= v && v <= i.high }
