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
	usual, full := d.usualGrowth(s)
	growth := s.Answer("tree-growth", "lb N/ac", sheet.If(s.Stated(d.growth), d.growth, usual),
		sheet.Says{Label: "Kept by growth", Also: "kg N/ha"})
	listed, least, most := removalTable(s, d.crop)
	rate := s.Step("removal-rate", "lb N per 1000 lb crop", sheet.If(s.Stated(d.removal), d.removal, listed),
		sheet.Says{Label: "Nitrogen in 1,000 lb of crop", Also: "lb N/ton crop", When: bears})
	removed := s.Answer("crop-removal", "lb N/ac", sheet.If(bears, d.yield.Times(rate), s.Zero("lb N/ac")),
		sheet.Says{Label: "Leaves with the crop", Also: "kg N/ha"})
	demand := s.Answer("demand", "lb N/ac", growth.Plus(removed),
		sheet.Says{Label: "What the trees will take up", Also: "kg N/ha"})

	d.refuse(s, bears)
	s.Say(sheet.Note, full,
		"No growth is added: almonds over 2,000 lb of kernels an acre fill their space (common practice). Just under that "+
			"line the answer is larger. If your trees still grow, put in growth.")
	s.Say(sheet.Note, d.crop.Is("pistachio").And(d.leaf.Less(s.Number(7))).And(s.Stated(d.growth).Not()),
		"The growth of pistachio was measured in mature trees. For young ones ask your advisor, and put in growth.")
	s.Warn("check-numbers", bears.And(d.leaf.AtMost(s.Number(2))),
		"Trees in first or second leaf bear next to nothing. Are the leaf and the yield right?")
	s.Warn("check-numbers", s.Stated(d.removal).And(most.More(s.Zero("lb N per 1000 lb crop"))).
		And(d.removal.Less(least).Or(d.removal.More(most))),
		"Your figure for the nitrogen in the crop is outside what sources give. Is it for the weight that you put in? "+
			"Kernels weigh a good deal less than nuts in shell.")
	s.Say(sheet.Note, sheet.Always,
		"This is what trees take up, not what to buy. Take off the credits, then divide by the share that is taken up.")
	d.slips(s, rate, growth, removed, demand)
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
		growth: s.Given("growth", "lb N/ac", sheet.Field{
			Label: "Growth, if you know it", Hint: "Nitrogen that new wood, roots and leaves keep. Empty: the usual figure.",
			Typical: 30, Low: 0, High: 200, Units: []string{"kg N/ha"}, Optional: true,
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

// usualGrowth is the growth that is taken when none is given, and whether it is nothing because the trees fill their
// space.
func (d demandOf) usualGrowth(s *sheet.Sheet) (usual, full sheet.Term) {
	limit := s.Constant("full-crop", "2000 lb crop/ac", sheet.Fact{
		Label: "Almond crop above which no growth is added", Reads: "2,000 lb/ac",
		Sources: []string{"common-practice"}, Note: "In kernels.",
	})
	first, later := growthTables(s, d.crop)
	above := d.crop.Is("almond").And(d.yield.More(limit))
	usual = sheet.If(above, s.Zero("lb N/ac"), sheet.If(d.leaf.AtMost(s.Number(1)), first, later))
	return usual, above.And(s.Stated(d.growth).Not())
}

// refuse says what no source gives, and that a leaf is a whole number.
func (d demandOf) refuse(s *sheet.Sheet, bears sheet.Term) {
	refuseLeaf(s, notALeaf(s, d.leaf))
	d.refuseForms(s)
	unknown := d.crop.Is("pecan").Or(d.crop.Is("hazelnut"))
	s.Refuse(unknown.And(bears).And(s.Stated(d.removal).Not()),
		"No published figure is known here for the nitrogen in pecans or hazelnuts. Put in your own as removal: from your "+
			"advisor, or from an analysis of the nuts.")
	s.Refuse(unknown.And(s.Stated(d.growth).Not()),
		"No published figure is known here for the growth of pecan or hazelnut trees. Put in your own as growth: from your "+
			"advisor, or ounces a tree times the trees on an acre.")
	s.Refuse(d.crop.Is("pistachio").And(d.leaf.AtMost(s.Number(1))).And(s.Stated(d.growth).Not()),
		"No published figure is known here for the growth of pistachio in first leaf. Put in your own as growth: from your "+
			"advisor, or ounces a tree times the trees on an acre.")
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
		of := d.crop.Is(f.crops[0])
		for _, crop := range f.crops[1:] {
			of = of.Or(d.crop.Is(crop))
		}
		s.Refuse(of.And(other(d.yield)), "The figure for this crop is for "+f.said+", and the yield is told in another "+
			"form. Write it as lb "+f.form+"/ac. No share that turns one form into the other is known here.")
		s.Refuse(of.And(other(d.removal)), "The yield of this crop is in "+f.said+", and the nitrogen in it is told for "+
			"another form. Write it as lb N per 1000 lb "+f.form+".")
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
	s.Slip("pounds-not-thousands", "crop-removal", d.yield.Times(rate).Times(s.Number(1000)),
		"The figure is for 1,000 lb of crop, so divide the yield by 1,000 first.")
	s.Slip("applied-for-taken", "demand", demand.Over(s.Number(0.7)),
		"That divides by an efficiency of 70 % already. Do that once, in the season's budget, after the credits.")
}
