package nitrogen

import "acreleaf/calc/sheet"

// priceField asks for the price of a material, by the ton or by the gallon.
func priceField(label, hint string, typical float64) sheet.Field {
	return sheet.Field{
		Written: "$/ton", Label: label, Hint: hint, Typical: typical, Low: 1, High: 10_000,
		Units: []string{"$/lb", "$/t"}, Else: sheet.Other{Unit: "$/gal", Low: 0.01, High: 100},
	}
}
