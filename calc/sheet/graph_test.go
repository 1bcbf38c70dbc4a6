package sheet_test

import (
	"errors"
	"slices"
	"testing"

	"acreleaf/calc/sheet"
)

// field has the trees of an acre from the ground to a tree, and the pattern, as its given and as an answer.
var field = sheet.New("field", func(s *sheet.Sheet) {
	ground := s.Given("ground", "ft2/tree", sheet.Field{Label: "Ground", Typical: 396, Low: 1, High: 40_000})
	s.Choice("drip", yesOrNo, sheet.Field{Label: "Drip"})
	s.Given("missing", "%", optional(sheet.Field{Label: "Missing trees", Typical: 2, Low: 0, High: 100}))
	acre := s.Constant("acre", "43,560 ft2/ac", known)
	s.Answer("trees", "trees/ac", acre.Over(ground), sheet.Says{})
})

// rate turns ounces a tree to pounds an acre, and says whether missing trees were stated.
var rate = sheet.New("rate", func(s *sheet.Sheet) {
	ounces := s.Given("ounces", "oz N/tree", number)
	trees := s.Given("trees", "trees/ha", sheet.Field{Label: "Trees", Typical: 250, Low: 1, High: 7500})
	missing := s.Given("missing", "%", optional(sheet.Field{Label: "Missing trees", Typical: 2, Low: 0, High: 100}))
	s.Choice("drip", yesOrNo, sheet.Field{Label: "Drip"})
	share := s.Step("share", "", sheet.If(s.Stated(missing), s.Number(1).Minus(missing), s.Number(1)), sheet.Says{})
	s.Step("known", "", sheet.If(s.Stated(missing), s.Number(1), s.Number(0)), sheet.Says{})
	s.Answer("nitrogen", "lb N/ac", ounces.Times(trees).Times(share), sheet.Says{})
})

// budget takes what it needs from anything.
var budget = sheet.New("budget", func(s *sheet.Sheet) {
	need, credit := s.Given("need", "kg N/ha", number), s.Given("credit", "kg N/ha", number)
	s.Answer("apply", "kg N/ha", need.Minus(credit), sheet.Says{})
})

type links = map[string]sheet.Link

func closed(t testing.TB, g *sheet.Graph) *sheet.Graph {
	t.Helper()
	if err := g.Close(); err != nil {
		t.Fatal(err)
	}
	return g
}

func names(g *sheet.Graph) []string {
	var names []string
	for _, u := range g.Uses {
		names = append(names, u.Name)
	}
	return names
}

func TestUsesAreWorkedAfterWhatTheyTake(t *testing.T) {
	g := &sheet.Graph{}
	g.Add("season", budget, links{"need": {Use: "high", Name: "nitrogen"}, "credit": {Use: "low", Name: "nitrogen"}})
	g.Add("alone", budget, nil)
	g.Add("high", rate, links{"trees": {Use: "block", Name: "trees"}})
	g.Add("low", rate, links{"trees": {Use: "block", Name: "trees"}, "ounces": {Use: "high", Name: "ounces"}})
	g.Add("block", field, nil)
	closed(t, g)
	if got, want := names(g), []string{"block", "high", "low", "season", "alone"}; !slices.Equal(got, want) {
		t.Fatalf("worked in the order %q, want %q", got, want)
	}
	for i, want := range [][]int{nil, {0}, {1, 0}, {1, 2}, nil} {
		u := g.Uses[i]
		if u.Index != i || !slices.Equal(u.After, want) {
			t.Errorf("%s stands at %d after %v, want %d after %v", u.Name, u.Index, u.After, i, want)
		}
	}
}

// runGraph fills in the givens of each use and runs the program.
func runGraph(g *sheet.Graph, values map[string]map[string]float64) func(use string) sheet.Outcome {
	cells := make([]float64, g.Program.Cells)
	for name, of := range values {
		for given, value := range of {
			g.Find(name).Set(cells, given, value)
		}
	}
	g.Program.Run(cells)
	return func(use string) sheet.Outcome { return sheet.Outcome{Use: g.Find(use), Cells: cells} }
}

func TestLinksConvertTheirUnits(t *testing.T) {
	g := &sheet.Graph{}
	g.Add("season", budget, links{"need": {Use: "feed", Name: "nitrogen"}})
	g.Add("feed", rate, links{"trees": {Use: "block", Name: "trees"}})
	g.Add("block", field, nil)
	closed(t, g)
	outcome := runGraph(g, map[string]map[string]float64{
		"block": {"ground": 396}, "feed": {"ounces": 4}, "season": {"credit": 10},
	})
	for _, c := range []struct{ use, name, want string }{
		{"block", "trees", "110 trees/ac"}, {"feed", "trees", "272 trees/ha"}, {"feed", "nitrogen", "27.5 lb N/ac"},
		{"season", "need", "30.8 kg N/ha"}, {"season", "apply", "20.8 kg N/ha"},
	} {
		if got := outcome(c.use).Value(c.name).String(); got != c.want {
			t.Errorf("%s.%s is %s, want %s", c.use, c.name, got, c.want)
		}
	}
}

