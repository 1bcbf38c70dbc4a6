package fact

import (
	"strings"

	"acreleaf/calc/words"
)

// A BlockFact is one thing that is known of a block, which stands for givens of calculations. A page about one block
// asks for those that its worksheets take; a page of another subject takes them from there.
type BlockFact struct {
	ID     string
	Group  string   // the part of the form that it is in; "" for one that is worked and not asked
	Givens []string // "soil-nitrogen.nitrate"; the first says its unit, its range and its options

	// What it counts as while nobody knows it: a range where it can be one. Empty for a choice and a day, whose hints say
	// what is meant.
	Unknown string
	Tells   string // the answer of its first given's sheet that says what not knowing it costs
	Once    bool   // of one sample: a second worksheet of the same calculation may be of another layer

	Worked string // the answer that it is: "tree-density.trees"
}

// Emitters is the part of the form that is another way to the inches of water.
const Emitters = "emitters"

// blockFacts are in the order in which a form asks for them.
var blockFacts = []BlockFact{
	{ID: "leaf", Group: "trees", Unknown: "1",
		Givens: []string{"feed-schedule.leaf", "tree-rate.leaf", "acre-rate.leaf", "crop-demand.leaf"}},
	{ID: "tree", Group: "trees", Unknown: "18 to 22 ft", Tells: "trees", Givens: []string{"tree-density.tree"}},
	{ID: "row", Group: "trees", Unknown: "20 to 26 ft", Tells: "trees", Givens: []string{"tree-density.row"}},
	{ID: "pattern", Group: "trees", Givens: []string{"tree-density.pattern"}},
	{ID: "acres", Group: "trees", Unknown: "1 ac", Givens: []string{"block-material.acres", "injection.acres"}},
	{ID: "rate", Group: "trees", Unknown: "3 to 4 oz N/tree fed", Tells: "nitrogen", Givens: []string{"tree-rate.rate"}},

	{ID: "soil-nitrate", Group: "soil", Unknown: "0 to 10 ppm NO3-N", Tells: "nitrogen", Once: true,
		Givens: []string{"soil-nitrogen.nitrate"}},
	{ID: "soil-depth", Group: "soil", Unknown: "6 to 12 in", Tells: "nitrogen", Once: true,
		Givens: []string{"soil-nitrogen.depth"}},
	{ID: "reach", Group: "soil", Unknown: "0 to 10 %", Givens: []string{"season-budget.reach"}},

	{ID: "well-nitrate", Group: "water", Unknown: "0 to 10 ppm NO3-N", Tells: "nitrogen",
		Givens: []string{"water-nitrogen.nitrate"}},
	{ID: "well-water", Group: "water", Unknown: "3 to 9 in", Tells: "nitrogen", Givens: []string{"water-nitrogen.water"}},
	{ID: "emitters", Group: Emitters, Unknown: "1 to 2 emitters/tree", Tells: "depth",
		Givens: []string{"water-applied.emitters"}},
	{ID: "flow", Group: Emitters, Unknown: "0.5 to 2 gal/h per emitter", Tells: "depth",
		Givens: []string{"water-applied.flow"}},
	{ID: "hours", Group: Emitters, Unknown: "100 to 300 h", Tells: "depth", Givens: []string{"water-applied.hours"}},

	{ID: "material", Group: "feeds",
		Givens: []string{"feed-schedule.material", "block-material.material", "material-amount.material",
			"injection.material"}},
	{ID: "first", Group: "feeds", Givens: []string{"feed-schedule.first"}},
	{ID: "last", Group: "feeds", Givens: []string{"feed-schedule.last"}},

	{ID: "trees-an-acre", Worked: "tree-density.trees", Givens: []string{"tree-rate.trees", "acre-rate.trees",
		"feed-schedule.trees", "water-applied.trees", "material-nitrogen.trees"}},
	{ID: "need", Worked: "tree-rate.nitrogen", Givens: []string{"season-budget.need"}},
	{ID: "in-soil", Worked: "soil-nitrogen.nitrogen", Givens: []string{"season-budget.soil"}},
	{ID: "in-water", Worked: "water-nitrogen.nitrogen", Givens: []string{"season-budget.water"}},
	{ID: "to-buy", Worked: "season-budget.apply", Givens: []string{"feed-schedule.nitrogen", "acre-rate.nitrogen",
		"material-amount.nitrogen", "material-compare.nitrogen"}},
	{ID: "feed", Worked: "feed-schedule.each-acre", Givens: []string{"injection.nitrogen"}},
	{ID: "feed-of-a-tree", Worked: "feed-schedule.each", Givens: []string{"root-share.rate"}},
	{ID: "feed-of-material", Worked: "feed-schedule.product", Givens: []string{"block-material.product"}},
	{ID: "feeds", Worked: "feed-schedule.feeds", Givens: []string{"block-material.feeds"}},
}

// BlockFacts lists what is known of a block, in the order in which a form asks for it.
func BlockFacts() []BlockFact { return append([]BlockFact(nil), blockFacts...) }

// OfBlock gives the fact that a given of a calculation stands for; nil for one that is of no block.
func OfBlock(calculation, given string) *BlockFact {
	for i := range blockFacts {
		for _, name := range blockFacts[i].Givens {
			if name == calculation+"."+given {
				return &blockFacts[i]
			}
		}
	}
	return nil
}

// WorkedOfBlock gives the fact that an answer of a calculation is; nil for none.
func WorkedOfBlock(calculation, answer string) *BlockFact {
	for i := range blockFacts {
		if blockFacts[i].Worked == calculation+"."+answer {
			return &blockFacts[i]
		}
	}
	return nil
}

// Label is what a form calls the fact in a language.
func (f *BlockFact) Label(language string) string {
	return words.OfBlock(language, "fact."+f.ID+".label")
}

// Hint is one line of help under it; "" for none.
func (f *BlockFact) Hint(language string) string {
	return words.OfBlock(language, "fact."+f.ID+".hint")
}

// Lacking says what is missing where the fact is not known, to begin a sentence: "No soil report".
func (f *BlockFact) Lacking(language string) string {
	return words.OfBlock(language, "fact."+f.ID+".unknown")
}

// BlockGroup names a part of the form in a language.
func BlockGroup(group, language string) string { return words.OfBlock(language, "group."+group) }

// Part parts "soil-nitrogen.nitrate" into the calculation and the name in it.
func (f *BlockFact) Part() (calculation, name string) {
	calculation, name, _ = strings.Cut(f.Givens[0], ".")
	return calculation, name
}
