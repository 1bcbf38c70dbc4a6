package sheet_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// feeds splits a season into feeds that a cap limits: the count goes up in steps, and the size of one feed goes up and
// down.
var feeds = sheet.New("feeds", func(s *sheet.Sheet) {
	season := s.Given("season", "oz N/tree", sheet.Field{Label: "Season", Typical: 4, Low: 0.1, High: 20})
	most := s.Given("most", "oz N/tree", sheet.Field{Label: "Most in one feed", Typical: 1, Low: 0.1, High: 10})
	trees := s.Given("trees", "trees/ac", sheet.Field{Label: "Trees", Typical: 110, Low: 1, High: 3000})
	count := s.Answer("count", "", season.Over(most).RoundUp(), sheet.Says{})
	s.Answer("each", "oz N/tree", season.Over(count), sheet.Says{})
	s.Answer("acre", "lb N/ac", season.Times(trees), sheet.Says{})
	s.Answer("fourth", "oz N/tree", season.Over(count), sheet.Says{When: count.AtLeast(s.Number(4))})
	s.Say(sheet.Note, count.More(s.Number(3)), "More than three feeds: {count}.")
	s.Say(sheet.Note, count.AtLeast(s.Number(1)), "Some feed.")
	s.Refuse(count.More(s.Number(50)), "That is {count} feeds.")
})

func read(t testing.TB, s *sheet.Sheet, givens ...string) map[string]sheet.Entry {
	t.Helper()
	entries := map[string]sheet.Entry{}
	for _, text := range givens {
		name, value, _ := strings.Cut(text, "=")
		e, err := s.FindGiven(name).Read(value)
		if err != nil {
			t.Fatal(err)
		}
		entries[name] = e
	}
	return entries
}

func workedOut(t testing.TB, s *sheet.Sheet, givens ...string) sheet.Outcome {
	t.Helper()
	o, err := sheet.NewBench(s).Work(read(t, s, givens...))
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func TestRangesGiveRanges(t *testing.T) {
	o := workedOut(t, feeds, "season=3 to 4 oz N/tree", "most=1 oz N/tree", "trees=110 trees/ac")
	for name, want := range map[string]string{
		"season": "3 to 4 oz N/tree", "most": "1 oz N/tree", "count": "3 to 4", "each": "0.75 to 1 oz N/tree",
		"acre": "20.6 to 27.5 lb N/ac", "fourth": "0.75 to 1 oz N/tree",
	} {
		if got := o.Text(name); got != want {
			t.Errorf("%s is %s, want %s", name, got, want)
		}
	}
	want := []sheet.Said{
		{Signal: sheet.Note, Text: "For some of these numbers: More than three feeds: 4."},
		{Signal: sheet.Note, Text: "Some feed."},
	}
	if said := o.Said(); !slices.Equal(said, want) {
		t.Errorf("said %q, want %q", said, want)
	}
	work := []string{
		"count = rounded up: (season ÷ most); at least rounded up: (3 oz N/tree ÷ 1 oz N/tree) = 3; " +
			"at most rounded up: (4 oz N/tree ÷ 1 oz N/tree) = 4",
		"each = season ÷ count; at least 3 oz N/tree ÷ 4 = 0.75 oz N/tree; at most 3 oz N/tree ÷ 3 = 1 oz N/tree",
		"acre = season × trees ÷ 16; at least 3 oz N/tree × 110 trees/ac ÷ 16 = 20.6 lb N/ac; " +
			"at most 4 oz N/tree × 110 trees/ac ÷ 16 = 27.5 lb N/ac",
	}
	if got := o.Work()[:len(work)]; !slices.Equal(got, work) {
		t.Errorf("the work is %q, want in it %q", got, work)
	}
}

// A result that is left out at one end has only the values that it has where it is there.
func TestLeftOutResultsHaveNoValue(t *testing.T) {
	few := workedOut(t, feeds, "season=2 oz N/tree", "most=1 oz N/tree", "trees=110 trees/ac")
	for _, r := range few.Answers() {
		if r.Name == "fourth" {
			t.Errorf("two feeds have a fourth of %s", few.Text("fourth"))
		}
	}
	g := &sheet.Graph{}
	g.Add("a", feeds, nil)
	if err := g.CheckLink(feeds, "season", sheet.Link{Use: "a", Name: "fourth"}); err == nil {
		t.Error("a value that may be left out can be taken")
	}
}

func TestRefusedSomewhereIsRefused(t *testing.T) {
	_, err := sheet.NewBench(feeds).Work(read(t, feeds,
		"season=3 to 20 oz N/tree", "most=0.1 oz N/tree", "trees=110 trees/ac"))
	if err == nil || err.Error() != "For some of these numbers there is, or may be, no answer, so "+
		"type a narrower range or one number: "+
		"That is 51 to 200 feeds." {
		t.Errorf("a range that reaches a refusal gives %v", err)
	}
}

// Brute force: no combination of numbers in the ranges lies outside the range that is said, and the ends that are said
// are met. For the size of one feed, which goes up and down, the ends may lie a step of the walk away.
func TestRangesAgainstBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	bench, one := sheet.NewBench(feeds), sheet.NewBench(feeds)
	for range 60 {
		box := map[string]sheet.Entry{}
		for _, name := range []string{"season", "most", "trees"} {
			g := feeds.FindGiven(name)
			a, b := draw(r, g), draw(r, g)
			box[name] = sheet.Entry{Value: min(a, b), High: max(a, b)}
			if name == "most" {
				box[name] = sheet.Entry{Value: max(1, a), High: max(1, a)}
			}
		}
		o, err := bench.Work(box)
		if err != nil {
			t.Fatal(err)
		}
		within(t, r, one, box, o)
	}
}

