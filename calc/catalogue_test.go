package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// contract is what guides, terminals and other people's scripts rely on: the names of every calculation, of its givens
// (those that may be left empty in brackets) and of its answers. A name once published is not taken away.
var contract = []struct {
	name            string
	givens, answers []string
}{
	{"nitrate-basis", []string{"reported", "of"}, []string{"nitrogen", "nitrate"}},
	{"soil-nitrogen", []string{"nitrate", "depth", "[bulk-density]"}, []string{"nitrogen"}},
	{"water-applied", []string{"flow", "emitters", "trees", "hours"}, []string{"tree-volume", "volume", "depth"}},
	{"water-nitrogen", []string{"nitrate", "water"}, []string{"per-inch", "nitrogen"}},
	{"tree-density", []string{"[pattern]", "tree", "[row]"}, []string{"area", "trees"}},
	{"tree-rate", []string{"rate", "trees", "[leaf]"}, []string{"nitrogen"}},
	{"acre-rate", []string{"nitrogen", "trees", "[leaf]"}, []string{"rate"}},
	{"crop-demand", []string{"crop", "leaf", "yield", "[growth]", "[removal]"},
		[]string{"tree-growth", "crop-removal", "demand"}},
	{"organic-credit", []string{"material", "amount", "content", "[release]"}, []string{"nitrogen"}},
	{"uptake-efficiency", []string{"system"}, []string{"efficiency", "per-pound"}},
	{"season-budget", []string{"need", "[efficiency]", "soil", "[reach]", "water", "[cover-crop]", "[compost]", "[manure]",
		"[organic-matter]", "[other]"}, []string{"credits", "short", "apply", "surplus", "other-order"}},
	{"uptake-share", []string{"nitrogen", "crop"}, []string{"first", "second", "third", "fourth"}},
	{"material-compare", []string{"nitrogen", "first", "[first-price]", "second",
		"[second-price]", "third", "[third-price]"},
		[]string{"first-per-nitrogen", "second-per-nitrogen", "third-per-nitrogen", "first-cost", "second-cost",
			"third-cost", "first-nitrate", "first-ammonium", "first-urea", "second-nitrate", "second-ammonium",
			"second-urea", "third-nitrate", "third-ammonium", "third-urea", "first-lime", "second-lime", "third-lime"}},
	{"material-amount", []string{"nitrogen", "material", "[price]", "[analysis]", "[density]"},
		[]string{"product", "volume", "cost", "per-nitrogen"}},
	{"material-nitrogen", []string{"amount", "material", "trees", "[analysis]", "[density]"},
		[]string{"nitrogen", "rate"}},
	{"feed-schedule",
		[]string{"nitrogen", "trees", "leaf", "[cap]", "first", "last", "material", "[analysis]", "[density]"},
		[]string{"feeds", "each", "each-acre", "product", "volume", "every", "last-date", "date-1", "date-2",
			"date-3", "date-4",
			"date-5", "date-6", "date-7", "date-8"}},
	{"root-share", []string{"wetted", "root", "offset", "rate"}, []string{"share", "effective"}},
	{"injection", []string{"nitrogen", "acres", "material", "run", "clean", "flush", "[flow]", "[analysis]", "[density]"},
		[]string{"volume", "window", "rate", "concentration"}},
	{"nitrate-reach", []string{"excess", "texture", "[capacity]", "[nitrate]"}, []string{"depth", "leached"}},
	{"leaf-level", []string{"crop", "nutrient", "value", "[from]", "[to]"},
		[]string{"low", "high", "below", "adequate", "above"}},
	{"balance", []string{"applied", "removed"}, []string{"ratio", "difference"}},
}

func TestCatalogueKeepsItsContract(t *testing.T) {
	all := calc.Standard().All()
	if len(all) != len(contract) {
		t.Fatalf("the catalogue has %d calculations, the contract %d", len(all), len(contract))
	}
	for i, want := range contract {
		s := all[i]
		var givens, answers []string
		for _, g := range s.Givens {
			name := g.Name
			if g.MayBeLeftOut() {
				name = "[" + name + "]"
			}
			givens = append(givens, name)
		}
		for _, r := range s.Answers() {
			answers = append(answers, r.Name)
		}
		if s.Name != want.name || !slices.Equal(givens, want.givens) || !slices.Equal(answers, want.answers) {
			t.Errorf("calculation %d is %s of %q for %q, want %s of %q for %q", i, s.Name, givens, answers,
				want.name, want.givens, want.answers)
		}
	}
}

func TestCalculationsAreFoundByName(t *testing.T) {
	c := calc.Standard()
	seen := map[string]bool{}
	for _, name := range c.Names() {
		if seen[name] {
			t.Errorf("two calculations are called %s", name)
		}
		seen[name] = true
		if s := c.Find(name); s == nil || s.Name != name {
			t.Errorf("%s is found as %v", name, s)
		}
	}
	if c.Find("soil") != nil {
		t.Error("there is no calculation called soil, and one was found")
	}
}

// An amount of a material where its nitrogen is asked for is no unit that is unknown: the message has the calculation
// that turns one into the other.
func TestAmountsOfMaterialAreNoNitrogen(t *testing.T) {
	c := calc.Standard()
	asked := 0
	for _, s := range c.All() {
		for _, g := range s.Givens {
			if g.Unit.Account() == "" {
				continue
			}
			asked++
			for _, text := range []string{"30 lb/ac UAN-32", "9 gal/ac CAN17", "200 lb/ac 46-0-0", "40 lb 15.5-0-0/ac"} {
				_, err := g.Read(text)
				if err == nil || !strings.Contains(err.Error(), "with material-nitrogen, and write it for example as ") {
					t.Errorf("%s.%s of %q: %v", s.Name, g.Name, text, err)
				}
			}
			if _, err := g.Read(g.Example()); err != nil {
				t.Errorf("%s.%s: its own example is refused: %v", s.Name, g.Name, err)
			}
		}
	}
	if asked < 10 || c.Find("material-nitrogen") == nil {
		t.Errorf("%d givens ask for nitrogen by an account", asked)
	}
}

