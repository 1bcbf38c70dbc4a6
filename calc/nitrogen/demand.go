package nitrogen

import "acreleaf/calc/sheet"

// CropDemand is the nitrogen that trees take up in a season: what leaves with the crop and what growth keeps.
//
// What sources do not give for a crop is not made up: such a crop is refused until its grower puts the figure in.
var CropDemand = sheet.New("crop-demand", cropDemand)

func cropDemand(s *sheet.Sheet) {
	d := demandGivens(s)
	bears := d.yield.More(s.Zero("lb crop/ac"))
	g := d.usualGrowth(s)
	growth := s.Answer("tree-growth", "lb N/ac taken up", sheet.If(s.Stated(d.growth), d.growth, g.usual),
		sheet.Says{Also: "kg N/ha taken up"})
	listed, least, most := removalTable(s, d.crop)
	rate := s.Step("removal-rate", "lb N per 1000 lb crop", sheet.If(s.Stated(d.removal), d.removal, listed),
		sheet.Says{Also: "lb N/ton crop", When: bears})
	removed := s.Answer("crop-removal", "lb N/ac taken up",
		sheet.If(bears, d.removed(s, bears, rate), s.Zero("lb N/ac taken up")), sheet.Says{Also: "kg N/ha taken up"})
	demand := s.Answer("demand", "lb N/ac taken up", growth.Plus(removed), sheet.Says{Also: "kg N/ha taken up"})

	d.inWords(s, growth, removed, demand)
	d.refuse(s, bears)
	d.sayOfStep(s, g, bears, removed)
	s.Say(sheet.Note, d.crop.Is("pistachio").And(d.leaf.Less(s.Number(7))).And(s.Stated(d.growth).Not()),
		"growth-of-pistachio")
	s.Say(sheet.Note, young(s, d.leaf).And(d.leaf.More(s.Number(1))).And(s.Stated(d.growth).Not()), "growth-of-young")
	s.Say(sheet.Note, g.fourth, "growth-of-walnut")
	s.Warn("check-numbers", bears.And(d.leaf.AtMost(s.Number(2))), "bears-early")
	s.Warn("check-numbers", s.Stated(d.removal).And(most.More(s.Zero("lb N per 1000 lb crop"))).
		And(d.removal.Less(least).Or(d.removal.More(most))), "removal-unusual")
	s.Say(sheet.Note, sheet.Always, "not-to-buy")
	d.slips(s, rate, growth, removed, demand)
}

// sayOfStep tells, on both sides of the almond crop above which no growth is added, what the other side gives.
func (d demandOf) sayOfStep(s *sheet.Sheet, g growthOf, bears, removed sheet.Term) {
	here := d.crop.Is("almond").And(bears).And(s.Stated(d.growth).Not())
	below := s.Step("growth-below", "lb N/ac taken up", g.later,
		sheet.Says{Also: "kg N/ha taken up", When: here.And(g.full)})
	s.Step("other-side", "lb N/ac taken up", sheet.If(g.full, removed.Plus(below), removed),
		sheet.Says{Also: "kg N/ha taken up", When: here})
	s.Say(sheet.Note, here.And(g.full), "no-growth-added")
	s.Say(sheet.Note, here.And(g.full.Not()), "growth-added")
}

// removed is what leaves with the crop. The yield has a step with the name of the form that it was taken to be weighed
// in, which the work and the sentence show.
func (d demandOf) removed(s *sheet.Sheet, bears, rate sheet.Term) sheet.Term {
	var sum sheet.Term
	for i, f := range formsOfCrops {
		of := f.of(d.crop)
		weight := s.Step(f.step, "lb crop/ac", d.yield.Term, sheet.Says{Also: "kg crop/ha", When: bears.And(of)})
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
		sheet.When(demand.IsNothing(), "nothing"),
		sheet.When(removed.IsNothing(), "only-growth"),
	}
	for _, f := range formsOfCrops {
		cases = append(cases, sheet.When(f.of(d.crop).And(growth.IsNothing()), "all-for-"+f.step))
	}
	for i, f := range formsOfCrops {
		said := "both-for-" + f.step
		if i == len(formsOfCrops)-1 {
			cases = append(cases, sheet.Otherwise(said))
			continue
		}
		cases = append(cases, sheet.When(f.of(d.crop), said))
	}
	s.InWords("demand", cases...)
}

