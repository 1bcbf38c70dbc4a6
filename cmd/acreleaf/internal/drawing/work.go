package drawing

import (
	"math"
	"strconv"
	"strings"
	"time"
)

// Op is an operation of a step. The script of a page has a twin of each, in the same order.
type Op int

// The operations.
const (
	Literal  Op = iota
	Add         // a + b
	Subtract    // a − b
	Multiply    // a × b
	Divide      // a ÷ b
	Least       // the smaller of a and b
	Most        // the larger of a and b
	Else        // a, or b where a is no number
	Less        // 1 where a is less than b, or else 0
	Whole       // a without what is after its point
	Round       // the least of 1, 2 and 5 times a power of ten that is not under a; 1 for nothing
	Month       // the day on which the b-th month after that of day a begins
)

var operations = [...]func(a, b float64) float64{
	Add:      func(a, b float64) float64 { return a + b },
	Subtract: func(a, b float64) float64 { return a - b },
	Multiply: func(a, b float64) float64 { return a * b },
	Divide:   func(a, b float64) float64 { return a / b },
	Least:    math.Min,
	Most:     math.Max,
	Else: func(a, b float64) float64 {
		if math.IsNaN(a) {
			return b
		}
		return a
	},
	Less: func(a, b float64) float64 {
		if a < b {
			return 1
		}
		return 0
	},
	Whole: func(a, _ float64) float64 { return math.Floor(a) },
	Round: func(a, _ float64) float64 { return round(a) },
	Month: month,
}

func round(v float64) float64 {
	if !(v > 0) || math.IsInf(v, 0) {
		if v == 0 {
			return 1
		}
		return math.NaN()
	}
	_, power, _ := strings.Cut(strconv.FormatFloat(v, 'e', -1, 64), "e")
	for _, digits := range []string{"1", "2", "5", "10"} {
		if least, err := strconv.ParseFloat(digits+"e"+power, 64); err == nil && least >= v {
			return least
		}
	}
	return math.NaN()
}

// farthest is how many days from 1970 on a calendar is asked for; a page takes no day beyond it.
const farthest = 1e6

func month(day, more float64) float64 {
	if !(math.Abs(day) < farthest && math.Abs(more) < farthest) {
		return math.NaN()
	}
	at := date(day)
	first := time.Date(at.Year(), at.Month()+time.Month(int(more)), 1, 0, 0, 0, 0, time.UTC)
	return float64(first.Unix() / secondsInDay)
}

const secondsInDay = 24 * 60 * 60

// date is a day that is counted from 1970-01-01.
func date(day float64) time.Time { return time.Unix(int64(day)*secondsInDay, 0).UTC() }

// MonthOf is the month of a day, from 0.
func MonthOf(day float64) int { return int(date(day).Month()) - 1 }

// A Number is what is drawn of a value.
type Number struct {
	Low, High float64
	There     bool // for some of the numbers of the ranges at least
	Sure      bool // for all of them
}

// Work gives what is in each place for the numbers that the rule takes, in its order.
func (r *Rule) Work(numbers []Number) []float64 {
	var list []float64
	for _, n := range numbers {
		low, high, sure := n.Low, n.High, 0.0
		if n.Sure {
			sure = 1
		}
		if !n.There {
			low, high = math.NaN(), math.NaN()
		}
		list = append(list, low, high, sure)
	}
	for _, s := range r.Steps {
		if s.Op == Literal {
			list = append(list, s.Value)
			continue
		}
		a := list[s.Takes[0]]
		list = append(list, operations[s.Op](a, list[s.Takes[len(s.Takes)-1]]))
	}
	return list
}

// Drawn says whether a shape is drawn, by what Work gave.
func (s *Shape) Drawn(list []float64) bool {
	if s.When != Always && !(list[s.When] > 0) {
		return false
	}
	for _, m := range s.Moves {
		for _, at := range m.At {
			if !finite(list[at]) {
				return false
			}
		}
	}
	return s.Tag != "text" || s.Text == Always || finite(list[s.Text])
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Value is an attribute as it is written, for a shape that is drawn.
func (m *Move) Value(list []float64) string {
	parts := make([]string, len(m.At))
	for i, at := range m.At {
		parts[i] = Coordinate(list[at])
	}
	return strings.Join(parts, " ")
}

// Coordinate writes a place on the picture to a tenth.
func Coordinate(v float64) string {
	const tenths = 10
	return strconv.FormatFloat(math.Floor(float64(v*tenths)+0.5)/tenths+0, 'f', -1, 64)
}
