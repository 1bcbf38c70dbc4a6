package fact

import (
	"slices"
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
	Tells   string // the answer that says what not knowing it costs: "soil-nitrogen.nitrogen"
	Once    bool   // of one sample: a second worksheet of the same calculation may be of another layer

	// Else says that other facts count in its place where it is left empty. It has a sentence for that where Tells says
	// what they come to.
	Else bool

	// Hazard is one that the range it counts as unknown only just reaches. Nobody knows then whether it is there, so a
	// page says that, and what to do (Untested), in the place of the warning.
	Hazard string

	Later string // what it counts as unknown in trees that are older than first leaf; "" for the same

	First bool // what it counts as unknown is for first leaf; of older trees what Else has counts

	Worked string // the answer that it is: "tree-density.trees"; of one that is asked, where it is left empty
}

// Folded are the parts of the form that are another way to know what is asked elsewhere.
var Folded = []string{"older", "emitters"}

// blockFacts are in the order in which a form asks for them.
var blockFacts = []BlockFact{
	{ID: "crop", Group: "trees", Givens: []string{"block-need.crop", "crop-demand.crop", "leaf-level.crop"}},
	{ID: "leaf", Group: "trees", Unknown: "1",
		Givens: []string{"feed-schedule.leaf", "block-need.leaf", "tree-rate.leaf", "acre-rate.leaf", "crop-demand.leaf"}},
	{ID: "tree", Group: "trees", Unknown: "18 to 22 ft", Tells: "block-trees.trees",
		Givens: []string{"tree-density.tree"}},
	{ID: "row", Group: "trees", Unknown: "20 to 26 ft", Tells: "block-trees.trees",
		Givens: []string{"tree-density.row"}},
	{ID: "pattern", Group: "trees", Givens: []string{"tree-density.pattern"}},
	{ID: "counted", Group: "trees", Else: true, Givens: []string{"block-trees.count"}},
	{ID: "acres", Group: "trees", Unknown: "1 ac",
		Givens: []string{"block-trees.acres", "block-material.acres", "injection.acres"}},
	{ID: "rate", Group: "trees", Unknown: "3 to 4 oz N/tree fed", Tells: "block-need.season", Else: true, First: true,
		Worked: "block-need.season", Givens: []string{"block-need.rate", "tree-rate.rate"}},
	{ID: "yield", Group: "older", Else: true, Givens: []string{"block-need.yield", "crop-demand.yield"}},
	{ID: "efficiency", Group: "older", Unknown: "50 to 80 %",
		Givens: []string{"block-need.efficiency"}},

	{ID: "soil-nitrate", Group: "soil", Unknown: "0 to 10 ppm NO3-N", Tells: "soil-nitrogen.nitrogen", Once: true,
		Givens: []string{"soil-nitrogen.nitrate"}},
	{ID: "soil-depth", Group: "soil", Unknown: "6 to 12 in", Tells: "soil-nitrogen.nitrogen", Once: true,
		Givens: []string{"soil-nitrogen.depth"}},
	{ID: "reach", Group: "soil", Unknown: "0 to 10 %", Later: "3 to 100 %", Tells: "season-budget.in-reach",
		Givens: []string{"season-budget.reach"}},

	{ID: "well-nitrate", Group: "water", Unknown: "0 to 10 ppm NO3-N", Tells: "water-nitrogen.nitrogen",
		Hazard: "drinking-water", Givens: []string{"water-nitrogen.nitrate"}},
	{ID: "well-water", Group: "water", Unknown: "3 to 9 in", Tells: "water-applied.depth", Else: true,
		Worked: "water-applied.depth", Givens: []string{"water-applied.known", "water-nitrogen.water"}},
	{ID: "emitters", Group: "emitters", Unknown: "1 to 2 emitters/tree", Tells: "water-applied.depth",
		Givens: []string{"water-applied.emitters"}},
	{ID: "flow", Group: "emitters", Unknown: "0.5 to 2 gal/h per emitter", Tells: "water-applied.depth",
		Givens: []string{"water-applied.flow"}},
	{ID: "hours", Group: "emitters", Unknown: "100 to 1500 h", Tells: "water-applied.depth",
		Givens: []string{"water-applied.hours"}},

	{ID: "material", Group: "feeds",
		Givens: []string{"feed-schedule.material", "block-material.material", "material-amount.material",
			"injection.material"}},
	{ID: "first", Group: "feeds", Givens: []string{"feed-schedule.first"}},
	{ID: "last", Group: "feeds", Givens: []string{"feed-schedule.last"}},

	{ID: "trees-an-acre", Worked: "block-trees.trees", Givens: []string{"tree-rate.trees", "acre-rate.trees",
		"block-need.trees", "feed-schedule.trees", "water-applied.trees", "material-nitrogen.trees"}},
	{ID: "need", Worked: "block-need.nitrogen", Givens: []string{"season-budget.need"}},
	{ID: "in-soil", Worked: "soil-nitrogen.nitrogen", Givens: []string{"season-budget.soil"}},
	{ID: "in-water", Worked: "water-nitrogen.nitrogen", Givens: []string{"season-budget.water"}},
	{ID: "to-buy", Worked: "season-budget.apply", Givens: []string{"feed-schedule.nitrogen", "acre-rate.nitrogen",
		"material-amount.nitrogen", "material-compare.nitrogen"}},
	{ID: "feed", Worked: "feed-schedule.each-acre", Givens: []string{"injection.nitrogen"}},
	{ID: "feed-of-a-tree", Worked: "feed-schedule.each", Givens: []string{"root-share.rate"}},
	{ID: "feed-of-material", Worked: "feed-schedule.product", Givens: []string{"block-material.product"}},
	{ID: "feeds", Worked: "feed-schedule.feeds", Givens: []string{"block-material.feeds"}},
}

// ofSeason are givens that only the page about one block takes from a fact, which is of a season: in a guide they are
// of one irrigation.
var ofSeason = []string{"water-applied.hours", "water-applied.known"}

// InGuides says whether a given that stands for a fact of a block stands for it in guides too.
func InGuides(given string) bool { return !slices.Contains(ofSeason, given) }

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

// Instead says what counts where the fact is left empty, to begin a sentence; "" for one that has no such.
func (f *BlockFact) Instead(language string) string {
	return words.OfBlock(language, "fact."+f.ID+".empty")
}

// Untested says what to do while the fact is not known; "" for one with no hazard.
func (f *BlockFact) Untested(language string) string {
	return words.OfBlock(language, "fact."+f.ID+".untested")
}

// BlockGroup names a part of the form in a language.
func BlockGroup(group, language string) string { return words.OfBlock(language, "group."+group) }

// Part parts "soil-nitrogen.nitrate" into the calculation and the name in it.
func (f *BlockFact) Part() (calculation, name string) {
	calculation, name, _ = strings.Cut(f.Givens[0], ".")
	return calculation, name
}
