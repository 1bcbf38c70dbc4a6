package calc_test

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// told is what testdata/hazards.txt says.
type told struct {
	holds  map[string][]string            // what an option is, by its name
	brings map[string]map[string][]string // the hazards of what it is, by calculation: "DANGER acid"
}

const refused = "refused"

func readHazards(t *testing.T) told {
	t.Helper()
	all := told{map[string][]string{}, map[string]map[string][]string{}}
	for _, line := range part(t, "testdata/hazards.txt", "holds") {
		option, what, _ := strings.Cut(line, " ")
		for thing := range strings.SplitSeq(what, ",") {
			all.holds[option] = append(all.holds[option], strings.TrimSpace(thing))
		}
	}
	for _, line := range part(t, "testdata/hazards.txt", "brings") {
		before, hazard, _ := strings.Cut(line, ": ")
		words := strings.Fields(before)
		start := slices.IndexFunc(words, func(word string) bool { return calc.Standard().Find(word) != nil })
		if start < 1 {
			t.Fatalf("no calculation stands in %q", line)
		}
		what := strings.Join(words[:start], " ")
		for _, name := range words[start:] {
			if all.brings[what] == nil {
				all.brings[what] = map[string][]string{}
			}
			all.brings[what][name] = append(all.brings[what][name], hazard)
		}
	}
	return all
}

// part gives the lines of one part of a file, which are set in by two spaces.
func part(t *testing.T, file, name string) []string {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	inside := false
	for line := range strings.Lines(string(text)) {
		if rest, set := strings.CutPrefix(line, "  "); !set {
			inside = strings.HasPrefix(line, name+":") || inside && strings.TrimSpace(line) != ""
		} else if inside {
			lines = append(lines, strings.TrimRight(rest, "\n"))
		}
	}
	if len(lines) == 0 {
		t.Fatalf("%s has no part %q", file, name)
	}
	return lines
}

// must gives what the chosen options of a sheet must bring, each once.
func (all told) must(s *sheet.Sheet, entries map[string]sheet.Entry) []string {
	var hazards []string
	for _, g := range s.Givens {
		if len(g.Choices) == 0 {
			continue
		}
		for _, thing := range all.holds[g.Choices[int(entries[g.Name].Value)].Name] {
			hazards = append(hazards, all.brings[thing][s.Name]...)
		}
	}
	if slices.Contains(hazards, refused) {
		return []string{refused}
	}
	slices.Sort(hazards)
	return slices.Compact(hazards)
}

// said lists the sentences about the hazards that the file knows, each once, or that the sheet refuses.
func (all told) said(t *testing.T, s *sheet.Sheet, entries map[string]sheet.Entry) []string {
	t.Helper()
	o, err := sheet.NewBench(s).Work(entries)
	if errors.As(err, new(*sheet.Refused)) {
		return []string{refused}
	} else if err != nil {
		t.Fatal(err)
	}
	var hazards []string
	for _, said := range o.Said() {
		signal := said.Signal.String()
		if said.Signal == sheet.Note {
			signal = "note"
		}
		if all.knows(said.Hazard) {
			hazards = append(hazards, signal+" "+said.Hazard)
		}
	}
	slices.Sort(hazards)
	return slices.Compact(hazards)
}

func (all told) knows(hazard string) bool {
	for _, calculations := range all.brings {
		for _, hazards := range calculations {
			if slices.ContainsFunc(hazards, func(h string) bool { return strings.HasSuffix(h, " "+hazard) }) {
				return true
			}
		}
	}
	return false
}

// Every option of every choice brings the hazards of what it is, with their signal words, and no others.
func TestEveryOptionBringsItsHazards(t *testing.T) {
	all := readHazards(t)
	for option, things := range all.holds {
		for _, thing := range things {
			if thing != "nothing" && all.brings[thing] == nil {
				t.Errorf("%s holds %s, and no hazard is listed for that", option, thing)
			}
		}
	}
	unseen := map[string]bool{}
	for thing, calculations := range all.brings {
		for name := range calculations {
			unseen[thing+" in "+name] = true
		}
	}
	for _, s := range calc.Standard().All() {
		for _, choice := range s.Givens {
			for option := range choice.Choices {
				name := choice.Choices[option].Name
				for _, from := range starts(s) {
					from[choice.Name] = single(float64(option))
					got, want := all.said(t, s, from), all.must(s, from)
					if slices.Contains(got, refused) && !slices.Contains(want, refused) {
						continue // a weight of a gallon is missing, which the other start has
					}
					if !slices.Equal(got, want) {
						t.Errorf("%s with the %s %s says %q, want %q", s.Name, choice.Name, name, got, want)
					}
					for _, thing := range all.holds[name] {
						delete(unseen, thing+" in "+s.Name)
					}
				}
			}
		}
	}
	for what := range unseen {
		t.Errorf("no option shows %s", what)
	}
}

// A why is a letter of testdata/pairs.txt: a hazard with its signal word, and what meets what.
type why struct{ hazard, a, b string }

// readPairs gives the letters, the materials, and the letters of each pair of materials.
func readPairs(t *testing.T) (whys map[rune]why, materials []string, cells map[[2]string]string) {
	t.Helper()
	whys, cells = map[rune]why{}, map[[2]string]string{}
	for _, line := range part(t, "testdata/pairs.txt", "why") {
		words := strings.Fields(line)
		id := words[len(words)-1]
		a, b, _ := strings.Cut(id, "-with-")
		whys[rune(line[0])] = why{words[1] + " " + id, a, b}
	}
	rows := part(t, "testdata/pairs.txt", "pairs")[1:]
	for _, row := range rows {
		materials = append(materials, strings.Fields(row)[0])
	}
	for _, row := range rows {
		words := strings.Fields(row)
		if len(words) != len(rows)+1 {
			t.Fatalf("the row of %s has %d cells, want %d", words[0], len(words)-1, len(rows))
		}
		for i, cell := range words[1:] {
			cells[[2]string{words[0], materials[i]}] = strings.Trim(cell, ".")
		}
	}
	return whys, materials, cells
}

