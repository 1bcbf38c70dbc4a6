package site

import (
	"encoding/json"
	"strings"

	"acreleaf/calc"
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// blockFacts is what the script for blocks knows of the facts of a block.
type blockFacts struct {
	Given   map[string]string   `json:"given"`   // the fact, by calculation and given
	Once    []string            `json:"once"`    // the facts of one sample
	Unit    map[string]string   `json:"measure"` // of what is worked
	Options map[string][]string `json:"options"` // the names of what a choice has, in its order
}

// factsOfBlocks gives the facts of a block in JSON, as the script for blocks reads them.
func factsOfBlocks() []byte {
	catalogue := calc.Standard()
	given := func(name string) (*sheet.Sheet, *sheet.Given) {
		calculation, given, _ := strings.Cut(name, ".")
		s := catalogue.Find(calculation)
		return s, s.FindGiven(given)
	}
	all := blockFacts{Given: map[string]string{}, Unit: map[string]string{}, Options: map[string][]string{}}
	for _, one := range fact.BlockFacts() {
		for _, name := range one.Givens {
			all.Given[name] = one.ID
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