func TestChoicesAndEmptyGivensAreTakenAlong(t *testing.T) {
	g := &sheet.Graph{}
	g.Add("block", field, nil)
	g.Add("feed", rate, links{"missing": {Use: "block", Name: "missing"}, "drip": {Use: "block", Name: "drip"}})
	g.Add("next", rate, links{"missing": {Use: "feed", Name: "missing"}})
	closed(t, g)
	for _, linked := range []string{"feed", "next"} {
		if _, own := g.Find(linked).Presence("missing"); own {
			t.Errorf("%s has a presence of its own for a given that is linked", linked)
		}
	}
	whole := map[string]map[string]float64{
		"block": {"ground": 396, "drip": 1}, "feed": {"ounces": 16, "trees": 250}, "next": {"ounces": 16, "trees": 250},
	}
	outcome := runGraph(g, whole)
	if got := outcome("feed").Value("drip").Value; got != 1 {
		t.Errorf("the choice taken along is %v, want 1", got)
	}
	for _, use := range []string{"feed", "next"} {
		if got := outcome(use).Value("known").Value; got != 0 {
			t.Errorf("with nothing stated, %s knows of missing trees", use)
		}
	}
	whole["block"]["missing"] = 25
	outcome = runGraph(g, whole)
	for _, use := range []string{"feed", "next"} {
		if share, known := outcome(use).Value("share").Value, outcome(use).Value("known").Value; share != 0.75 || known != 1 {
			t.Errorf("with 25 %% missing, %s has a share of %v, known %v; want 0.75 and 1", use, share, known)
		}
	}
}

func TestAnAnswerMakesAnEmptyGivenStated(t *testing.T) {
	part := sheet.New("part", func(s *sheet.Sheet) {
		s.Answer("lost", "%", s.Given("part", "%", number), sheet.Says{})
	})
	g := &sheet.Graph{}
	g.Add("count", part, nil)
	g.Add("feed", rate, links{"missing": {Use: "count", Name: "lost"}})
	closed(t, g)
	outcome := runGraph(g, map[string]map[string]float64{"count": {"part": 50}, "feed": {"ounces": 1, "trees": 100}})
	if got := outcome("feed").Value("share").Value; got != 0.5 || !outcome("feed").Stated("missing") {
		t.Errorf("half lost leaves a share of %v", got)
	}
}

func TestCirclesNameTheirMembers(t *testing.T) {
	needs := func(use string) links { return links{"need": {Use: use, Name: "apply"}} }
	for _, c := range []struct {
		name string
		uses map[string]string // who waits for whom
		want []string
	}{
		{"itself", map[string]string{"a": "a"}, []string{"a", "a"}},
		{"two", map[string]string{"a": "b", "b": "a"}, []string{"a", "b", "a"}},
		{"three", map[string]string{"a": "b", "b": "c", "c": "a"}, []string{"a", "b", "c", "a"}},
		{"two behind one that only waits", map[string]string{"a": "b", "b": "c", "c": "b"}, []string{"b", "c", "b"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := &sheet.Graph{}
			for _, name := range []string{"a", "b", "c"} {
				if from, ok := c.uses[name]; ok {
					g.Add(name, budget, needs(from))
				}
			}
			var circle *sheet.CircleError
			if err := g.Close(); !errors.As(err, &circle) || !slices.Equal(circle.Members, c.want) {
				t.Errorf("%v, want the circle %q", err, c.want)
			}
		})
	}
	err := &sheet.CircleError{Members: []string{"soil", "well", "soil"}}
	if want := "these worksheets wait for each other in a circle: soil → well → soil"; err.Error() != want {
		t.Errorf("%q, want %q", err, want)
	}
}

