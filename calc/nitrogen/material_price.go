package nitrogen

import "acreleaf/calc/sheet"

// priceField asks for the price of a material, by the ton or by the gallon.
func priceField(typical float64, of *sheet.Given) sheet.Field {
	return sheet.Field{
		Written: "$/ton", Typical: typical, Low: 1, High: 10_000, Optional: true, For: []*sheet.Given{of},
		Units: []string{"$/lb", "$/t"}, Else: sheet.Other{Unit: "$/gal", Low: 0.01, High: 100},
	}
}
