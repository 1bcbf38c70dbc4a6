package nitrogen

import "acreleaf/calc/sheet"

// BlockMaterial turns one feed of an acre into what is loaded and bought for a block.
var BlockMaterial = sheet.New("block-material", blockMaterial)

func blockMaterial(s *sheet.Sheet) {
	product := s.Given("product", "lb product/ac", sheet.Field{
		Typical: 25, Low: 0, High: 50_000, Units: []string{"kg product/ha"},
	})
	feeds := s.Given("feeds", "", sheet.Field{Typical: 3, Low: 0, High: 400})
	acres := s.Given("acres", "ac", sheet.Field{Typical: 20, Low: 0.1, High: 1000, Units: []string{"ha"}})
	grade := materialGiven(s)
	density := s.Given("density", "lb product/gal", sheet.Field{
		Written: "lb/gal", Typical: 11, Low: 4, High: 16, Units: []string{"kg/L"}, Optional: true,
		For: []*sheet.Given{grade},
	})
	weighed := s.Lookup("weighed", "lb product/gal", grade, figuresOf(grade, (*material).weight))
	liquid := weighed.More(s.Zero("lb product/gal")).Or(s.Stated(density))
	gallon := s.Step("gallon", "lb product/gal", sheet.If(s.Stated(density), density, listedGallon(s, grade)),
		sheet.Says{Also: "kg product/L", When: liquid})
	each := s.Answer("each", "lb product", product.Times(acres), sheet.Says{Also: "kg product"})
	all := s.Answer("all", "lb product", each.Times(feeds), sheet.Says{Also: "kg product"})
	s.Answer("each-volume", "gal", each.Over(gallon), sheet.Says{Also: "L", When: liquid})
	s.Answer("volume", "gal", all.Over(gallon), sheet.Says{Also: "L", When: liquid})

	s.InWords("all",
		sheet.When(all.IsNothing(), "nothing"),
		sheet.When(liquid, "gallons"),
		sheet.Otherwise("pounds"))

	s.Slip("one-acre", "all", product.Times(feeds))
	s.Slip("one-feed", "all", each)
	s.Slip("pounds-for-gallons", "volume", all)
	s.Slip("water-weight", "volume", all.Over(waterGallon(s)))
}
