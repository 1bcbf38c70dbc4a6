package nitrogen

import "acreleaf/calc/sheet"

// CropDemand is the nitrogen that trees take up in a season: what leaves with the crop and what growth keeps.
//
// What sources do not give for a crop is not made up: such a crop is refused until its grower puts the figure in.
var CropDemand = sheet.New("crop-demand", cropDemand)

func cropDemand(s *sheet.Sheet) {
	s.Head("What the trees will take up", "Adds the nitrogen that leaves with the crop to what growth keeps.")
	d := demandGivens(s)
	bears := d.yield.More(s.Zero("lb crop/ac"))
	g := d.usualGrowth(s)
	growth := s.Answer("tree-growth", "lb N/ac taken up", sheet.If(s.Stated(d.growth), d.growth, g.usual),
		sheet.Says{Label: "Kept by growth", Also: "kg N/ha taken up"})
	listed, least, most := removalTable(s, d.crop)
	rate := s.Step("removal-rate", "lb N per 1000 lb crop", sheet.If(s.Stated(d.removal), d.removal, listed),
		sheet.Says{Label: "Nitrogen in 1,000 lb of crop", Also: "lb N/ton crop", When: bears})
	removed := s.Answer("crop-removal", "lb N/ac taken up",
		sheet.If(bears, d.removed(s, bears, rate), s.Zero("lb N/ac taken up")),
		sheet.Says{Label: "Leaves with the crop", Also: "kg N/ha taken up"})
	demand := s.Answer("demand", "lb N/ac taken up", growth.Plus(removed),
		sheet.Says{Label: "What the trees will take up", Also: "kg N/ha taken up"})

	d.inWords(s, growth, removed, demand)
	d.refuse(s, bears)
	d.sayOfStep(s, g, bears, removed)
	s.Say(sheet.Note, d.crop.Is("pistachio").And(d.leaf.Less(s.Number(7))).And(s.Stated(d.growth).Not()),
		"The growth of pistachio was measured in mature trees. For young ones ask your advisor, and put in growth.")
	s.Say(sheet.Note, young(s, d.leaf).And(d.leaf.More(s.Number(1))).And(s.Stated(d.growth).Not()),
		"The usual growth is the same an acre for every leaf. For trees this young, turn what the budget says to apply "+
			"into ounces a tree with acre-rate, and put on no more than young trees are given.")
	s.Say(sheet.Note, g.fourth,
		"For walnuts in fourth to sixth leaf one published guide feeds 1 lb a tree for growth. That is fed, so it is not in "+
			"this growth, which is common practice. To go by it, work 1 lb a tree with tree-rate, and give its answer to "+
			"season-budget as a need that is fed.")
	s.Warn("check-numbers", bears.And(d.leaf.AtMost(s.Number(2))),
		"Trees in first or second leaf bear next to nothing. Are the leaf and the yield right?")
	s.Warn("check-numbers", s.Stated(d.removal).And(most.More(s.Zero("lb N per 1000 lb crop"))).
		And(d.removal.Less(least).Or(d.removal.More(most))),
		"Your figure for the nitrogen in the crop is outside what sources give. Is it for the weight that you put in? "+
			"Kernels weigh a good deal less than nuts in shell.")
	s.Say(sheet.Note, sheet.Always,
		"This is what trees take up, not what to buy. The season's budget turns it into what must be fed, and takes off "+
			"the credits.")
	d.slips(s, rate, growth, removed, demand)
}

// sayOfStep tells, on both sides of the almond crop above which no growth is added, what the other side gives.
func (d demandOf) sayOfStep(s *sheet.Sheet, g growthOf, bears, removed sheet.Term) {
	here := d.crop.Is("almond").And(bears).And(s.Stated(d.growth).Not())
	below := s.Step("growth-below", "lb N/ac taken up", g.later,
		sheet.Says{Label: "Growth at 2,000 lb or less", Also: "kg N/ha taken up", When: here.And(g.full)})
	s.Step("other-side", "lb N/ac taken up", sheet.If(g.full, removed.Plus(below), removed),
		sheet.Says{Label: "With the rule for the other side of 2,000 lb", Also: "kg N/ha taken up", When: here})
	s.Say(sheet.Note, here.And(g.full),
		"No growth is added: almonds over 2,000 lb of kernels an acre fill their space (common practice). At 2,000 lb or "+
			"less it is added, which would make this {other-side}. If your trees still grow, put in growth.")
	s.Say(sheet.Note, here.And(g.full.Not()),
		"Growth is added. For almonds over 2,000 lb of kernels an acre it is not (common practice), which would make this "+
			"{other-side}.")
}

