package nitrogen

import "acreleaf/calc/sheet"

// BlockNeed is what the trees of a block are fed in a season, all sources together: the rate for a tree where one is
// known, and else what its crop and its growth take up, over the share of a feed that is taken up.
//
// What sources do not give for a crop or for first leaf is not made up: a rate is asked for.
var BlockNeed = sheet.New("block-need", blockNeed)

func blockNeed(s *sheet.Sheet) {
	crop := s.Choice("crop", crops(), sheet.Field{})
	leaf := s.Given("leaf", "", leafField(6))
	trees := treesGiven(s)
	rate := s.Given("rate", "oz N/tree fed", sheet.Field{
		Typical: 3, Low: 0, High: 80, Optional: true, For: []*sheet.Given{crop},
		Units: []string{"lb N/tree fed", "g N/tree fed", "kg N/tree fed"},
	})
	yield := s.Given("yield", "lb crop/ac", sheet.Field{
		Written: "lb/ac", Typical: 1800, Low: 0, High: 15000, Units: []string{"tons crop/ac", "kg crop/ha"}, Optional: true,
	})
	efficiency := s.Given("efficiency", "% taken up/fed", sheet.Field{
		Written: "%", Typical: 70, Low: 10, High: 100,
	})
	told, ounces := s.Stated(rate), ouncesInPound(s)
	worked, bears := told.Not(), yield.More(s.Zero("lb crop/ac"))
	usual := demandOf{crop: crop, leaf: leaf, yield: yield}.growthByCrop(s)
	growth := s.Step("tree-growth", "lb N/ac taken up", usual.usual, sheet.Says{Also: "kg N/ha taken up", When: worked})
	share := s.Step("removal-rate", "lb N per 1000 lb crop", removalOfCrop(s, crop),
		sheet.Says{Also: "lb N/ton crop", When: worked.And(bears)})
	removed := s.Step("crop-removal", "lb N/ac taken up", sheet.If(bears, yield.Times(share).CountedAs("taken up"),
		s.Zero("lb N/ac taken up")),
		sheet.Says{Also: "kg N/ha taken up", When: worked.And(bears)})
	fed := s.Step("fed-need", "lb N/ac fed", growth.Plus(removed).Over(efficiency),
		sheet.Says{Also: "kg N/ha fed", When: worked})
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", sheet.If(told, rate.Times(trees).Over(ounces), fed),
		sheet.Says{Also: "kg N/ha fed"})
	season := s.Answer("season", "oz N/tree fed", sheet.If(told, rate.Term, fed.Times(ounces).Over(trees)),
		sheet.Says{Also: "g N/tree fed"})

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "none"),
		sheet.When(told, "rate"),
		sheet.When(removed.IsNothing(), "growth"),
		sheet.Otherwise("crop"))

	n := needOf{crop: crop, leaf: leaf, yield: yield, told: told, fourth: usual.fourth}
	n.refuse(s)
	sayOfSeason(s, leaf, told.Or(worked), season, "season")
	s.Say(sheet.Note, told, "rate-used")
	n.sayOfCrop(s)

	s.SlipWhen(told, "ounces-for-pounds", "nitrogen", nitrogen.Times(s.Number(16)))
	s.SlipWhen(told, "one-tree", "nitrogen", season.Over(ounces))
	s.SlipWhen(worked.And(bears), "growth-forgotten", "nitrogen", removed.Over(efficiency))
	s.SlipWhen(worked.And(bears), "crop-forgotten", "nitrogen", growth.Over(efficiency))
}

// needOf is what a need is known from.
type needOf struct {
	crop, leaf, yield *sheet.Given
	told, fourth      sheet.Term // questions: whether a rate is known; whether walnuts are in fourth to sixth leaf
}

// refuse says what is not known for a crop and a leaf.
func (n needOf) refuse(s *sheet.Sheet) {
	refuseLeaf(s, notALeaf(s, n.leaf))
	first := n.leaf.AtMost(s.Number(1))
	unknown := n.crop.Is("pecan").Or(n.crop.Is("hazelnut"))
	s.Refuse(n.told.Not().And(first), "first-leaf")
	s.Refuse(n.told.Not().And(first.Not()).And(unknown), "crop-unknown")
}

// sayOfCrop tells what the need of a crop was worked from.
func (n needOf) sayOfCrop(s *sheet.Sheet) {
	worked, bears := n.told.Not(), n.yield.More(s.Zero("lb crop/ac"))
	s.Warn("check-numbers", worked.And(bears).And(n.leaf.AtMost(s.Number(2))), "bears-early")
	s.Say(sheet.Note, worked.And(bears.Not()), "no-crop")
	s.Say(sheet.Note, worked.And(n.crop.Is("pistachio")).And(n.leaf.Less(s.Number(7))), "growth-of-pistachio")
	s.Say(sheet.Note, worked.And(young(s, n.leaf)), "growth-of-young")
	s.Say(sheet.Note, worked.And(n.fourth), "growth-of-walnut")
}
