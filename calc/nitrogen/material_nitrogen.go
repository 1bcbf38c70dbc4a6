package nitrogen

import "acreleaf/calc/sheet"

// MaterialNitrogen says what nitrogen an amount of material carries; it is MaterialAmount the other way round.
var MaterialNitrogen = sheet.New("material-nitrogen", materialNitrogen)

func materialNitrogen(s *sheet.Sheet) {
	s.Head("Nitrogen in a material", "Turns pounds or gallons of a material into pounds of nitrogen and ounces a tree.")
	amount := s.Given("amount", "lb product/ac", sheet.Field{
		Written: "lb/ac", Label: "Material put on an acre", Hint: "In pounds, or in gallons of a liquid.",
		Typical: 90, Low: 0, High: 50_000, Units: []string{"tons product/ac", "kg/ha"},
		Else: sheet.Other{Unit: "gal/ac", Low: 0, High: 5000},
	})
	grade := materialGiven(s)
	trees := treesGiven(s)
	t := fromLabel(s, grade)
	weight := s.Step("product", "lb product/ac",
		sheet.If(amount.IsOther(), amount.AsOther().Times(t.gallon), amount),
		sheet.Says{Label: "Weight of the material", Also: "kg product/ha"})
	nitrogen := s.Answer("nitrogen", "lb N/ac fed", weight.Times(t.strength).CountedAs("fed"),
		sheet.Says{Label: "Nitrogen for an acre", Also: "kg N/ha fed"})
	ounces := ouncesInPound(s)
	rate := s.Answer("rate", "oz N/tree fed", nitrogen.Times(ounces).Over(trees),
		sheet.Says{Label: "Nitrogen for one tree", Also: "g N/tree fed"})
	s.Refuse(amount.IsOther().And(t.unweighed),
		"The amount is in gallons, and no published weight of a gallon is at hand for this liquid. Put in the weight of a "+
			"gallon from the delivery ticket.")
	s.Refuse(amount.IsOther().And(t.liquid.Not()).And(t.unweighed.Not()),
		"The amount is in gallons, and this material is dry. Write it in pounds, such as 90 lb/ac. If it was dissolved, "+
			"put in the weight of a gallon and the nitrogen of the solution.")

	s.InWords("nitrogen",
		sheet.When(nitrogen.IsNothing(), "This puts on no nitrogen."),
		sheet.Otherwise("This puts on {nitrogen}, which is {rate}."))

	underPressure(s, t.has)
	t.careOfTank()
	t.noticeWeight()
	warnOfFeed(s, rate, nil)
	s.Say(sheet.Note, amount.IsOther(),
		"A gallon is taken at {gallon}. A warm gallon weighs a little less than a cold one.")

	s.Slip("product-for-nitrogen", "nitrogen", weight,
		"That is the material. Only part of it is nitrogen: multiply by its share.")
	s.Slip("share-divided", "nitrogen", weight.Over(t.strength.In("lb N/lb product")),
		"Multiply by the share of nitrogen: there is less nitrogen than material, not more.")
	s.Slip("percent-as-number", "nitrogen", nitrogen.Times(s.Number(100)),
		"The percent was taken as a whole number. 32 % is 0.32.")
	s.Slip("water-weight", "nitrogen",
		amount.AsOther().Times(waterGallon(s)).Times(t.strength.In("lb N/lb product")),
		"That takes a gallon at 8.35 lb, which is water. Multiply gallons by the weight of a gallon of this material.")
	s.Slip("pounds-for-ounces", "rate", rate.Over(s.Number(16)),
		"That is pounds a tree. Multiply by 16 for ounces.")
	s.Slip("not-shared", "rate", nitrogen.Times(ounces),
		"Those are the ounces on the acre. Divide by the trees.")
}
