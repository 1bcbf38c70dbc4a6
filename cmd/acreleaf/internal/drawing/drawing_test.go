package drawing

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"
	"time"
)

// known are numbers of a rule, in its order: those that are not named are not there.
func known(r *Rule, values map[string][2]float64) []Number {
	list := make([]Number, len(r.Takes))
	for i, name := range r.Takes {
		if v, there := values[name]; there {
			list[i] = Number{Low: v[0], High: v[1], There: true, Sure: true}
		}
	}
	return list
}

func both(v float64) [2]float64 { return [2]float64{v, v} }

// drawnAs lists the shapes of a look that are drawn, as their attributes.
func drawnAs(r *Rule, look Look, values map[string][2]float64) []string {
	work := r.Work(known(r, values))
	var list []string
	for i := range r.Shapes {
		s := &r.Shapes[i]
		if s.Look != look || !s.Drawn(work) {
			continue
		}
		var parts []string
		for j := range s.Moves {
			parts = append(parts, s.Moves[j].Name+"="+s.Moves[j].Value(work))
		}
		list = append(list, strings.Join(parts, " "))
	}
	return list
}

func wants(t *testing.T, what string, got []string, want ...string) {
	t.Helper()
	if !slices.Equal(got, want) {
		t.Errorf("%s: %q, want %q", what, got, want)
	}
}

// A need of 20 is 318 across, so that a pound is 15.9; by hand.
func TestBudget(t *testing.T) {
	short := map[string][2]float64{"fed-need": both(20), "in-reach": both(2), "water": both(6), "credits": both(8),
		"apply": both(12), "surplus": both(0)}
	r := Of("season-budget")
	wants(t, "the need", drawnAs(r, Ink, short), "x=1 y=19 width=318 height=11")
	wants(t, "the soil", drawnAs(r, Slant, short), "x=1 y=53 width=31.8 height=11")
	wants(t, "the water", drawnAs(r, Level, short), "x=32.8 y=87 width=95.4 height=11")
	wants(t, "other credits", drawnAs(r, Dots, short))
	wants(t, "what to buy", drawnAs(r, Spot, short), "x=128.2 y=155 width=190.8 height=11")
	wants(t, "what is over", drawnAs(r, Cross, short))
	wants(t, "ranges", drawnAs(r, Band, short))
	over := map[string][2]float64{"fed-need": both(5), "in-reach": both(2), "water": both(6), "organic": both(2),
		"credits": both(10), "apply": both(0), "surplus": both(5)}
	wants(t, "what is over", drawnAs(r, Cross, over), "x=160 y=189 width=159 height=11")
	wants(t, "what to buy", drawnAs(r, Spot, over))
	wants(t, "other credits", drawnAs(r, Dots, over), "x=255.4 y=121 width=63.6 height=11")
}

// A need of 10 to 20 and 4 to 8 in the water leave 2 to 16 to buy: a band over all of it, and a bar over what is sure.
func TestBudgetOfRanges(t *testing.T) {
	r := Of("season-budget")
	ranged := map[string][2]float64{"fed-need": {10, 20}, "in-reach": both(0), "water": {4, 8}, "credits": {4, 8},
		"apply": {2, 16}, "surplus": both(0)}
	wants(t, "the bars", drawnAs(r, Spot, ranged), "x=128.2 y=155 width=31.8 height=11")
	wants(t, "the bands", drawnAs(r, Band, ranged), "x=1 y=19 width=318 height=11", "x=1 y=87 width=127.2 height=11",
		"x=64.6 y=155 width=254.4 height=11")
}

// Both circles are drawn by the same scale: 164 for 8 feet across would be too wide with the offset, so it is 312 for
// 4 + 2 + 4.
func TestRootsAreToScale(t *testing.T) {
	r := Of("root-share")
	near := map[string][2]float64{"wetted": both(4), "root": both(4), "offset": both(1), "share": both(100)}
	wants(t, "the root zone", drawnAs(r, Slant, near), "cx=160 cy=86 r=82")
	wants(t, "the wetted circle", drawnAs(r, Back, near), "cx=180.5 cy=86 r=41")
	far := map[string][2]float64{"wetted": both(4), "root": both(2), "offset": both(20), "share": both(0)}
	wants(t, "the root zone", drawnAs(r, Slant, far), "cx=30 cy=86 r=26")
	wants(t, "the wetted circle", drawnAs(r, Back, far), "cx=290 cy=86 r=26")
	wants(t, "a range of circles", drawnAs(r, Ring, map[string][2]float64{"wetted": {4, 8}, "root": both(4),
		"offset": both(0), "share": both(100)}), "cx=160 cy=86 r=61.5 stroke-width=41")
}

// Two feeds of 0.5 under a cap of 1 are half as high as it, on the first day and the last.
func TestCalendar(t *testing.T) {
	r := Of("feed-schedule")
	first, last := 20923.0, 21014.0 // Apr 15 and Jul 15, 2027
	two := map[string][2]float64{"first": both(first), "last": both(last), "last-date": both(last), "feeds": both(2),
		"each": both(0.5), "limit": both(1), "date-1": both(first), "date-2": both(last)}
	wants(t, "the feeds", drawnAs(r, Spot, two), "x=13.3 y=102 width=12 height=48", "x=294.7 y=102 width=12 height=48")
	wants(t, "the cap", drawnAs(r, Limit, two), "x1=0 y1=54 x2=320 y2=54", "x1=0 y1=54 x2=320 y2=54")
	var months []string
	work := r.Work(known(r, two))
	for i := range r.Shapes {
		if s := &r.Shapes[i]; s.Month && s.Drawn(work) {
			months = append(months, time.Month(MonthOf(work[s.Text])+1).String())
		}
	}
	wants(t, "the months", months, "May", "June", "July")
}