// removed is what leaves with the crop. The yield has a step with the name of the form that it was taken to be weighed
// in, which the work and the sentence show.
func (d demandOf) removed(s *sheet.Sheet, bears, rate sheet.Term) sheet.Term {
	var sum sheet.Term
	for i, f := range formsOfCrops {
		of := f.of(d.crop)
		weight := s.Step(f.step, "lb crop/ac", d.yield.Term, sheet.Says{
			Label: "Crop you expect, " + f.said, Work: f.told, Also: "kg crop/ha", When: bears.And(of),
		})
		leaves := weight.Times(rate).CountedAs("taken up")
		if i == 0 {
			sum = leaves
			continue
		}
		sum = sheet.If(of, leaves, sum)
	}
	return sum
}

// inWords says what the trees take up, and for which weight of crop.
func (d demandOf) inWords(s *sheet.Sheet, growth, removed, demand sheet.Term) {
	cases := []sheet.Case{
		sheet.When(demand.IsNothing(), "Without a crop and without growth the trees are counted to take up nothing."),
		sheet.When(removed.IsNothing(), "The trees will take up {demand}, all of it to grow."),
	}
	for _, f := range formsOfCrops {
		crop := "{" + f.step + "} (" + f.told + ")"
		cases = append(cases, sheet.When(f.of(d.crop).And(growth.IsNothing()),
			"The trees will take up {demand}, all of it for "+crop+"."))
	}
	for i, f := range formsOfCrops {
		text := "The trees will take up {demand}: {crop-removal bare} for {" + f.step + "} (" + f.told +
			"), and {tree-growth bare} to grow."
		if i == len(formsOfCrops)-1 {
			cases = append(cases, sheet.Otherwise(text))
			continue
		}
		cases = append(cases, sheet.When(f.of(d.crop), text))
	}
	s.InWords("demand", cases...)
}

// demandOf is what is given for a demand.
type demandOf struct {
	crop, leaf, yield, growth, removal *sheet.Given
}

func demandGivens(s *sheet.Sheet) demandOf {
	crop := s.Choice("crop", crops(), sheet.Field{
		Label: "Crop", Hint: "It says what the yield is the weight of.",
	})
	return demandOf{
		crop: crop,
		leaf: s.Given("leaf", "", leafField(6)),
		yield: s.Given("yield", "lb crop/ac", sheet.Field{
			Written: "lb/ac",
			Label:   "Crop you expect", Hint: "Weighed as the crop says. Write 0 for trees that do not bear yet.",
			Typical: 1800, Low: 0, High: 15000, Units: []string{"tons crop/ac", "kg crop/ha"}, Forms: cropForms,
		}),
		growth: s.Given("growth", "lb N/ac taken up", sheet.Field{
			Label: "Growth, if you know it", Hint: "Nitrogen that new wood, roots and leaves keep. Empty: the usual figure.",
			Typical: 30, Low: 0, High: 200, Units: []string{"kg N/ha taken up"}, Optional: true,
			For: []*sheet.Given{crop},
		}),
		removal: s.Given("removal", "lb N per 1000 lb crop", sheet.Field{
			Label: "Nitrogen in the crop, if you know it", Hint: "From your own analysis. Empty: the published figure.",
			Typical: 68, Low: 1, High: 120, Units: []string{"lb N/ton crop", "kg N/t crop"}, Optional: true,
			Forms: cropForms,
			For:   []*sheet.Given{crop},
		}),
	}
}

// growthOf is what growth keeps when it is not given.
type growthOf struct {
	usual, later sheet.Term
	full, fourth sheet.Term // questions: whether almonds fill their space; whether walnuts are in fourth to sixth leaf
}

