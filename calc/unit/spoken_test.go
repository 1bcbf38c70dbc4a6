package unit_test

import (
	"testing"

	"acreleaf/calc/unit"
)

func TestUnitsInASentence(t *testing.T) {
	for _, c := range []struct {
		low, high  float64
		unit, want string
	}{
		{14.3, 14.3, "lb N/ac", "14.3 lb of nitrogen an acre"},
		{14.3, 14.3, "lb N/ac fed", "14.3 lb of nitrogen an acre"},
		{70, 70, "% taken up/fed", "70 %"},
		{3, 4, "oz N/tree", "3 to 4 oz of nitrogen a tree"},
		{16, 16, "kg N/ha", "16 kg of nitrogen a hectare"},
		{24.5, 24.5, "gal/ac", "24.5 gal an acre"},
		{94, 94, "lb product/ac", "94 lb of material an acre"},
		{19.7, 19.7, "$/ac", "$19.70 an acre"},
		{-2, -2, "$/ac", "-$2 an acre"},
		{0.66, 0.66, "$/lb N", "$0.66 a pound of nitrogen"},
		{2.27, 2.27, "lb N/ac per in", "2.27 lb of nitrogen an acre for each inch"},
		{110, 110, "trees/ac", "110 trees an acre"},
		{396, 396, "ft2/tree", "396 square feet a tree"},
		{3, 3, "gal/h", "3 gal an hour"},
		{53, 53, "lb CaCO3/ac", "53 lb of lime an acre"},
		{6, 6, "in", "6 in"},
		{1, 1, "days", "1 days"},
		{12, 12, "ppm NO3-N", "12 ppm NO3-N"},
		{70, 70, "%", "70 %"},
		{32, 32, "% N of product", "32 % N of product"},
		{2, 2, "", "2"},
		{9, 9, "lb N per 1000 lb crop", "9 lb N per 1000 lb crop"},
		{5, 5, "gal/s2", "5 gal/s2"},
		{5, 5, "ft·lb", "5 ft·lb"},
		{5, 5, "1/s", "5/s"},
		{5, 5, "m3/ha", "5 m3/ha"},
	} {
		r := unit.Range{Low: c.low, High: c.high, Unit: unit.MustParse(c.unit)}
		if got := r.Unit.Spoken(r.Numbers(), "en"); got != c.want {
			t.Errorf("%s is said as %q, want %q", r, got, c.want)
		}
	}
}

func TestUnitsInASentenceOfAnotherLanguage(t *testing.T) {
	for _, c := range []struct{ unit, language, want string }{
		{"lb N/ac fed", "es", "7 lb de nitrógeno por acre"},
		{"lb N/ac per in", "es", "7 lb de nitrógeno por acre por cada pulgada"},
		{"trees/ac", "es", "7 árboles por acre"},
		{"ft2/tree", "es", "7 pies cuadrados por árbol"},
		{"lb product/ac", "es", "7 lb de material por acre"},
		{"$/lb N", "es", "$7 por libra de nitrógeno"},
		{"ppm NO3-N", "es", "7 ppm NO3-N"},
		{"gal/h", "pt", "7 gal an hour"},
	} {
		if got := unit.MustParse(c.unit).Spoken("7", c.language); got != c.want {
			t.Errorf("%s is said in %s as %q, want %q", c.unit, c.language, got, c.want)
		}
	}
}