// Two materials that are compared are told apart as the matrix of a person says, whichever of them is named first and
// in whichever of the three places.
func TestPairsAreThoseOfTheMatrix(t *testing.T) {
	whys, materials, cells := readPairs(t)
	s := calc.Standard().Find("material-compare")
	number := func(given, option string) sheet.Entry {
		choices := s.FindGiven(given).Choices
		at := slices.IndexFunc(choices, func(o sheet.Option) bool { return o.Name == option })
		if at < 0 {
			t.Fatalf("%s is no option of %s", option, given)
		}
		return single(float64(at))
	}
	if options := len(s.FindGiven("first").Choices); options != len(materials) {
		t.Fatalf("the matrix has %d materials, and the calculation %d", len(materials), options)
	}
	bench := sheet.NewBench(s)
	for pair, cell := range cells {
		if back := cells[[2]string{pair[1], pair[0]}]; cell != back || pair[0] == pair[1] && cell != "" {
			t.Errorf("%s and %s: %q one way and %q the other", pair[0], pair[1], cell, back)
		}
		var want []string
		for _, letter := range cell {
			want = append(want, whys[letter].hazard)
		}
		slices.Sort(want)
		// 46-0-0 has no pair, so that it may be in the place that is left.
		for _, places := range [][3]string{{"first", "second", "third"}, {"first", "third", "second"},
			{"second", "third", "first"}} {
			o, err := bench.Work(map[string]sheet.Entry{"nitrogen": single(30), places[0]: number(places[0], pair[0]),
				places[1]: number(places[1], pair[1]), places[2]: number(places[2], "46-0-0")})
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, said := range o.Said() {
				if strings.Contains(said.Hazard, "-with-") {
					got = append(got, fmt.Sprint(said.Signal, " ", said.Hazard))
				}
			}
			dangerous := slices.ContainsFunc(want, func(h string) bool { return !strings.HasPrefix(h, "NOTICE") })
			if dangerous && tells(o, "jar") || !tells(o, "Do not mix") {
				t.Errorf("%s with %s: a jar is advised for what harms people, or mixing is not forbidden", pair[0], pair[1])
			}
			slices.Sort(got)
			if !slices.Equal(got, want) {
				t.Errorf("%s as the %s with %s as the %s: %q, want %q", pair[0], places[0], pair[1], places[1], got, want)
			}
		}
	}
}

// tells says whether one of the remarks holds a text.
func tells(o sheet.Outcome, text string) bool {
	return slices.ContainsFunc(o.Said(), func(said sheet.Said) bool { return strings.Contains(said.Text, text) })
}

// No jar is advised where acid or ammonia is at hand: one that boils over blinds.
func TestNoJarForAcidOrAmmonia(t *testing.T) {
	all := readHazards(t)
	for _, s := range calc.Standard().All() {
		for _, choice := range s.Givens {
			for option := range choice.Choices {
				things := all.holds[choice.Choices[option].Name]
				if !slices.Contains(things, "acid") && !slices.Contains(things, "ammonia") {
					continue
				}
				for _, from := range starts(s) {
					from[choice.Name] = single(float64(option))
					if o, err := sheet.NewBench(s).Work(from); err == nil && tells(o, "jar") {
						t.Errorf("%s with the %s %s advises a jar", s.Name, choice.Name, choice.Choices[option].Name)
					}
				}
			}
		}
	}
}

// A material alone says that it must not meet what the other material of each of its pairs holds.
func TestAloneNamesTheOtherOfEachPair(t *testing.T) {
	whys, _, cells := readPairs(t)
	holds := readHazards(t).holds
	called := func(what string) string {
		return cmp.Or(map[string]string{"acid": "strong acid", "uan": "UAN"}[what], what)
	}
	for _, name := range []string{"material-amount", "material-nitrogen", "injection"} {
		s := calc.Standard().Find(name)
		for pair, cell := range cells {
			alone, there := kept(t, s, pair[0])
			for _, letter := range cell {
				w := whys[letter]
				other := w.b
				if slices.Contains(holds[pair[0]], w.b) {
					other = w.a
				}
				named := func(list string) bool { return strings.Contains(list, called(other)) }
				if there && !slices.ContainsFunc(alone, named) {
					t.Errorf("%s: %s must not meet %s (%s), and says only %q", name, pair[0], pair[1], w.hazard, alone)
				}
			}
		}
	}
}

// kept gives what a sheet says that one material must not meet: the lists behind "Never let it meet".
func kept(t *testing.T, s *sheet.Sheet, material string) (lists []string, there bool) {
	t.Helper()
	choice := s.FindGiven("material")
	entries := starts(s)[0]
	at := slices.IndexFunc(choice.Choices, func(o sheet.Option) bool { return o.Name == material })
	entries["material"] = single(float64(at))
	o, err := sheet.NewBench(s).Work(entries)
	if err != nil {
		return nil, false // a dry material in an injector, or one under pressure
	}
	for _, said := range o.Said() {
		if _, list, found := strings.Cut(said.Text, "Never let it meet "); found {
			lists = append(lists, list)
		}
	}
	return lists, true
}
