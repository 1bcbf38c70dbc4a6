package practice_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
)

func numbers(from, to int, unit string) []string {
	var list []string
	for n := from; n <= to; n++ {
		list = append(list, fmt.Sprint(n)+unit)
	}
	return list
}

func entry(s *sheet.Sheet, given, text string) sheet.Entry { return varied(s, given, text).Values[0] }

// one is an exercise of one calculation with the same numbers on its only card.
func one(s *sheet.Sheet, result string, digits int, givens ...string) *practice.Exercise {
	u := &practice.Use{Name: "only", Sheet: s, Fixed: map[string]sheet.Entry{}}
	for i := 0; i < len(givens); i += 2 {
		u.Fixed[givens[i]] = entry(s, givens[i], givens[i+1])
	}
	return &practice.Exercise{Seed: "test", Uses: []*practice.Use{u},
		Asks: []practice.Ask{{Use: "only", Result: result, Digits: digits}}}
}

func deal(t *testing.T, e *practice.Exercise, card int) *practice.Card {
	t.Helper()
	set, err := practice.NewSet(e, "en")
	if err != nil {
		t.Fatal(err)
	}
	c, err := set.Card(card)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func hear(t *testing.T, c *practice.Card, language string, texts ...string) []practice.Heard {
	t.Helper()
	var list []practice.Heard
	for i, text := range texts {
		h, err := c.Parts()[i].Read(text, language)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, h)
	}
	return list
}

// The right answer, 48 lb N/ac, is the field rule of 2 lb an acre for each ppm and 6 in (Montana State University,
// MontGuide on soil tests; 12 ppm × 2 × 12 in ÷ 6 in). 1 lb/ac is 1.12085 kg/ha (NIST Handbook 44, appendix C).
// 4.4268 is 62.0049/14.0067, NO3 over N (IUPAC/CIAAW 2021).
func TestMark(t *testing.T) {
	soil := one(nitrogen.SoilNitrogen, "nitrogen", 3, "nitrate", "12 ppm NO3-N", "depth", "12 in")
	for _, c := range []struct {
		text    string
		verdict practice.Verdict
		slips   []string
	}{
		{"48", practice.UnitMissing, nil},
		{"48 lb N/ac", practice.Right, nil},
		{"48 lb/ac", practice.Right, nil},
		{"48.0 pounds per acre", practice.Right, nil},
		{"53.8 kg/ha", practice.Right, nil},
		{"48 lb", practice.UnitWrong, nil},
		{"48 kg/ha", practice.UnitWrong, nil},
		{"48 bushels", practice.UnitWrong, nil},
		{"48 lb/tree", practice.UnitWrong, nil},
		{"48.04 lb/ac", practice.Right, nil},
		{"48.3 lb/ac", practice.Rounded, nil},
		{"48.3 lb", practice.UnitWrong, nil},
		{"212 lb/ac", practice.Slipped, []string{"nitrate-for-nitrogen"}}, // 48 × 4.4268 = 212.5 without the half
		{"480 lb/ac", practice.Shifted, nil},
		{"0.48 lb/ac", practice.Shifted, nil},
		{"77 lb/ac", practice.Unknown, nil},
		{"-48 lb/ac", practice.Unknown, nil},
	} {
		card := deal(t, soil, 1)
		got := card.Mark(hear(t, card, "en", c.text))[0]
		var slips []string
		for _, s := range got.Slips {
			slips = append(slips, s.Name)
		}
		if got.Verdict != c.verdict || !slices.Equal(slips, c.slips) {
			t.Errorf("%q is marked %d %v, want %d %v", c.text, got.Verdict, slips, c.verdict, c.slips)
		}
	}
}

