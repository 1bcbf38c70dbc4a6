package nitrogen_test

import (
	"errors"
	"flag"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

var seed = flag.Uint64("seed", 1, "where the random numbers of the property tests start")

// random starts the random numbers of a test and logs how to get the same ones again.
func random(t *testing.T) *rand.Rand {
	t.Helper()
	t.Logf("random numbers from -seed %d", *seed)
	return rand.New(rand.NewPCG(*seed, 0))
}

// entered reads what a grower would write, "nitrate=12 ppm NO3-N", as it is written: gallons stay gallons, and a range
// a range.
func entered(t testing.TB, s *sheet.Sheet, givens ...string) map[string]sheet.Entry {
	t.Helper()
	entries := map[string]sheet.Entry{}
	for _, text := range givens {
		name, quantity, _ := strings.Cut(text, "=")
		given := s.FindGiven(name)
		if given == nil {
			t.Fatalf("%s has no given %q", s.Name, name)
		}
		entry, err := given.Read(quantity)
		if err != nil {
			t.Fatalf("%s, %s: %v", s.Name, text, err)
		}
		entries[name] = entry
	}
	return entries
}

// write reads what a grower would write into values in the givens' own units.
func write(t testing.TB, s *sheet.Sheet, givens ...string) map[string]float64 {
	t.Helper()
	values := map[string]float64{}
	for name, entry := range entered(t, s, givens...) {
		values[name] = entry.Value
	}
	return values
}

var benches = map[*sheet.Sheet]*sheet.Bench{}

// evaluate does as Sheet.Evaluate, but makes each sheet ready once. The outcome is a copy, to outlast the next one.
func evaluate(s *sheet.Sheet, values map[string]float64) (sheet.Outcome, error) {
	if benches[s] == nil {
		benches[s] = sheet.NewBench(s)
	}
	entries := map[string]sheet.Entry{}
	for name, value := range values {
		entries[name] = sheet.Entry{Value: value, High: value}
	}
	o, err := benches[s].Work(entries)
	o.Cells, o.High = slices.Clone(o.Cells), slices.Clone(o.High)
	return o, err
}

// work evaluates a sheet that must take the values.
func work(t testing.TB, s *sheet.Sheet, values map[string]float64) sheet.Outcome {
	t.Helper()
	o, err := evaluate(s, values)
	if err != nil {
		t.Fatalf("%s of %v: %v", s.Name, values, err)
	}
	return o
}

// enter works a sheet from what a grower would write, as it is written.
func enter(t testing.TB, s *sheet.Sheet, givens ...string) sheet.Outcome {
	t.Helper()
	o, err := sheet.NewBench(s).Work(entered(t, s, givens...))
	if err != nil {
		t.Fatalf("%s of %q: %v", s.Name, givens, err)
	}
	return o
}

// refusedWith wants a sheet to give no answer, and to say why in these sentences.
func refusedWith(t testing.TB, s *sheet.Sheet, givens []string, want ...string) {
	t.Helper()
	_, err := sheet.NewBench(s).Work(entered(t, s, givens...))
	var refused *sheet.Refused
	if !errors.As(err, &refused) || !slices.Equal(refused.Sentences, want) {
		t.Errorf("%s of %q: %v, want %q", s.Name, givens, err, want)
	}
}

// answer works a sheet from what a grower would write and gives one answer in the unit asked for, which leaves its
// account unsaid.
func answer(t testing.TB, s *sheet.Sheet, name, in string, givens ...string) float64 {
	t.Helper()
	value := enter(t, s, givens...).Value(name)
	q, err := value.In(unit.MustParse(strings.TrimSpace(in + " " + value.Unit.Account())))
	if err != nil {
		t.Fatalf("%s, %s: %v", s.Name, name, err)
	}
	return q.Value
}

// counted are the givens that are whole numbers.
var counted = map[string]bool{"leaf": true}

// draw fills every given of a sheet with a number from the whole of its range; an optional one is left out half of
// the time.
func draw(r *rand.Rand, s *sheet.Sheet) map[string]float64 {
	values := map[string]float64{}
	for _, g := range s.Givens {
		if g.Optional && r.IntN(2) == 0 {
			continue
		}
		values[g.Name] = within(r, g)
	}
	return values
}

// within is a random value of a given: an end of its range now and then, otherwise anything between, half of the time
// nearer the lower end, where the numbers of real orchards lie.
func within(r *rand.Rand, g *sheet.Given) float64 {
	switch {
	case len(g.Choices) > 0:
		return float64(r.IntN(len(g.Choices)))
	case g.Date: // a day of one year, since two days of one calculation lie in one season
		return g.Typical + float64(r.IntN(365))
	case r.IntN(20) == 0:
		return g.Low
	case r.IntN(20) == 0:
		return g.High
	}
	part := r.Float64()
	if r.IntN(2) == 0 {
		part = math.Pow(part, 6)
	}
	value := g.Low + part*(g.High-g.Low)
	if counted[g.Name] {
		return math.Round(value)
	}
	return value
}

// drawTaken draws until the sheet takes the values, and works them.
func drawTaken(t testing.TB, r *rand.Rand, s *sheet.Sheet) (map[string]float64, sheet.Outcome) {
	t.Helper()
	for range 1000 {
		values := draw(r, s)
		o, err := evaluate(s, values)
		var refused *sheet.Refused
		if errors.As(err, &refused) {
			continue
		}
		if err != nil {
			t.Fatalf("%s of %v: %v", s.Name, values, err)
		}
		return values, o
	}
	t.Fatalf("%s refuses everything", s.Name)
	return nil, sheet.Outcome{}
}

// with is a copy of values with one of them changed.
func with(values map[string]float64, name string, value float64) map[string]float64 {
	changed := maps.Clone(values)
	changed[name] = value
	return changed
}
