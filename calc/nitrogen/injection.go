package nitrogen

import (
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// Injection fits one feed into a run of the water: how many gallons, how fast, how strong in the line, and whether
// clean water before and after it have their time.
var Injection = sheet.New("injection", injection)

// A run is the time that the water runs, and its parts.
type run struct {
	whole, clean, flush *sheet.Given
	window              sheet.Term // what is left to inject in
}

func injection(s *sheet.Sheet) {
	s.Head("Injecting a feed", "Turns a feed for a block into gallons, and into the speed of the injector.")
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Label: "Nitrogen in this feed", Hint: "One feed, not the season.",
		Typical: 5, Low: 0, High: 200, Units: []string{"kg N/ha fed"},
	})
	acres := s.Given("acres", "ac", sheet.Field{
		Label: "Size of the block", Hint: "What runs at once from this injector.",
		Typical: 20, Low: 0.1, High: 1000, Units: []string{"ha"},
	})
	grade := materialGiven(s)
	r := askRun(s)
	flow := s.Given("flow", "gpm", sheet.Field{
		Label: "Flow in the line, if you know it", Hint: "Read it off the meter. It gives the strength in the line.",
		Typical: 500, Low: 1, High: 20_000, Units: []string{"cfs", "L/s"}, Optional: true,
	})
	t := fromLabel(s, grade)
	feed := s.Step("feed", "lb N", nitrogen.Uncounted("lb N/ac").Times(acres),
		sheet.Says{Label: "Nitrogen for the block", Also: "kg N"})
	product := s.Step("product", "lb product", feed.Over(t.strength),
		sheet.Says{Label: "Material for the block", Also: "kg product"})
	volume := s.Answer("volume", "gal", product.Over(t.gallon),
		sheet.Says{Label: "Gallons for the block", Also: "L"})
	r.window = s.Answer("window", "h", r.whole.Minus(r.clean).Minus(r.flush),
		sheet.Says{Label: "Time to inject in", Also: "min"})
	s.Answer("rate", "gal/h", volume.Over(r.window), sheet.Says{Label: "Set the injector to", Also: "L/h"})
	water := s.Step("water", "gal", flow.Times(r.window),
		sheet.Says{Label: "Water that passes in that time", Also: "L", When: s.Stated(flow)})
	strong := s.Answer("concentration", "ppm N of water", feed.Over(water).Over(waterGallon(s)),
		sheet.Says{Label: "Nitrogen in the line", When: s.Stated(flow)})

	s.Refuse(t.unweighed,
		"No published weight of a gallon is at hand for this liquid. Put in the weight of a gallon from the delivery ticket.")
	s.Refuse(t.liquid.Not().And(t.unweighed.Not()),
		"This material is dry, and an injector takes a liquid. Choose a liquid, such as UAN-32. If you dissolved it, put in "+
			"the weight of a gallon and the nitrogen of the solution.")
	s.Refuse(t.has(fact.Pressure),
		"82-0-0 is a gas under pressure, and it does not go through an injector. Choose a material that is a liquid.")
	s.InWords("rate",
		sheet.When(volume.IsNothing(), "There is nothing to inject."),
		sheet.Otherwise("Inject {volume} in {window}: set the injector to {rate}."))

	t.careOfInjecting()
	warnOfStrength(s, s.Stated(flow), strong)
	r.check(s)

	r.slips(s, volume)
	s.Slip("one-acre", "volume", volume.Over(acres),
		"Those are the gallons for one acre. Multiply by the acres.")
	s.Slip("pounds-for-gallons", "volume", product,
		"Those are pounds of material. Divide by the weight of a gallon.")
	s.Slip("water-weight", "volume", product.Over(waterGallon(s)),
		"That takes a gallon at 8.35 lb, which is water. Divide by the weight of a gallon of this material.")
	s.Slip("minutes-for-hours", "concentration", strong.Times(s.Number(60)),
		"The flow is for a minute, and the time to inject is in hours. Multiply the flow by 60.")
	s.Slip("material-for-nitrogen", "concentration", strong.Over(t.strength.In("lb N/lb product")),
		"That is the material in the water. Only part of it is nitrogen.")
}

// careOfInjecting adds what a material must be kept from in a line, and what it has done to young trees.
func (t *tank) careOfInjecting() {
	t.careOfTank()
	t.noticeOther()
	t.s.Warn("backflow", sheet.Always, "")
	t.s.Mention("liquid-first-leaf", burnsYoung(t.grade), "")
}

// warnOfStrength warns of nitrogen in the line that is far above what is usual. known asks whether it is worked.
func warnOfStrength(s *sheet.Sheet, known, strong sheet.Term) {
	most := s.Constant("strong-line", "1000 ppm N of water", sheet.Fact{
		Label: "Nitrogen in the line that is far above what is usual", Sources: []string{"common-practice"},
		Note: "A few hundred ppm is usual.",
	})
	s.Warn("feed-burns", known.And(strong.More(most)),
		"The nitrogen in the line, {concentration}, is far above what is usual: a few hundred ppm (common practice). "+
			"Inject over a longer time.")
}