// Each part is marked as an answer is, and a wrong first part does not cost those that follow. Season: 40 lb fed
// less 48 lb in the soil would buy none, so the report is of 6 ppm: 24 lb in the soil (as above), and 16 lb to buy.
func TestAWrongFirstPartIsCarriedOn(t *testing.T) {
	soil := &practice.Use{Name: "soil", Sheet: nitrogen.SoilNitrogen, Fixed: map[string]sheet.Entry{
		"nitrate": entry(nitrogen.SoilNitrogen, "nitrate", "6 ppm NO3-N"),
		"depth":   entry(nitrogen.SoilNitrogen, "depth", "12 in"),
	}}
	season := &practice.Use{Name: "season", Sheet: nitrogen.SeasonBudget, Links: map[string]sheet.Link{
		"soil": {Use: "soil", Name: "nitrogen"},
	}, Fixed: map[string]sheet.Entry{
		"need":  entry(nitrogen.SeasonBudget, "need", "40 lb N/ac fed"),
		"water": entry(nitrogen.SeasonBudget, "water", "0 lb N/ac fed"),
	}}
	e := &practice.Exercise{Seed: "test", Uses: []*practice.Use{soil, season}, Asks: []practice.Ask{
		{Use: "soil", Result: "nitrogen", Digits: 3}, {Use: "season", Result: "apply", Digits: 3},
	}}
	for _, c := range []struct {
		first, second string
		want          [2]practice.Verdict
	}{
		{"24 lb/ac", "16 lb/ac", [2]practice.Verdict{practice.Right, practice.Right}},
		{"12 lb/ac", "28 lb/ac", [2]practice.Verdict{practice.Slipped, practice.Carried}},
		{"12 lb/ac", "16 lb/ac", [2]practice.Verdict{practice.Slipped, practice.Right}},
		{"", "16 lb/ac", [2]practice.Verdict{practice.Unknown, practice.Right}},
		{"20 lb/ac", "20 lb/ac", [2]practice.Verdict{practice.Unknown, practice.Carried}},
		{"24 lb/ac", "40 lb/ac", [2]practice.Verdict{practice.Right, practice.Slipped}},
	} {
		card := deal(t, e, 1)
		marks := card.Mark(hear(t, card, "en", c.first, c.second))
		if got := [2]practice.Verdict{marks[0].Verdict, marks[1].Verdict}; got != c.want {
			t.Errorf("%q then %q is marked %v, want %v", c.first, c.second, got, c.want)
		}
	}
}

// Where an answer has no unit none is missed, and a decimal comma is one in Spanish.
func TestReading(t *testing.T) {
	count := one(nitrogen.TreeDensity, "trees", 3, "pattern", "rectangle", "row", "22 ft", "tree", "18 ft")
	trees := deal(t, count, 1).Parts()[0]
	for text, want := range map[string]practice.Heard{
		"110":          {Given: true, Answer: 110, Bare: 110},
		"110 trees/ac": {Given: true, Answer: 110, Bare: 110, Told: practice.FitUnit},
		"1/2":          {Given: true, Answer: 0.5, Bare: 0.5},
		"1,200":        {Given: true, Answer: 1200, Bare: 1200},
		"  ":           {},
		"12 wheels":    {Given: true, Answer: 12, Bare: 12, Told: practice.OtherUnit, Unit: "wheels"},
	} {
		if got, err := trees.Read(text, "en"); err != nil || got != want {
			t.Errorf("%q is read as %+v, %v; want %+v", text, got, err, want)
		}
	}
	// Of soil mg/kg is ppm, and of water mg/L is (calc/unit): a report in either is answered as it is printed.
	basis := deal(t, one(nitrogen.NitrateBasis, "nitrogen", 3, "of", "water", "reported", "69 mg/L NO3"), 1).Parts()[0]
	for _, text := range []string{"15.6 mg/L NO3-N", "15.6 mg/kg nitrate-N", "15.6 mg/L", "15.6 MG per L"} {
		if got, err := basis.Read(text, "en"); err != nil || got.Told != practice.FitUnit {
			t.Errorf("%q is read as %+v, %v; want a unit that fits", text, got, err)
		}
	}
	for _, text := range []string{"15.6 mg/L NO3", "15.6 mg/ft", "15.6 g/L"} {
		if got, err := basis.Read(text, "en"); err != nil || got.Told != practice.OtherUnit {
			t.Errorf("%q is read as %+v, %v; want a unit that does not fit", text, got, err)
		}
	}
	if got, err := trees.Read("12,5", "es"); err != nil || got.Answer != 12.5 {
		t.Errorf("12,5 in Spanish is %v, %v", got, err)
	}
	endless := strings.Repeat("9", 400) // more than a float64 holds
	for _, text := range []string{"abc", "1e999", "3 to 4", "99999999999999999", "lb/ac", "12,5", endless,
		endless + "/" + endless, "1/" + endless} {
		if got, err := trees.Read(text, "en"); err == nil {
			t.Errorf("%q is read as %+v", text, got)
		}
	}
}

