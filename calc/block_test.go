package calc_test

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
	"acreleaf/calc/words"
)

// notOfABlock are the givens that are no fact of a block, with the reason. A reason for a calculation is for all of its
// givens that are not listed by themselves.
var notOfABlock = map[string]string{
	"nitrate-basis":              "it turns any number of a report, and does not know of which sample",
	"soil-nitrogen.bulk-density": "few reports have it",
	"organic-credit":             "each load is worked by itself",
	"uptake-efficiency":          "it is of the way to feed, and the need of young trees is told as fed",
	"crop-demand":                "growth and removal of one's own are known of few blocks",
	"season-budget":              "few blocks have it, and its guide explains how to count it",
	"uptake-share":               "it is for trees with a crop",
	"material-compare":           "three materials and their prices are of a choice that is still open",
	"material-amount":            "the price, the label and the ticket are of a delivery",
	"material-nitrogen":          "what was put on, not what is planned",
	"feed-schedule":              "the label, the ticket and a limit of one's own are of a feed",
	"block-trees.spaced":         "it is worked from the spacing",
	"block-material.density":     "the ticket is of a delivery",
	"root-share":                 "the circles are measured at one tree",
	"injection":                  "the run of one day",
	"nitrate-reach":              "water beyond need is of one rain or one set",
	"leaf-level":                 "a leaf sample is of one day",
	"balance":                    "the year is over by then",
}

// Every given of every calculation stands for a fact of a block, or is on the list above.
func TestEveryGivenIsOfABlockOrNot(t *testing.T) {
	used := map[string]bool{}
	for _, s := range calc.Standard().All() {
		for _, g := range s.Givens {
			name := s.Name + "." + g.Name
			is := fact.OfBlock(s.Name, g.Name)
			reason := name
			if notOfABlock[reason] == "" {
				reason = s.Name
			}
			switch {
			case is != nil && notOfABlock[name] != "":
				t.Errorf("%s is a fact of a block, and on the list of those that are not", name)
			case is == nil && notOfABlock[reason] == "":
				t.Errorf("%s is no fact of a block, and no reason is given", name)
			case is == nil:
				used[reason] = true
			}
		}
	}
	for name := range notOfABlock {
		if !used[name] {
			t.Errorf("the reason for %s is for no given", name)
		}
	}
}

// What stands for one fact is of one dimension and one account, or chosen from the same list; it has a text in every
// language; and what it counts as while it is unknown can be read, in the unit of the given.
func TestFactsOfABlock(t *testing.T) {
	catalogue := calc.Standard()
	for _, f := range fact.BlockFacts() {
		calculation, name := f.Part()
		first := catalogue.Find(calculation).FindGiven(name)
		for _, each := range f.Givens {
			calculation, name, _ := strings.Cut(each, ".")
			s := catalogue.Find(calculation)
			if s == nil || s.FindGiven(name) == nil {
				t.Errorf("%s: there is no given %s", f.ID, each)
				continue
			}
			g := s.FindGiven(name)
			if len(g.Choices) != len(first.Choices) || g.Date != first.Date {
				t.Errorf("%s: %s is not chosen as %s is", f.ID, each, f.Givens[0])
			}
			if len(g.Choices) == 0 && f.Group != "" && g.Unit.String() != first.Unit.String() {
				t.Errorf("%s: %s is in %s, and %s in %s", f.ID, each, g.Unit, f.Givens[0], first.Unit)
			}
			if of := fact.OfBlock(calculation, name); of == nil || of.ID != f.ID {
				t.Errorf("%s: %s stands for another fact too", f.ID, each)
			}
		}
		if f.Worked != "" {
			testWorked(t, catalogue, f)
		}
		if f.Group == "" {
			continue
		}
		testTextsOf(t, f)
		if f.Unknown == "" {
			if len(first.Choices) == 0 && !first.Date && !f.Else {
				t.Errorf("%s: it may be unknown, and counts as nothing then", f.ID)
			}
			continue
		}
		if f.Else && !first.Optional {
			t.Errorf("%s: other facts count in its place, and it cannot be left empty", f.ID)
		}
		for _, text := range []string{f.Unknown, cmp.Or(f.Later, f.Unknown)} {
			if read, err := first.Read(text); err != nil || read.Value > read.High {
				t.Errorf("%s: unknown it counts as %s: %v", f.ID, text, err)
			}
		}
		if f.Hazard != "" {
			testUntested(t, catalogue, f)
		}
		if calculation, answer, _ := strings.Cut(f.Tells, "."); f.Tells != "" &&
			catalogue.Find(calculation).FindResult(answer) == nil {
			t.Errorf("%s: there is no answer %s", f.ID, f.Tells)
		}
	}
}

