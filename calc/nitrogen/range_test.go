package nitrogen_test

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

const draws = 500

// signed are the results that may be below nothing.
var signed = map[string]bool{}

// Whatever the allowed numbers, an answer is a finite number and no nitrogen is less than none.
func TestAnswersAreFiniteOverTheWholeRange(t *testing.T) {
	r := random(t)
	for _, s := range nitrogen.Shelf() {
		for range draws {
			values, o := drawTaken(t, r, s)
			for _, result := range s.Results {
				v := o.Value(result.Name).Value
				if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 && !signed[s.Name+"."+result.Name] {
					t.Fatalf("%s.%s of %v is %v", s.Name, result.Name, values, v)
				}
			}
		}
	}
}

// The ends of every range, all of them at once in every combination, are taken too, or refused with a sentence.
func TestEndsOfRangesAreTaken(t *testing.T) {
	for _, s := range nitrogen.Shelf() {
		for ends := range 1 << len(s.Givens) {
			values := map[string]float64{}
			for i, g := range s.Givens {
				values[g.Name] = g.Low
				if ends>>i&1 == 1 {
					values[g.Name] = g.High
				}
			}
			var refused *sheet.Refused
			if _, err := evaluate(s, values); err != nil && !errors.As(err, &refused) {
				t.Errorf("%s of %v: %v", s.Name, values, err)
			}
		}
	}
}

func TestOutsideOfRangesIsRefused(t *testing.T) {
	for _, s := range nitrogen.Shelf() {
		typical := typicalValues(s)
		for _, g := range s.Givens {
			for _, value := range []float64{
				math.Nextafter(g.Low, math.Inf(-1)), math.Nextafter(g.High, math.Inf(1)),
				math.NaN(), math.Inf(1), math.Inf(-1), -1,
			} {
				if _, err := evaluate(s, with(typical, g.Name, value)); err == nil {
					t.Errorf("%s takes %s = %v", s.Name, g.Name, value)
				}
			}
		}
	}
}

// The answer does not depend on the unit in which a number was written.
func TestUnitsGiveTheSameAnswers(t *testing.T) {
	r := random(t)
	for _, s := range nitrogen.Shelf() {
		for range draws / 5 {
			values, _ := drawTaken(t, r, s)
			for _, g := range s.Givens {
				if _, stated := values[g.Name]; !stated || len(g.Units) == 0 {
					continue
				}
				// The ends themselves may fall outside by a rounding when they are written in another unit.
				moved := with(values, g.Name, g.Low+(g.High-g.Low)*(0.001+0.998*r.Float64()))
				if _, err := evaluate(s, moved); err != nil {
					continue // refused, such as a square of unlike sides
				}
				values = moved
				for _, other := range g.Units {
					sameInUnit(t, s, values, g, other)
				}
			}
		}
	}
}

// sameInUnit wants the same answers when one of the values is written in another unit.
func sameInUnit(t *testing.T, s *sheet.Sheet, values map[string]float64, g *sheet.Given, other string) {
	t.Helper()
	entry, err := g.Read(inUnit(t, g, values[g.Name], other))
	if err != nil {
		t.Fatalf("%s.%s: %v", s.Name, g.Name, err)
	}
	o, again := work(t, s, values), work(t, s, with(values, g.Name, entry.Value))
	for _, result := range s.Results {
		what := s.Name + "." + result.Name + " with " + g.Name + " in " + other
		closeBy(t, what, o.Value(result.Name).Value, again.Value(result.Name).Value, values)
	}
}

// inUnit writes a value of a given in another unit, with all its digits.
func inUnit(t testing.TB, g *sheet.Given, value float64, other string) string {
	t.Helper()
	q, err := unit.Quantity{Value: value, Unit: g.Unit}.In(unit.MustParse(other))
	if err != nil {
		t.Fatal(err)
	}
	return strconv.FormatFloat(q.Value, 'f', -1, 64) + " " + other
}

// closeBy wants two numbers alike to 1e-12 of the larger of them and of what went in: a difference of two near
// numbers, such as what the credits leave short, keeps only the digits that they do not share.
func closeBy(t testing.TB, what string, a, b float64, given map[string]float64) {
	t.Helper()
	size := math.Max(math.Abs(a), math.Abs(b))
	for _, v := range given {
		size = math.Max(size, math.Abs(v))
	}
	if !(math.Abs(a-b) <= 1e-12*size) {
		t.Errorf("%s: %v and %v", what, a, b)
	}
}

// typicalValues fills in what a sheet must have, the row distance that its typical pattern needs, and the share that a
// need which is taken up does.
func typicalValues(s *sheet.Sheet) map[string]float64 {
	values := map[string]float64{}
	for _, g := range s.Givens {
		if !g.Optional || g.Name == "row" || g.Name == "efficiency" {
			values[g.Name] = g.Typical
		}
	}
	return values
}

// A run of water, and the clean water before and after it, is within a week.
func TestARunIsWithinAWeek(t *testing.T) {
	const week = 7 * 24 // h
	for name, want := range map[string]float64{"run": week, "clean": week * 60, "flush": week * 60} {
		if g := nitrogen.Injection.FindGiven(name); g.High != want {
			t.Errorf("%s is up to %v %s, want %v", name, g.High, g.Unit, want)
		}
	}
}

// The first and the last feed are within a year: 2028 has 366 days.
func TestASeasonIsWithinAYear(t *testing.T) {
	first := float64(time.Date(2028, 1, 1, 0, 0, 0, 0, time.UTC).Unix() / 86_400)
	values := with(typicalValues(nitrogen.FeedSchedule), "first", first)
	for days, refused := range map[float64]bool{365: false, 366: false, 367: true} {
		_, err := evaluate(nitrogen.FeedSchedule, with(values, "last", first+days))
		if got := err != nil && strings.Contains(err.Error(), "is more than a year"); got != refused {
			t.Errorf("%v days: %v", days, err)
		}
	}
}

// Some ends are not a matter of taste: a share ends at the whole, and soil is lighter than the rock it is made of.
func TestRangesStayWithinWhatCanBe(t *testing.T) {
	const rock = 2.65 // g/cm3, quartz
	for _, s := range nitrogen.Shelf() {
		for _, g := range s.Givens {
			if g.Unit.Same(unit.MustParse("%")) && len(g.Choices) == 0 && g.High > 100 {
				t.Errorf("%s.%s may be %v %%", s.Name, g.Name, g.High)
			}
			if factor, err := g.Unit.To(unit.MustParse("g/cm3")); err == nil && factor.Apply(g.High) >= rock {
				t.Errorf("%s.%s may be %v, which is rock", s.Name, g.Name, g.High)
			}
		}
	}
}