// usualGrowth is the growth that is taken when none is given.
func (d demandOf) usualGrowth(s *sheet.Sheet) growthOf {
	limit := s.Constant("full-crop", "2000 lb crop/ac", sheet.Fact{
		Label: "Almond crop above which no growth is added", Reads: "2,000 lb/ac",
		Sources: []string{"common-practice"}, Note: "In kernels.",
	})
	g := growthOf{later: growthTable(s, d.crop)}
	g.full = d.crop.Is("almond").And(d.yield.More(limit))
	g.fourth = d.crop.Is("walnut").And(d.leaf.AtLeast(s.Number(4))).And(d.leaf.AtMost(s.Number(6))).
		And(s.Stated(d.growth).Not())
	g.usual = sheet.If(g.full, s.Zero("lb N/ac taken up"), g.later)
	return g
}

// refuse says what no source gives, and that a leaf is a whole number.
func (d demandOf) refuse(s *sheet.Sheet, bears sheet.Term) {
	refuseLeaf(s, notALeaf(s, d.leaf))
	d.refuseForms(s)
	unknown := d.crop.Is("pecan").Or(d.crop.Is("hazelnut"))
	s.Refuse(unknown.And(bears).And(s.Stated(d.removal).Not()),
		"No published figure is known here for the nitrogen in pecans or hazelnuts. Put in your own as removal: from "+
			"your advisor, or from an analysis of the nuts.")
	first := d.leaf.AtMost(s.Number(1))
	s.Refuse(unknown.And(first.Not()).And(s.Stated(d.growth).Not()),
		"No published figure is known here for the growth of pecan or hazelnut trees. Put in your own as growth: from "+
			"your advisor, or ounces a tree times the trees on an acre.")
	s.Refuse(first.And(s.Stated(d.growth).Not()),
		"What a first-leaf tree takes up is published nowhere that we know: what guides print are ounces fed. "+
			"Work them with "+
			"tree-rate, and give its answer to season-budget as a need that is fed. If you do know what the trees take up, "+
			"put it in as growth.")
}

// refuseForms refuses a yield, or a figure for the nitrogen in a crop, that is told in another form than the one that
// the figure for the crop is for. No source at hand gives a share that makes one of the other.
func (d demandOf) refuseForms(s *sheet.Sheet) {
	for _, f := range formsOfCrops {
		other := func(g *sheet.Given) sheet.Term {
			told := []sheet.Term{}
			for _, form := range cropForms {
				if form != f.form {
					told = append(told, g.IsForm(form))
				}
			}
			return told[0].Or(told[1])
		}
		of := f.of(d.crop)
		s.Refuse(of.And(other(d.yield)), "The figure for this crop is for "+f.said+", and the yield is told in another "+
			"form. Write that weight as lb/ac, or as lb "+f.form+"/ac. No share that turns one form into the other is known "+
			"here.")
		s.Refuse(of.And(other(d.removal)), "The yield of this crop is in "+f.said+", and the nitrogen in it is told for "+
			"another form. Write it as lb N per 1000 lb crop, or as lb N per 1000 lb "+f.form+".")
	}
}

func (d demandOf) slips(s *sheet.Sheet, rate, growth, removed, demand sheet.Term) {
	s.Slip("growth-forgotten", "demand", removed,
		"That is what the crop takes away. The trees keep some nitrogen for growth too: add it.")
	s.Slip("crop-forgotten", "demand", growth,
		"That is what growth keeps. Add what leaves with the crop.")
	s.Slip("ton-for-thousand", "crop-removal", removed.Over(s.Number(2)),
		"A figure for 1,000 lb was taken for one of a ton. A ton is 2,000 lb.")
	s.Slip("thousand-for-ton", "crop-removal", removed.Times(s.Number(2)),
		"A figure for a ton was taken for one of 1,000 lb. A ton is 2,000 lb.")
	s.Slip("pounds-not-thousands", "crop-removal", d.yield.Times(rate).CountedAs("taken up").Times(s.Number(1000)),
		"The figure is for 1,000 lb of crop, so divide the yield by 1,000 first.")
	s.Slip("applied-for-taken", "demand", demand.Over(s.Number(0.7)),
		"That divides by an efficiency of 70 % already. The season's budget does that.")
}