// demandOf is what is given for a demand.
type demandOf struct {
	crop, leaf, yield, growth, removal *sheet.Given
}

func demandGivens(s *sheet.Sheet) demandOf {
	crop := s.Choice("crop", crops(), sheet.Field{})
	return demandOf{
		crop: crop,
		leaf: s.Given("leaf", "", leafField(6)),
		yield: s.Given("yield", "lb crop/ac", sheet.Field{
			Written: "lb/ac", Typical: 1800, Low: 0, High: 15000, Units: []string{"tons crop/ac", "kg crop/ha"},
			Forms: cropForms,
		}),
		growth: s.Given("growth", "lb N/ac taken up", sheet.Field{
			Typical: 30, Low: 0, High: 200, Units: []string{"kg N/ha taken up"}, Optional: true,
			For: []*sheet.Given{crop},
		}),
		removal: s.Given("removal", "lb N per 1000 lb crop", sheet.Field{
			Typical: 68, Low: 1, High: 120, Units: []string{"lb N/ton crop", "kg N/t crop"}, Optional: true,
			Forms: cropForms, For: []*sheet.Given{crop},
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
	g := d.growthByCrop(s)
	g.fourth = g.fourth.And(s.Stated(d.growth).Not())
	return g
}

// growthByCrop is the growth that is usual, whatever is given.
func (d demandOf) growthByCrop(s *sheet.Sheet) growthOf {
	limit := s.Constant("full-crop", "2000 lb crop/ac", sheet.Fact{
		Reads: "2,000 lb/ac", Sources: []string{"common-practice"},
	})
	g := growthOf{later: growthTable(s, d.crop)}
	g.full = d.crop.Is("almond").And(d.yield.More(limit))
	g.fourth = d.crop.Is("walnut").And(d.leaf.AtLeast(s.Number(4))).And(d.leaf.AtMost(s.Number(6)))
	g.usual = sheet.If(g.full, s.Zero("lb N/ac taken up"), g.later)
	return g
}

// refuse says what no source gives, and that a leaf is a whole number.
func (d demandOf) refuse(s *sheet.Sheet, bears sheet.Term) {
	refuseLeaf(s, notALeaf(s, d.leaf))
	d.refuseForms(s)
	unknown := d.crop.Is("pecan").Or(d.crop.Is("hazelnut"))
	s.Refuse(unknown.And(bears).And(s.Stated(d.removal).Not()), "removal-unknown")
	first := d.leaf.AtMost(s.Number(1))
	s.Refuse(unknown.And(first.Not()).And(s.Stated(d.growth).Not()), "growth-unknown")
	s.Refuse(first.And(s.Stated(d.growth).Not()), "first-leaf-unknown")
}

// refuseForms refuses a yield, or a figure for the nitrogen in a crop, that is given in another form than the one that
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
		s.Refuse(of.And(other(d.yield)), "yield-no-"+f.step)
		s.Refuse(of.And(other(d.removal)), "removal-no-"+f.step)
	}
}

func (d demandOf) slips(s *sheet.Sheet, rate, growth, removed, demand sheet.Term) {
	s.Slip("growth-forgotten", "demand", removed)
	s.Slip("crop-forgotten", "demand", growth)
	s.Slip("ton-for-thousand", "crop-removal", removed.Over(s.Number(2)))
	s.Slip("thousand-for-ton", "crop-removal", removed.Times(s.Number(2)))
	s.Slip("pounds-not-thousands", "crop-removal", d.yield.Times(rate).CountedAs("taken up").Times(s.Number(1000)))
	s.Slip("pounds-for-tons", "crop-removal", removed.Times(s.Number(2000)))
	s.Slip("applied-for-taken", "demand", demand.Over(s.Number(0.7)))
}
