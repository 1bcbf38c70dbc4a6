package nitrogen

import "acreleaf/calc/sheet"

// MaterialAmount says how much of a material carries an amount of nitrogen, and what it costs.
var MaterialAmount = sheet.New("material-amount", materialAmount)

func materialAmount(s *sheet.Sheet) {
	s.Head("How much material", "Turns pounds of nitrogen into pounds and gallons of a material, and into dollars.")
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Label: "Nitrogen to put on", Hint: "Pounds of nitrogen, not of material.",
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha fed"},
	})
	pounds := nitrogen.Uncounted("lb N/ac")
	grade := materialGiven(s)
	asked := priceField("Price of the material", "Leave it empty if you do not need the cost.", 400)
	asked.Optional, asked.For = true, []*sheet.Given{grade}
	price := s.Given("price", "$/ton product", asked)
	t := fromLabel(s, grade)
	product := s.Answer("product", "lb product/ac", pounds.Over(t.strength),
		sheet.Says{Label: "Material for an acre", Also: "kg product/ha"})
	volume := s.Answer("volume", "gal/ac", product.Over(t.gallon),
		sheet.Says{Label: "Gallons for an acre", Also: "L/ha", When: t.liquid})
	inGallon := s.Step("in-gallon", "lb N/gal", t.gallon.Times(t.strength),
		sheet.Says{Label: "Nitrogen in a gallon", Work: "nitrogen in a gallon", Also: "kg N/L", When: t.liquid})
	cost := s.Answer("cost", "$/ac", sheet.If(price.IsOther(), volume.Times(price.AsOther()), product.Times(price)),
		sheet.Says{Label: "Cost of an acre", Also: "$/ha", When: s.Stated(price)})
	s.Answer("per-nitrogen", "$/lb N",
		sheet.If(price.IsOther(), price.AsOther().Over(inGallon), price.In("$/lb product").Over(t.strength)),
		sheet.Says{Label: "Cost of a pound of nitrogen", Work: "cost of a pound of N", Also: "$/kg N", When: s.Stated(price)})
	s.Refuse(price.IsOther().And(t.unweighed),
		"The price is for a gallon, and no published weight of a gallon is at hand for this liquid. Put in the weight of a "+
			"gallon from the delivery ticket, or write the price of a ton, such as 400 $/ton.")
	s.Refuse(price.IsOther().And(t.liquid.Not()).And(t.unweighed.Not()),
		"The price is for a gallon, and this material is dry. Write the price of a ton, such as 400 $/ton.")

	s.InWords("product",
		sheet.When(nitrogen.IsNothing(), "There is nothing to put on."),
		sheet.When(t.liquid.And(s.Stated(price)), "Put on {product}, which is {volume}. It costs {cost}."),
		sheet.When(t.liquid, "Put on {product}, which is {volume}."),
		sheet.When(s.Stated(price), "Put on {product}. It costs {cost}."),
		sheet.Otherwise("Put on {product}."))

	underPressure(s, t.has)
	t.careOfTank()
	t.noticeWeight()
	t.fieldRule(inGallon)
	t.storing()
	t.souring(pounds)

	share := t.strength.In("lb N/lb product")
	s.Slip("nitrogen-for-product", "product", pounds,
		"That is the nitrogen. The material is only partly nitrogen: divide by its share.")
	s.Slip("share-multiplied", "product", pounds.Times(share),
		"Divide by the share of nitrogen: it takes more material than nitrogen, not less.")
	s.Slip("percent-as-number", "product", product.Over(s.Number(100)),
		"The percent was taken as a whole number. 32 % is 0.32.")
	gallonSlips(s, product, pounds)
	s.Slip("ton-for-pound", "cost", cost.Times(s.Number(2000)),
		"The price is for a ton, and this takes it for a pound. Divide by 2,000.")
	s.Slip("nitrogen-priced", "cost", pounds.Times(price).Over(s.Number(2000)),
		"That prices the nitrogen as if it were the material. Price the pounds of material.")
	s.Slip("product-priced", "per-nitrogen", price.In("$/lb product"),
		"That is the price of a pound of material. Only part of it is nitrogen: divide by its share.")
	s.Slip("price-multiplied", "per-nitrogen", price.In("$/lb product").Times(share),
		"Divide the price by the share of nitrogen. A pound of nitrogen costs more than a pound of material.")
}

// gallonSlips are the wrong ways from pounds to gallons.
func gallonSlips(s *sheet.Sheet, product, nitrogen sheet.Term) {
	s.Slip("pounds-for-gallons", "volume", product,
		"Those are pounds of material. Divide by the weight of a gallon.")
	s.Slip("water-weight", "volume", product.Over(waterGallon(s)),
		"That takes a gallon at 8.35 lb, which is water. Divide by the weight of a gallon of this material.")
	s.Slip("three-pounds", "volume", nitrogen.Over(threePounds(s)),
		"That is the field rule of 3 lb of nitrogen in a gallon. Use the weight and the nitrogen of this material.")
}
