package nitrogen

import "acreleaf/calc/sheet"

// MaterialAmount says how much of a material carries an amount of nitrogen, and what it costs.
var MaterialAmount = sheet.New("material-amount", materialAmount)

func materialAmount(s *sheet.Sheet) {
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha fed"},
	})
	pounds := nitrogen.Uncounted("lb N/ac")
	grade := materialGiven(s)
	price := s.Given("price", "$/ton product", priceField(400, grade))
	t := fromLabel(s, grade)
	product := s.Answer("product", "lb product/ac", pounds.Over(t.strength), sheet.Says{Also: "kg product/ha"})
	volume := s.Answer("volume", "gal/ac", product.Over(t.gallon), sheet.Says{Also: "L/ha", When: t.liquid})
	inGallon := s.Step("in-gallon", "lb N/gal", t.gallon.Times(t.strength),
		sheet.Says{Also: "kg N/L", When: t.liquid})
	cost := s.Answer("cost", "$/ac", sheet.If(price.IsOther(), volume.Times(price.AsOther()), product.Times(price)),
		sheet.Says{Also: "$/ha", When: s.Stated(price)})
	s.Answer("per-nitrogen", "$/lb N",
		sheet.If(price.IsOther(), price.AsOther().Over(inGallon), price.In("$/lb product").Over(t.strength)),
		sheet.Says{Also: "$/kg N", When: s.Stated(price)})
	s.Refuse(price.IsOther().And(t.unweighed), "price-unweighed")
	s.Refuse(price.IsOther().And(t.liquid.Not()).And(t.unweighed.Not()), "price-dry")

	s.InWords("product",
		sheet.When(nitrogen.IsNothing(), "nothing"),
		sheet.When(t.liquid.And(s.Stated(price)), "gallons-cost"),
		sheet.When(t.liquid, "gallons"),
		sheet.When(s.Stated(price), "pounds-cost"),
		sheet.Otherwise("pounds"))

	underPressure(s, t.has)
	t.careOfTank()
	t.noticeWeight()
	t.fieldRule(inGallon)
	t.storing()
	t.souring(pounds)

	share := t.strength.In("lb N/lb product")
	s.Slip("nitrogen-for-product", "product", pounds)
	s.Slip("share-multiplied", "product", pounds.Times(share))
	s.Slip("percent-as-number", "product", product.Over(s.Number(100)))
	gradeSlips(s, grade, pounds)
	gallonSlips(s, product, pounds)
	t.priceSlips(price, pounds, cost)
}

// gradeSlips are the ways to take another number of the grade for that of nitrogen: the second, of phosphate, or the
// last, of potash, sulfur or calcium.
func gradeSlips(s *sheet.Sheet, choice *sheet.Given, nitrogen sheet.Term) {
	for i, name := range [...]string{"phosphate-for-nitrogen", "last-for-nitrogen"} {
		number := s.Lookup(name, "% N of product", choice,
			figuresOf(choice, func(m *material) float64 { return m.otherNumbers()[i] }))
		s.SlipWhen(number.More(s.Zero("% N of product")), name, "product", nitrogen.Over(number))
	}
}

// gallonSlips are the wrong ways from pounds to gallons.
func gallonSlips(s *sheet.Sheet, product, nitrogen sheet.Term) {
	s.Slip("pounds-for-gallons", "volume", product)
	s.Slip("water-weight", "volume", product.Over(waterGallon(s)))
	s.Slip("three-pounds", "volume", nitrogen.Over(threePounds(s)))
}

// priceSlips are the wrong ways from a price to a cost, and to the cost of a pound of nitrogen.
func (t *tank) priceSlips(price *sheet.Given, nitrogen, cost sheet.Term) {
	s := t.s
	byTon := price.IsOther().Not()
	s.SlipWhen(byTon, "ton-for-pound", "cost", cost.Times(s.Number(2000)))
	s.SlipWhen(byTon, "metric-ton", "cost", cost.Times(s.Amount(1, "ton").Over(s.Amount(1, "t"))))
	pound := price.In("$/lb product")
	ofGallon := price.AsOther().Over(t.gallon)
	share := t.strength.In("lb N/lb product")
	s.Slip("nitrogen-priced", "cost", sheet.If(byTon, nitrogen.Times(pound), nitrogen.Times(ofGallon)))
	s.Slip("product-priced", "per-nitrogen", sheet.If(byTon, pound, ofGallon))
	s.Slip("price-multiplied", "per-nitrogen", sheet.If(byTon, pound.Times(share), ofGallon.Times(share)))
}