// The point of 10 in at 2 lb an inch is on the line to 20 in and 40 lb, under a top of 50.
func TestWater(t *testing.T) {
	r := Of("water-nitrogen")
	ten := map[string][2]float64{"water": both(10), "per-inch": both(2), "nitrogen": both(20)}
	wants(t, "the point", drawnAs(r, Spot, ten), "cx=178 cy=143.2 r=5")
	wants(t, "the wedge", drawnAs(r, Band, ten))
	wants(t, "the wedge", drawnAs(r, Band, map[string][2]float64{"water": both(10), "per-inch": {1, 2},
		"nitrogen": {10, 20}}), "points=44 184 312 143.2 312 102.4")
}

func TestForms(t *testing.T) {
	r := Of("material-compare")
	values := map[string][2]float64{"first-nitrate": both(25), "first-ammonium": both(25), "first-urea": both(50),
		"first-lime": both(40), "second-nitrate": both(100), "second-ammonium": both(0), "second-urea": both(0),
		"second-lime": both(0), "second-liming": both(20)}
	wants(t, "nitrate", drawnAs(r, Level, values), "x=1 y=47 width=79.5 height=13", "x=1 y=113 width=318 height=13")
	wants(t, "urea", drawnAs(r, Dots, values), "x=160 y=47 width=159 height=13")
	wants(t, "lime", drawnAs(r, Cross, values), "x=1 y=79 width=159 height=8")
	wants(t, "what works like lime", drawnAs(r, Edge, values), "x=160 y=145 width=79.5 height=8")
}

// Whatever the numbers, what is drawn has a place, and without numbers nothing is.
func TestNothingIsDrawnWithoutAPlace(t *testing.T) {
	for _, r := range rules {
		for _, v := range []float64{0, 1e-300, 1, 1e9, 1e300, math.Inf(1), math.NaN(), -5} {
			for _, w := range []float64{v, 0, 1e300} {
				numbers := make([]Number, len(r.Takes))
				for i := range numbers {
					numbers[i] = Number{Low: min(v, w), High: max(v, w), There: true, Sure: i%2 == 0}
				}
				work := r.Work(numbers)
				for i := range r.Shapes {
					s := &r.Shapes[i]
					for j := range s.Moves {
						if s.Drawn(work) && strings.ContainsAny(s.Moves[j].Value(work), "NI") {
							t.Errorf("%s of %v and %v: %s is %s", r.Of, v, w, s.Moves[j].Name, s.Moves[j].Value(work))
						}
					}
				}
			}
		}
		work := r.Work(make([]Number, len(r.Takes)))
		for i := range r.Shapes {
			if r.Shapes[i].Drawn(work) {
				t.Errorf("%s draws a %s of no numbers", r.Of, r.Shapes[i].Tag)
			}
		}
	}
}

func TestRound(t *testing.T) {
	for v, want := range map[float64]float64{0: 1, 1: 1, 1.01: 2, 2: 2, 4.9: 5, 5.1: 10, 99: 100, 0.03: 0.05, 2e-7: 2e-7} {
		if got := round(v); got != want {
			t.Errorf("%v is rounded to %v, want %v", v, got, want)
		}
	}
	for _, v := range []float64{-1, math.NaN(), math.Inf(1)} {
		if got := round(v); !math.IsNaN(got) {
			t.Errorf("%v is rounded to %v", v, got)
		}
	}
}

func TestMonth(t *testing.T) {
	day := func(text string) float64 {
		at, err := time.Parse(time.DateOnly, text)
		if err != nil {
			t.Fatal(err)
		}
		return float64(at.Unix() / secondsInDay)
	}
	for _, c := range []struct {
		from string
		more float64
		want string
	}{{"2027-04-15", 1, "2027-05-01"}, {"2027-12-31", 1, "2028-01-01"}, {"2028-01-31", 13, "2029-02-01"}} {
		if got := month(day(c.from), c.more); got != day(c.want) {
			t.Errorf("%v months after that of %s: %v, want %s", c.more, c.from, date(got), c.want)
		}
	}
	if !math.IsNaN(month(1e9, 1)) || !math.IsNaN(month(math.NaN(), 1)) {
		t.Error("a day that is none has a month")
	}
}

func TestCoordinate(t *testing.T) {
	for v, want := range map[float64]string{0: "0", -0.04: "0", 1.05: "1.1", 12.34: "12.3", 318: "318", -2.5: "-2.5"} {
		if got := Coordinate(v); got != want {
			t.Errorf("%v is written %s, want %s", v, got, want)
		}
	}
}

// What a script reads has each rule whole.
func TestJSON(t *testing.T) {
	var read map[string][2][]json.RawMessage
	if err := json.Unmarshal(JSON(), &read); err != nil {
		t.Fatal(err)
	}
	for _, r := range rules {
		if got := read[r.Of]; len(got[0]) != len(r.Steps) || len(got[1]) != len(r.Shapes) {
			t.Errorf("%s has %d steps and %d shapes in JSON, want %d and %d", r.Of, len(got[0]), len(got[1]), len(r.Steps),
				len(r.Shapes))
		}
	}
}