func draw(r *rand.Rand, g *sheet.Given) float64 { return g.Low + (g.High-g.Low)*r.Float64() }

// within holds random points of a box against the ranges that were worked for it.
func within(t *testing.T, r *rand.Rand, bench *sheet.Bench, box map[string]sheet.Entry, o sheet.Outcome) {
	t.Helper()
	least, greatest := map[string]float64{}, map[string]float64{}
	for i := range 3000 {
		point := map[string]sheet.Entry{}
		for name, e := range box {
			at := [...]float64{0, 1, r.Float64(), r.Float64()}[i%4] // the corners too
			if i%4 < 2 && r.IntN(2) == 0 {
				at = 1 - at
			}
			v := e.Value + at*(e.High-e.Value)
			point[name] = sheet.Entry{Value: v, High: v}
		}
		p, err := bench.Work(point)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range []string{"count", "each", "acre"} {
			v := p.Value(name).Value
			if i == 0 {
				least[name], greatest[name] = v, v
			}
			least[name], greatest[name] = min(least[name], v), max(greatest[name], v)
		}
	}
	for name, slack := range map[string]float64{"count": 0, "each": 0.1, "acre": 0} {
		said := o.Range(name)
		near := slack * said.High
		if said.Low > least[name]+near+1e-12 || said.High < greatest[name]-near-1e-12 {
			t.Errorf("%v: %s is said to be %v, and %v to %v was found", box, name, said, least[name], greatest[name])
		}
		off := max(math.Abs(said.Low-least[name]), math.Abs(said.High-greatest[name]))
		if name != "each" && off > 1e-9*said.High {
			t.Errorf("%v: %s ends at %v, and %v to %v was found", box, name, said, least[name], greatest[name])
		}
	}
}

func TestBelowDetectionIsARange(t *testing.T) {
	s := sheet.New("layer", func(s *sheet.Sheet) {
		nitrate := s.Given("nitrate", "ppm NO3-N", sheet.Field{Label: "Nitrate", Typical: 12, High: 200, Lab: true})
		s.Answer("twice", "ppm NO3-N", nitrate.Times(s.Number(2)), sheet.Says{})
	})
	e, err := s.FindGiven("nitrate").Read("<5 ppm NO3-N")
	if err != nil {
		t.Fatal(err)
	}
	want := "Nitrate: the lab found less than it can measure, so it may be anything from 0 to 5 ppm NO3-N. " +
		"The answers are for that range."
	if got := s.FindGiven("nitrate").Treated(e); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if o := workedOut(t, s, "nitrate=<5 ppm NO3-N"); o.Text("twice") != "0 to 10 ppm NO3-N" {
		t.Errorf("twice <5 ppm is %s", o.Text("twice"))
	}
}