func TestCatalogueIsNotChangedThroughItsLists(t *testing.T) {
	c := calc.Standard()
	first := c.All()[0]
	c.All()[0] = nil
	c.Names()[0] = ""
	if c.All()[0] != first || c.Names()[0] != first.Name {
		t.Error("the catalogue gave away its own list")
	}
	mine := []*sheet.Sheet{first}
	d := calc.New(mine)
	mine[0] = nil
	if d.All()[0] != first {
		t.Error("the catalogue kept a list that is not its own")
	}
}

// Everything that a reader is asked or told has the words for it.
func TestEveryPartIsExplained(t *testing.T) {
	for _, s := range calc.Standard().All() {
		if s.Title == "" || s.Summary == "" {
			t.Errorf("%s has no title or no summary", s.Name)
		}
		if len(s.Slips) == 0 {
			t.Errorf("%s knows no slip", s.Name)
		}
		for _, g := range s.Givens {
			if g.Label == "" || g.Hint == "" {
				t.Errorf("%s.%s has no label or no hint", s.Name, g.Name)
			}
			if g.Check(g.Typical) != nil || g.Low < 0 || len(g.Choices) == 0 && g.Typical == 0 {
				t.Errorf("%s.%s is typically %v, of %v to %v", s.Name, g.Name, g.Typical, g.Low, g.High)
			}
			for _, o := range g.Choices {
				if o.Label == "" {
					t.Errorf("%s.%s: the option %s has no label", s.Name, g.Name, o.Name)
				}
			}
		}
		for _, r := range s.Results {
			if r.Label == "" {
				t.Errorf("%s.%s has no label", s.Name, r.Name)
			}
		}
		for _, c := range s.Constants {
			if c.Label == "" || len(c.Sources) == 0 {
				t.Errorf("%s: the constant %s is not explained: %+v", s.Name, c.Name, c.Fact)
			}
		}
		for _, slip := range s.Slips {
			if slip.Text == "" {
				t.Errorf("%s: the slip %s says nothing", s.Name, slip.Name)
			}
		}
	}
}

// A figure rests on sources that can be looked up, cell for cell, and none of them is somebody's memory.
func TestEveryFigureHasItsSources(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range calc.Standard().All() {
		for _, c := range s.Constants {
			for _, id := range c.Sources {
				source, known := fact.FindSource(id)
				if !known || source.Kind == fact.Memory {
					t.Errorf("%s: the constant %s rests on %q: known %v, %s", s.Name, c.Name, id, known, source.Kind)
				}
				seen[id] = true
			}
			if c.Table == nil {
				continue
			}
			for i, cell := range c.Table.Cells {
				if math.IsNaN(cell.Value) != (len(cell.Sources) == 0) {
					t.Errorf("%s: the cell %s of %s is %v, from %q", s.Name, c.Table.Choice.Choices[i].Name, c.Name, cell.Value,
						cell.Sources)
				}
			}
		}
		for _, g := range s.Givens {
			for _, o := range g.Choices {
				if len(o.Sources) > 0 && o.Note == "" {
					t.Errorf("%s: the option %s has sources and no note", s.Name, o.Name)
				}
			}
		}
		for _, id := range s.NoteSources() {
			if source, known := fact.FindSource(id); !known || !source.Kind.Printed() {
				t.Errorf("%s: a note rests on %q: known %v, %s", s.Name, id, known, source.Kind)
			}
			seen[id] = true
		}
		for _, r := range s.Remarks {
			h, _ := fact.FindHazard(r.Hazard)
			for _, id := range h.Sources {
				seen[id] = true
			}
		}
	}
	// Those that a note or a guide names, or that the proof asks for, and no figure of a calculation.
	elsewhere := []string{"cahn-2017", "epa-applicators", "cdfa-adjustments", "memory", "north-platte",
		"penn-state-soil", "truckee-carson", "uc-nutrient-water", "ucanr-water"}
	for _, s := range fact.Sources() {
		switch listed := slices.Contains(elsewhere, s.ID); {
		case !seen[s.ID] && !listed:
			t.Errorf("nothing rests on the source %s", s.ID)
		case seen[s.ID] && listed:
			t.Errorf("a calculation rests on the source %s: take it off the list of the others", s.ID)
		}
	}
	for _, id := range elsewhere {
		if _, known := fact.FindSource(id); !known {
			t.Errorf("there is no source %s", id)
		}
	}
}

// Every signal of the catalogue is a hazard of the table, with its signal word.
func TestEverySignalIsAHazardOfTheTable(t *testing.T) {
	for _, s := range calc.Standard().All() {
		for _, r := range s.Remarks {
			if r.Hazard == "" {
				if r.Signal != sheet.Note && r.Signal != sheet.Refusal {
					t.Errorf("%s signals %s without a hazard: %q", s.Name, r.Signal, r.Text)
				}
				continue
			}
			h, known := fact.FindHazard(r.Hazard)
			if !known || !strings.HasSuffix(r.Text, h.Sentence("en")) ||
				r.Signal != sheet.Note && r.Signal.String() != h.Signal.String() {
				t.Errorf("%s says the hazard %q as %s: %q", s.Name, r.Hazard, r.Signal, r.Text)
			}
		}
	}
}