// testTextsOf sees that a fact has the texts that it needs in every language, and no others.
func testTextsOf(t *testing.T, f fact.BlockFact) {
	t.Helper()
	for _, language := range words.Languages() {
		if f.Label(language) == "" || fact.BlockGroup(f.Group, language) == "" {
			t.Errorf("%s: it has no label, or its group has none, in %s", f.ID, language)
		}
		if (f.Lacking(language) == "") != (f.Unknown == "") {
			t.Errorf("%s: what is lacking where it is unknown is told just where it can be unknown", f.ID)
		}
		if (f.Untested(language) == "") != (f.Hazard == "") {
			t.Errorf("%s: what to do while it is not known is told just where that is a hazard", f.ID)
		}
		if (f.Instead(language) == "") == (f.Else && f.Tells != "") {
			t.Errorf("%s: what counts where it is left empty is told just where that can be told", f.ID)
		}
	}
}

// testUntested sees that what counts while a fact is not known only just reaches its hazard: a sentence takes the place
// of the warning there, which must not hide that a number is over the limit.
func testUntested(t *testing.T, catalogue *calc.Catalogue, f fact.BlockFact) {
	t.Helper()
	calculation, name := f.Part()
	s := catalogue.Find(calculation)
	at := slices.IndexFunc(s.Remarks, func(r *sheet.Remark) bool { return r.Hazard == f.Hazard })
	if at < 0 {
		t.Errorf("%s: %s warns of no %s", f.ID, calculation, f.Hazard)
		return
	}
	unknown, err := s.FindGiven(name).Read(f.Unknown)
	if err != nil {
		t.Fatal(err)
	}
	holds := func(high float64) bool {
		entries := map[string]sheet.Entry{}
		for _, g := range s.Givens {
			entries[g.Name] = sheet.Entry{Value: g.Typical, High: g.Typical}
		}
		entries[name] = sheet.Entry{Value: unknown.Value, High: high}
		o, err := sheet.NewBench(s).Work(entries)
		if err != nil {
			t.Fatal(err)
		}
		return o.High[o.Use.RemarkCell(at)] != 0
	}
	if !holds(unknown.High) || holds(math.Nextafter(unknown.High, 0)) {
		t.Errorf("%s: %s does not just reach %s", f.ID, f.Unknown, f.Hazard)
	}
}

// A text about a block is of a fact that there is, or of a group that has facts.
func TestTextsOfABlock(t *testing.T) {
	groups := map[string]bool{}
	for _, f := range fact.BlockFacts() {
		groups[f.Group] = true
	}
	for _, language := range words.Languages() {
		for _, key := range words.Keys(language) {
			if key.File != "block" {
				continue
			}
			kind, rest, _ := strings.Cut(key.Key, ".")
			id, _, _ := strings.Cut(rest, ".")
			known := slices.ContainsFunc(fact.BlockFacts(), func(f fact.BlockFact) bool { return f.ID == id })
			if kind == "fact" && !known || kind == "group" && !groups[id] {
				t.Errorf("calc/words/%s/%s: there is no such fact or group", language, key)
			}
		}
	}
}

// testWorked sees that what is worked goes into each of its givens, as a link would take it.
func testWorked(t *testing.T, catalogue *calc.Catalogue, f fact.BlockFact) {
	t.Helper()
	calculation, answer, _ := strings.Cut(f.Worked, ".")
	s := catalogue.Find(calculation)
	if s == nil || s.FindResult(answer) == nil {
		t.Errorf("%s: there is no answer %s", f.ID, f.Worked)
		return
	}
	if of := fact.WorkedOfBlock(calculation, answer); of == nil || of.ID != f.ID {
		t.Errorf("%s: %s is another fact too", f.ID, f.Worked)
	}
	u := s.FindResult(answer).Unit
	for _, each := range f.Givens {
		calculation, name, _ := strings.Cut(each, ".")
		if _, err := catalogue.Find(calculation).FindGiven(name).Read("1 " + u.String()); err != nil {
			t.Errorf("%s: %s does not take %s: %v", f.ID, each, u, err)
		}
	}
}