// A slip that cannot be made with a card's numbers is neither found in an answer nor listed in the key. With 35 lb N/ac
// taken up and 18 lb credited, adding the 30 % that is lost gives 35 × 1.3 − 18 = 27.5 lb N/ac. Of a need that was fed
// no loss is left to add, and that number is not known.
func TestASlipIsMarkedOnlyWhereItCanBeMade(t *testing.T) {
	for need, want := range map[string]practice.Verdict{
		"35 lb N/ac taken up": practice.Slipped, "35 lb N/ac fed": practice.Unknown,
	} {
		card := deal(t, one(nitrogen.SeasonBudget, "apply", 3, "need", need, "soil", "10 lb N/ac", "water", "8 lb N/ac",
			"efficiency", "70 %"), 1)
		got := card.Mark(hear(t, card, "en", "27.5 lb N/ac"))[0]
		if got.Verdict != want || want == practice.Slipped && (len(got.Slips) != 1 || got.Slips[0].Name != "loss-added") {
			t.Errorf("a need of %s: 27.5 lb is marked %d %v, want %d", need, got.Verdict, got.Slips, want)
		}
		keyed := slices.ContainsFunc(card.SlipKeys(card.Parts()[0]), func(k practice.SlipKey) bool {
			return k.Slip.Name == "loss-added"
		})
		if keyed != (want == practice.Slipped) {
			t.Errorf("a need of %s: the key has the slip: %v", need, keyed)
		}
	}
}

// A key is printed with its unit, and whoever types it so has answered in a unit that fits: for every step and answer
// that can be asked for, in each of its units.
func TestEveryKeyCanBeRead(t *testing.T) {
	read := 0
	for _, s := range nitrogen.Shelf() {
		for _, r := range s.Results {
			if !r.Always() {
				continue
			}
			set, err := practice.NewSet(&practice.Exercise{Seed: "test", Uses: []*practice.Use{{Name: "only", Sheet: s}},
				Asks: []practice.Ask{{Use: "only", Result: r.Name, Digits: 3}}}, "en")
			if err != nil {
				t.Fatal(err)
			}
			for _, u := range set.Parts[0].Units() {
				for _, language := range []string{"en", "es"} {
					text := u.Label("1,234.5")
					h, err := set.Parts[0].Read(text, language)
					if err != nil || h.Told != practice.FitUnit || h.Bare != 1234.5 {
						t.Errorf("%s of %s, %q: %+v, %v", r.Name, s.Name, text, h, err)
					}
					read++
				}
			}
		}
	}
	if read < 100 {
		t.Errorf("%d keys were read", read)
	}
}

// Spellings of units by people, in both languages.
func TestSpellings(t *testing.T) {
	soil := one(nitrogen.SoilNitrogen, "nitrogen", 3, "nitrate", "12 ppm NO3-N", "depth", "12 in")
	p := deal(t, soil, 1).Parts()[0]
	for _, text := range []string{"48 lb N/ac", "48lb/ac", "48 LBS/ACRE", "48 pounds of nitrogen per acre",
		"48 lbs. N per acre", "48 libras de nitrógeno por acre", "48 libras por acre", "48 lb N/ac present",
		"53.8 kilos por hectárea", "53.8 kg/ha"} {
		if h, err := p.Read(text, "es"); err != nil || h.Told != practice.FitUnit {
			t.Errorf("%q: %+v, %v", text, h, err)
		}
	}
	for _, text := range []string{"48 lb", "48 lb NO3/ac", "48 kg/ac", "48 lb/tree", "48 %", "48 ppm",
		"48 lb taken up/ac"} {
		if h, err := p.Read(text, "en"); err != nil || h.Told != practice.OtherUnit {
			t.Errorf("%q: %+v, %v", text, h, err)
		}
	}
}
