package site

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"strings"

	"acreleaf/calc"
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// blockFacts is what the script for blocks knows of the facts of a block.
type blockFacts struct {
	Given   map[string]string   `json:"given"`   // by the fact: calculations and their givens
	Once    []string            `json:"once"`    // the facts of one sample
	Edition string              `json:"edition"` // a mark that is another once what works them is
	Unit    map[string]string   `json:"measure"` // of what is worked
	Options map[string][]string `json:"options"` // the names of what a choice has, in its order
	Names   map[string]string   `json:"names"`   // of units: the name in English, by that in the language of the pages
}

// editionOfFacts is a mark of the calculations that work the facts of a block: numbers that one edition of them worked
// are not shown by another.
func editionOfFacts() string {
	sum := sha256.New()
	for _, one := range fact.BlockFacts() {
		calculation, _, worked := strings.Cut(one.Worked, ".")
		if !worked {
			continue
		}
		g := new(sheet.Graph)
		g.Add("fact", calc.Standard().Find(calculation), nil)
		if err := g.Close(); err != nil {
			panic(err) // a calculation without links always closes
		}
		fmt.Fprintln(sum, one.Worked, g.Program.Code, g.Program.Outputs, g.Program.Tables)
	}
	return hex.EncodeToString(sum.Sum(nil)[:4])
}

// factsOfBlocks gives the facts of a block in JSON, as the script for blocks of a language reads them. What that keeps
// is in no language, so that pages of all can show it.
func factsOfBlocks(language string) []byte {
	catalogue := calc.Standard()
	given := func(name string) (*sheet.Sheet, *sheet.Given) {
		calculation, given, _ := strings.Cut(name, ".")
		s := catalogue.Find(calculation)
		return s, s.FindGiven(given)
	}
	all := blockFacts{Given: map[string]string{}, Unit: map[string]string{}, Options: map[string][]string{},
		Names: map[string]string{}}
	all.Edition = editionOfFacts()
	name := func(u unit.Unit) {
		if own := u.In(language).String(); own != u.String() {
			all.Names[own] = u.String()
		}
	}
	for _, one := range fact.BlockFacts() {
		for _, each := range one.Givens {
			if fact.InGuides(each) {
				all.Given[one.ID] = strings.TrimSpace(all.Given[one.ID] + " " + each)
			}
			_, g := given(each)
			for _, u := range unitsOf(g) {
				name(u.unit)
			}
		}
		if one.Once {
			all.Once = append(all.Once, one.ID)
		}
		if one.Worked != "" {
			calculation, answer, _ := strings.Cut(one.Worked, ".")
			all.Unit[one.ID] = catalogue.Find(calculation).FindResult(answer).Unit.String()
		}
		if _, g := given(one.Givens[0]); len(g.Choices) > 0 {
			for _, option := range g.Choices {
				all.Options[one.ID] = append(all.Options[one.ID], option.Name)
			}
		}
	}
	written, err := json.Marshal(all)
	if err != nil {
		panic(err) // maps and lists of texts always have a JSON
	}
	return written
}
