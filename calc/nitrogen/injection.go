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
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Typical: 5, Low: 0, High: 200, Units: []string{"kg N/ha fed"},
	})
	acres := s.Given("acres", "ac", sheet.Field{Typical: 20, Low: 0.1, High: 1000, Units: []string{"ha"}})
	grade := materialGiven(s)
	r := askRun(s)
	flow := s.Given("flow", "gpm", sheet.Field{
		Typical: 500, Low: 1, High: 20_000, Units: []string{"cfs", "L/s"}, Optional: true,
	})
	t := fromLabel(s, grade)
	feed := s.Step("feed", "lb N", nitrogen.Uncounted("lb N/ac").Times(acres), sheet.Says{Also: "kg N"})
	product := s.Step("product", "lb product", feed.Over(t.strength), sheet.Says{Also: "kg product"})
	volume := s.Answer("volume", "gal", product.Over(t.gallon), sheet.Says{Also: "L"})
	r.window = s.Answer("window", "h", r.whole.Minus(r.clean).Minus(r.flush), sheet.Says{Also: "min"})
	rate := s.Answer("rate", "gal/h", volume.Over(r.window), sheet.Says{Also: "L/h"})
	water := s.Step("water", "gal", flow.Times(r.window), sheet.Says{Also: "L", When: s.Stated(flow)})
	strong := s.Answer("concentration", "ppm N of water", feed.Over(water).Over(waterGallon(s)),
		sheet.Says{When: s.Stated(flow)})

	s.Refuse(t.unweighed, "weight-unknown")
	s.Refuse(t.liquid.Not().And(t.unweighed.Not()), "dry")
	s.Refuse(t.has(fact.Pressure), "gas")
	s.InWords("rate",
		sheet.When(volume.IsNothing(), "nothing"),
		sheet.Otherwise("inject"))

	t.careOfInjecting()
	warnOfStrength(s, s.Stated(flow), strong)
	r.check(s)

	r.slips(s, volume)
	s.Slip("one-acre", "volume", volume.Over(acres))
	s.Slip("rate-of-one-acre", "rate", rate.Over(acres))
	s.Slip("rate-in-minutes", "rate", rate.Over(s.Number(60)))
	s.Slip("pounds-for-gallons", "volume", product)
	s.Slip("water-weight", "volume", product.Over(waterGallon(s)))
	s.Slip("minutes-for-hours", "concentration", strong.Times(s.Number(60)))
	s.Slip("material-for-nitrogen", "concentration", strong.Over(t.strength.In("lb N/lb product")))
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
	most := s.Constant("strong-line", "1000 ppm N of water", sheet.Fact{Sources: []string{"common-practice"}})
	s.Warn("feed-burns", known.And(strong.More(most)), "strong-line")
}