func TestOddLinksAreRefused(t *testing.T) {
	number := sheet.New("number", func(s *sheet.Sheet) {
		s.Answer("answer", "", s.Given("given", "", number), sheet.Says{})
	})
	other := sheet.New("other", func(s *sheet.Sheet) {
		s.Choice("drip", []sheet.Option{{Name: "no"}, {Name: "yes"}}, sheet.Field{Label: "Drip"})
		s.Answer("answer", "", s.Zero(""), sheet.Says{})
	})
	span := sheet.New("span", func(s *sheet.Sheet) {
		day := s.Given("day", "days", sheet.Field{Typical: 20000, High: 30000, Date: true})
		length := s.Given("length", "days", sheet.Field{Typical: 9, High: 90})
		s.Answer("last", "days", day.Plus(length), sheet.Says{Date: true})
		s.Answer("twice", "days", length.Plus(length), sheet.Says{})
	})
	g := &sheet.Graph{}
	for name, s := range map[string]*sheet.Sheet{
		"block": field, "feed": rate, "one": number, "two": other, "season": span,
	} {
		g.Add(name, s, nil)
	}
	for _, c := range []struct {
		of    *sheet.Sheet
		given string
		link  sheet.Link
		want  string
	}{
		{rate, "trees", sheet.Link{Use: "block", Name: "trees"}, ""},
		{rate, "drip", sheet.Link{Use: "block", Name: "drip"}, ""},
		{rate, "missing", sheet.Link{Use: "block", Name: "missing"}, ""},
		{rate, "tree", sheet.Link{Use: "block", Name: "trees"}, `rate has no given "tree"`},
		{rate, "trees", sheet.Link{Use: "blok", Name: "trees"},
			`there is no worksheet "blok" for trees to take a number from`},
		{rate, "trees", sheet.Link{Use: "block", Name: "tres"}, `field has no "tres"`},
		{rate, "trees", sheet.Link{Use: "block", Name: "acre"}, `field has no "acre"`},
		{rate, "trees", sheet.Link{Use: "feed", Name: "nitrogen"}, "feed.nitrogen is lb N/ac; trees takes trees/ha"},
		{rate, "drip", sheet.Link{Use: "one", Name: "answer"},
			"drip is chosen from a list and cannot be taken from one.answer"},
		{rate, "drip", sheet.Link{Use: "two", Name: "drip"},
			"drip is chosen from a list and cannot be taken from two.drip"},
		{number, "given", sheet.Link{Use: "block", Name: "drip"},
			"given is chosen from a list and cannot be taken from block.drip"},
		{number, "given", sheet.Link{Use: "block", Name: "missing"}, "block.missing may be left empty, and given may not"},
		{span, "day", sheet.Link{Use: "season", Name: "last"}, ""},
		{span, "length", sheet.Link{Use: "season", Name: "twice"}, ""},
		{span, "day", sheet.Link{Use: "season", Name: "twice"},
			"a date and a number cannot stand for each other, as day and season.twice would"},
		{span, "length", sheet.Link{Use: "season", Name: "last"},
			"a date and a number cannot stand for each other, as length and season.last would"},
	} {
		err := g.CheckLink(c.of, c.given, c.link)
		if (err == nil) != (c.want == "") || err != nil && err.Error() != c.want {
			t.Errorf("%s from %s.%s: %v, want %q", c.given, c.link.Use, c.link.Name, err, c.want)
		}
	}
}

func TestCloseNamesTheWorksheetOfAnOddLink(t *testing.T) {
	for _, c := range []struct {
		links links
		want  string
	}{
		{links{"need": {Use: "none", Name: "apply"}},
			`worksheet "season": there is no worksheet "none" for need to take a number from`},
		{links{"ned": {Use: "season", Name: "apply"}}, `worksheet "season": budget has no given "ned"`},
	} {
		g := &sheet.Graph{}
		g.Add("season", budget, c.links)
		if err := g.Close(); err == nil || err.Error() != c.want {
			t.Errorf("%v, want %s", err, c.want)
		}
	}
}

// A page may close its graph again after it has added a worksheet.
func TestGraphMayBeClosedAgain(t *testing.T) {
	slipping := sheet.New("slipping", func(s *sheet.Sheet) {
		need := s.Given("need", "kg N/ha", number)
		a := s.Answer("apply", "kg N/ha", need, sheet.Says{})
		s.Slip("doubled", "apply", a.Times(s.Number(2)), "Twice.")
		s.Say(sheet.Note, need.More(s.Zero("kg N/ha")), "Some.")
	})
	g := &sheet.Graph{Slips: true}
	last := g.Add("last", slipping, links{"need": {Use: "first", Name: "apply"}})
	g.Add("first", slipping, nil)
	closed(t, g)
	before := *g.Program
	closed(t, g)
	if g.Program.Cells != before.Cells || len(g.Program.Code) != len(before.Code) || !slices.Equal(last.After, []int{0}) {
		t.Errorf("closed again, the program has %d cells and %d terms, and the last comes after %v; it had %d and %d",
			g.Program.Cells, len(g.Program.Code), last.After, before.Cells, len(before.Code))
	}
}

// Closed again with another worksheet before it, a worksheet tells its slips from the cells that it has by then.
func TestSlipsOfAGraphThatIsClosedAgain(t *testing.T) {
	lossy := sheet.New("lossy", func(s *sheet.Sheet) {
		rate, lost := s.Given("rate", "kg N/ha", number), s.Given("lost", "kg N/ha", number)
		s.Answer("left", "kg N/ha", rate.Minus(lost), sheet.Says{})
		s.SlipWhen(lost.More(s.Zero("kg N/ha")), "none-lost", "left", rate, "Something is lost.")
	})
	g := &sheet.Graph{Slips: true}
	later := g.Add("later", lossy, nil)
	closed(t, g)
	first := g.Add("first", lossy, nil)
	later.Links = links{"rate": {Use: "first", Name: "left"}}
	closed(t, g)
	for lost, want := range map[float64]int{0: 0, 4: 1} {
		cells := make([]float64, g.Program.Cells)
		first.Set(cells, "rate", 30)
		first.Set(cells, "lost", 4-lost)
		later.Set(cells, "lost", lost)
		g.Program.Run(cells)
		if got := (sheet.Outcome{Use: later, Cells: cells}).Slips(); len(got) != want {
			t.Errorf("with %v lost there are %d slips, want %d", lost, len(got), want)
		}
	}
}
