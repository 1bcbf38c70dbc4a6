package practice_test

import (
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
)

// soil is an exercise on a report: nitrate from 4 to 24 ppm and one of three depths.
func soil() *practice.Exercise {
	return &practice.Exercise{
		Seed: "test/soil",
		Uses: []*practice.Use{{
			Name: "soil", Sheet: nitrogen.SoilNitrogen,
			Varied: []practice.Varied{
				varied(nitrogen.SoilNitrogen, "nitrate", numbers(4, 24, " ppm NO3-N")...),
				varied(nitrogen.SoilNitrogen, "depth", "12 in", "18 in", "24 in"),
			},
		}},
		Asks: []practice.Ask{{Use: "soil", Result: "nitrogen", Digits: 3}},
	}
}

// No card comes twice before all have come, and each value of a given comes equally often.
func TestCardsAreDistinct(t *testing.T) {
	for _, seed := range []string{"", "a", "workshops/report/soil", "courses/feeding/soil"} {
		e := soil()
		e.Seed = seed
		d := e.Deal()
		if d.Of != 21*3 {
			t.Fatalf("there are %d cards, want 63", d.Of)
		}
		seen := map[[2]int]bool{}
		times := [2]map[int]int{{}, {}}
		for card := 1; card <= d.Of; card++ {
			picks := d.Picks(card)
			seen[[2]int{picks[0], picks[1]}] = true
			for i, pick := range picks {
				times[i][pick]++
			}
		}
		if len(seen) != d.Of {
			t.Errorf("seed %q: %d of %d cards are different", seed, len(seen), d.Of)
		}
		for i, count := range d.Counts {
			for pick := range count {
				if times[i][pick] != d.Of/count {
					t.Errorf("seed %q: value %d of given %d comes %d times, want %d", seed, pick, i, times[i][pick], d.Of/count)
				}
			}
		}
	}
}

// Cards follow from the seed: two exercises of the same shape do not have the same numbers card for card.
func TestSeedsDiffer(t *testing.T) {
	one, other := soil(), soil()
	other.Seed = "test/other"
	a, b, same := one.Deal(), other.Deal(), 0
	for card := 1; card <= 30; card++ {
		p, q := a.Picks(card), b.Picks(card)
		if p[0] == q[0] && p[1] == q[1] {
			same++
		}
	}
	if same == 30 {
		t.Error("two seeds deal the same cards")
	}
}

func varied(s *sheet.Sheet, given string, texts ...string) practice.Varied {
	v := practice.Varied{Given: given}
	for _, text := range texts {
		entry, err := s.FindGiven(given).Read(text)
		if err != nil {
			panic(err)
		}
		v.Values = append(v.Values, entry)
	}
	return v
}

// The lines of a report that nobody asks about differ from card to card: every value comes before one comes again, and
// no two lines go up and down together.
func TestLinesOfAReport(t *testing.T) {
	e := soil()
	values := []string{"6.8 units", "7.0 units", "7.2 units", "7.4 units", "7.6 units", "7.8 units", "8.0 units"}
	e.Report = []practice.Line{
		{Name: "ph", Values: values}, {Name: "nitrate", Given: practice.Piece{Use: e.Uses[0].Name, Given: "nitrate"}},
		{Name: "salts", Values: values},
	}
	set, err := practice.NewSet(e, "en")
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]int{}
	for number := 1; number <= len(values); number++ {
		card, err := set.Card(number)
		if err != nil {
			t.Fatal(err)
		}
		said[card.LineText(e.Report[0])]++
		if got, want := card.LineText(e.Report[1]), card.Given(e.Uses[0].Name, "nitrate"); got != want {
			t.Errorf("card %d: the line of a given says %q, and the card %q", number, got, want)
		}
	}
	if len(said) != len(values) {
		t.Errorf("of %d values there came %v", len(values), said)
	}
	if e.LineDeal(e.Report[0]).Stride == e.LineDeal(e.Report[2]).Stride {
		t.Error("two lines go up and down together")
	}
}
