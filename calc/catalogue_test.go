package calc_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// testdata/contract.txt is what guides, terminals and other people's scripts rely on: the names of every calculation,
// of its givens (those that may be left empty in brackets) and of its answers. A name once published is not taken away:
// -update adds names, and who takes one away takes it out of the file by hand.
func TestCatalogueKeepsItsContract(t *testing.T) {
	const file = "testdata/contract.txt"
	kept, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, s := range calc.Standard().All() {
		line := s.Name + ":"
		for _, g := range s.Givens {
			if g.MayBeLeftOut() {
				line += " [" + g.Name + "]"
			} else {
				line += " " + g.Name
			}
		}
		line += " →"
		for _, r := range s.Answers() {
			line += " " + r.Name
		}
		lines = append(lines, line)
	}
	text := strings.Join(lines, "\n") + "\n"
	for old := range strings.Lines(string(kept)) {
		if words := strings.Fields(old); !keeps(lines, words) {
			t.Errorf("these names were published, and one of them is gone: %s", old)
		}
	}
	switch {
	case t.Failed():
	case *update:
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	case string(kept) != text:
		t.Errorf("%s lacks names that are new: run go test ./calc -run Contract -update, and read what changed", file)
	}
}

// keeps says whether one of the lines has all words of another, which begins with the same name.
func keeps(lines, words []string) bool {
	for _, line := range lines {
		if now := strings.Fields(line); now[0] == words[0] {
			return !slices.ContainsFunc(words, func(word string) bool { return !slices.Contains(now, word) })
		}
	}
	return false
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
