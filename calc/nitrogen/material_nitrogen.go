package nitrogen

import "acreleaf/calc/sheet"

// MaterialNitrogen says what nitrogen an amount of material carries; it is MaterialAmount the other way round.
var MaterialNitrogen = sheet.New("material-nitrogen", materialNitrogen)

func materialNitrogen(s *sheet.Sheet) {
	amount := s.Given("amount", "lb product/ac", sheet.Field{
		Written: "lb/ac", Typical: 90, Low: 0, High: 50_000, Units: []string{"tons product/ac", "kg/ha"},
		Else: sheet.Other{Unit: "gal/ac", Low: 0, High: 5000},
	})
	grade := materialGiven(s)
	trees := treesGiven(s)
	t := fromLabel(s, grade)
	weight := s.Step("product", "lb product/ac",
		sheet.If(amount.IsOther(), amount.AsOther().Times(t.gallon), amount), sheet.Says{Also: "kg product/ha"})
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", weight.Times(t.strength).CountedAs("fed"),
		sheet.Says{Also: "kg N/ha fed"})
	ounces := ouncesInPound(s)
	rate := s.Answer("rate", "oz N/tree fed", nitrogen.Times(ounces).Over(trees), sheet.Says{Also: "g N/tree fed"})
	s.Refuse(amount.IsOther().And(t.unweighed), "amount-unweighed")
	s.Refuse(amount.IsOther().And(t.liquid.Not()).And(t.unweighed.Not()), "amount-dry")

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "nothing"),
		sheet.Otherwise("nitrogen"))

	underPressure(s, t.has)
	t.careOfTank()
	t.noticeWeight()
	warnOfFeed(s, rate, nil)
	s.Say(sheet.Note, amount.IsOther(), "warm-gallon")

	s.Slip("product-for-nitrogen", "nitrogen", weight)
	s.Slip("share-divided", "nitrogen", weight.Over(t.strength.In("lb N/lb product")))
	s.Slip("percent-as-number", "nitrogen", nitrogen.Times(s.Number(100)))
	s.SlipWhen(amount.IsOther(), "water-weight", "nitrogen",
		amount.AsOther().Times(waterGallon(s)).Times(t.strength.In("lb N/lb product")))
	s.Slip("pounds-for-ounces", "rate", rate.Over(s.Number(16)))
	s.Slip("not-shared", "rate", nitrogen.Times(ounces))
	s.Slip("material-ounces", "rate", weight.Times(ounces).Over(trees))
	s.SlipWhen(amount.IsOther(), "fluid-ounces", "rate",
		amount.AsOther().Times(s.Number(128)).Over(trees))
}
