package said

import "slices"

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
