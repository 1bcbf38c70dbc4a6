package practice_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

const (
	cardsOfEach = 1000 // that have an answer
	mostDrawn   = 40   // times as many are drawn at most to find them
	asked       = 3    // significant digits
	mostShare   = 0.05 // of all slips, those that a card cannot tell from the right answer or from another slip
)

// A number that a learner gives tells which slip it came from, on nearly every card. What cannot be told apart is
// counted: marking then says each slip that it may be, and never a wrong one for sure.
func TestSlipsOnRandomCards(t *testing.T) {
	var all, unclear int
	for _, s := range nitrogen.Shelf() {
		r := rand.New(rand.NewPCG(1, uint64(len(s.Name))))
		total, told := 0, map[string]int{}
		for _, g := range s.Givens {
			if _, known := inOther[g.Name]; g.Else.Unit != "" && !known {
				t.Fatalf("%s, %s: say in inOther how much is as much as 1 %s", s.Name, g.Name, g.Unit)
			}
		}
		g := &sheet.Graph{Slips: true}
		use := g.Add(s.Name, s, nil)
		if err := g.Close(); err != nil {
			t.Fatal(err)
		}
		cards := 0
		for drawn := 0; cards < cardsOfEach && drawn < mostDrawn*cardsOfEach; drawn++ {
			cells := make([]float64, g.Program.Cells)
			for given, entry := range randomEntries(s, r) {
				use.Set(cells, given, entry.Value)
				use.SetKind(cells, given, entry)
			}
			g.Program.Run(cells)
			o := sheet.Outcome{Use: use, Cells: cells}
			if o.Err() != nil {
				continue // these numbers have no answer, and no card has them
			}
			cards++
			slips := map[string]float64{}
			for _, slip := range o.Slips() {
				slips[slip.Name] = o.Slip(slip)
			}
			for _, slip := range o.Slips() {
				if !o.There(slip.Answer) {
					continue
				}
				total++
				if !apart(s, slip, slips, o.Value(slip.Answer).Value) {
					told[slip.Name]++
				}
			}
		}
		count := 0
		for _, n := range told {
			count += n
		}
		if cards < cardsOfEach {
			t.Errorf("%s: only %d random cards have an answer", s.Name, cards)
		}
		t.Logf("%-20s %6d slips of cards, %5.2f %% not told apart %v", s.Name, total,
			100*float64(count)/float64(max(1, total)), told)
		all += total
		unclear += count
	}
	t.Logf("all: %.2f %%", 100*float64(unclear)/float64(all))
	if float64(unclear) > mostShare*float64(all) {
		t.Errorf("%d of %d slips of cards are not told apart, at most %v %% may be", unclear, all, mostShare*100)
	}
}

// apart says whether what a slip gives is neither the right answer nor what another slip gives, to the digits asked.
func apart(s *sheet.Sheet, slip *sheet.Slip, values map[string]float64, right float64) bool {
	own := unit.Digits(values[slip.Name], asked, 0)
	if own == unit.Digits(right, asked, 0) {
		return false
	}
	for _, other := range s.Slips {
		value, open := values[other.Name]
		if open && other != slip && other.Answer == slip.Answer && unit.Digits(value, asked, 0) == own {
			return false
		}
	}
	return true
}

// inOther is about how much of a given's second kind of quantity is as much as 1 of its first: a need that was fed is
// near to one that is taken up, 0.1 gal weighs about a pound, and a ton is about 180 gal.
var inOther = map[string]float64{
	"need": 1, "amount": 0.1,
	"price": 1.0 / 180, "first-price": 1.0 / 180, "second-price": 1.0 / 180, "third-price": 1.0 / 180,
}

// randomEntries are round numbers around those that are usual, a third of them of the second kind where there is one.
func randomEntries(s *sheet.Sheet, r *rand.Rand) map[string]sheet.Entry {
	entries := map[string]sheet.Entry{}
	for _, g := range s.Givens {
		switch {
		case len(g.Choices) > 0:
			entries[g.Name] = sheet.Entry{Value: float64(r.IntN(len(g.Choices)))}
		case g.Optional && r.IntN(2) == 0:
		case g.Date:
			entries[g.Name] = sheet.Entry{Value: g.Typical + float64(r.IntN(60))}
		case g.Else.Unit != "" && r.IntN(3) == 0:
			value := rounded(inOther[g.Name] * g.Typical * (0.4 + 1.4*r.Float64()))
			entries[g.Name] = sheet.Entry{Value: min(max(value, g.Else.Low), g.Else.High), Other: true}
		default:
			value := rounded(g.Typical * (0.4 + 1.4*r.Float64()))
			entries[g.Name] = sheet.Entry{Value: min(max(value, g.Low), g.High)}
		}
	}
	return entries
}

// rounded keeps two significant digits.
func rounded(v float64) float64 {
	if v == 0 {
		return 0
	}
	place := math.Pow10(int(math.Floor(math.Log10(math.Abs(v)))) - 1)
	return math.Round(v/place) * place
}

// The keys of a card have what marking finds: each number of a slip that is told apart is marked as that slip.
func TestKeyAndMarkAgree(t *testing.T) {
	e := soil()
	set, err := practice.NewSet(e, "en")
	if err != nil {
		t.Fatal(err)
	}
	for number := 1; number <= e.Distinct(); number++ {
		c, err := set.Card(number)
		if err != nil {
			t.Fatal(err)
		}
		if m := c.Mark(hear(t, c, "en", c.Key(c.Parts()[0])))[0]; m.Verdict != practice.Right {
			t.Errorf("card %d: its key %s is marked %d", number, c.Key(c.Parts()[0]), m.Verdict)
		}
		for _, key := range c.SlipKeys(c.Parts()[0]) {
			m := c.Mark(hear(t, c, "en", key.Text+" lb/ac"))[0]
			found := false
			for _, s := range m.Slips {
				found = found || s == key.Slip
			}
			if !found {
				t.Errorf("card %d: %s of slip %s is marked %d %v", number, key.Text, key.Slip.Name, m.Verdict, m.Slips)
			}
		}
	}
}
