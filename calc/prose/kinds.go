package prose

import (
	"slices"

	"acreleaf/calc/unit"
)

func isMass(symbol string) bool {
	return slices.Contains([]string{"lb", "oz", "ton", "kg", "g", "mg", "t", "$", "unit"}, symbol)
}

// isWeighed says whether a unit is one that a feed is weighed or poured by.
func isWeighed(symbol string) bool {
	return slices.Contains([]string{"lb", "oz", "ton", "kg", "g", "gal", "qt", "L"}, symbol)
}

func isLength(symbol string) bool {
	return slices.Contains([]string{"in", "ft", "yd", "m", "cm", "mm"}, symbol)
}

func isArea(symbol string) bool {
	return slices.Contains([]string{"ac", "ha", "ft2", "m2"}, symbol)
}

func isShare(symbol string) bool {
	return symbol == "%" || symbol == "ppm" || symbol == "ppb"
}

// IsPlainMeasure says whether a unit is a length, an area, a volume or a weight by itself, of nothing: what a size is
// told in.
func IsPlainMeasure(u unit.Unit) bool {
	symbol := u.String()
	return isLength(symbol) || isArea(symbol) || isMass(symbol) && symbol != "$" && symbol != "unit" ||
		slices.Contains([]string{"gal", "qt", "pt", "cup", "floz", "tbsp", "tsp", "L", "mL", "ft3", "yd3", "m3", "km", "mi",
			"bu", "ac-in", "ac-ft"}, symbol)
}
