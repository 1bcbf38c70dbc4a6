package nitrogen_test

import (
	"slices"
	"testing"

	"acreleaf/calc/nitrogen"
)

// The work of the materials must read as it would on the back of an envelope.
func TestWorkOfMaterialsReadsAsAGrowerWouldWriteIt(t *testing.T) {
	for _, c := range []struct {
		situation
		work []string
	}{
		{situation{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac", "material=UAN-32", "price=420 $/ton"}}, []string{
			"strength = figure for the material = 32 % N of product",
			"gallon = figure for the material = 11.1 lb product/gal",
			"product = nitrogen ÷ strength = 30 lb N/ac ÷ 32 % N of product = 93.8 lb product/ac",
			"volume = product ÷ gallon = 93.8 lb product/ac ÷ 11.1 lb product/gal = 8.48 gal/ac",
			"in gallon = gallon × strength = 11.1 lb product/gal × 32 % N of product = 3.54 lb N/gal",
			"cost = product × price ÷ 2000 = 93.8 lb product/ac × $420/ton ÷ 2000 = $19.7/ac",
			"per nitrogen = price ÷ 2000 ÷ strength = $420/ton ÷ 2000 ÷ 32 % N of product = $0.656/lb N",
			"apart = the size of (in gallon ÷ 3 lb N/gal − 1) = the size of (3.54 lb N/gal ÷ 3 lb N/gal − 1) = 18 %",
			"lime each = figure for the material = 1.78 lb CaCO3/lb N",
			"lime = nitrogen × lime each = 30 lb N/ac × 1.78 lb CaCO3/lb N = 53.4 lb CaCO3/ac"}},
		{situation{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac", "material=CAN-17", "analysis=17.5 % N",
			"density=12.5 lb/gal", "price=3 $/gal"}}, []string{
			"strength = analysis = 17.5 % N = 17.5 % N of product",
			"gallon = density = 12.5 lb/gal = 12.5 lb product/gal",
			"product = nitrogen ÷ strength = 30 lb N/ac ÷ 17.5 % N of product = 171 lb product/ac",
			"volume = product ÷ gallon = 171 lb product/ac ÷ 12.5 lb product/gal = 13.7 gal/ac",
			"in gallon = gallon × strength = 12.5 lb product/gal × 17.5 % N of product = 2.19 lb N/gal",
			"cost = volume × price = 13.7 gal/ac × $3/gal = $41.1/ac",
			"per nitrogen = price ÷ in gallon = $3/gal ÷ 2.19 lb N/gal = $1.37/lb N",
			"lime each = figure for the material = 0.53 lb CaCO3/lb N",
			"lime = nitrogen × lime each = 30 lb N/ac × 0.53 lb CaCO3/lb N = 15.9 lb CaCO3/ac"}},
		{situation{nitrogen.MaterialNitrogen, []string{"amount=8 gal/ac", "material=UAN-28", "trees=110 trees/ac"}}, []string{
			"strength = figure for the material = 28 % N of product",
			"gallon = figure for the material = 10.6 lb product/gal",
			"product = amount × gallon = 8 gal/ac × 10.6 lb product/gal = 84.8 lb product/ac",
			"nitrogen = product × strength = 84.8 lb product/ac × 28 % N of product = 23.7 lb N/ac",
			"rate = nitrogen × 16 oz/lb ÷ trees = 23.7 lb N/ac × 16 oz/lb ÷ 110 trees/ac = 3.45 oz N/tree"}},
		{situation{nitrogen.MaterialCompare, []string{"nitrogen=30 lb N/ac", "first=CAN-17", "first-price=3 $/gal",
			"second=46-0-0", "second-price=560 $/ton", "third=none"}}, []string{
			"first strength = figure for the material = 17 % N of product",
			"first gallon = figure for the material = 12.6 lb product/gal",
			"first per nitrogen = first price ÷ first gallon ÷ first strength = " +
				"$3/gal ÷ 12.6 lb product/gal ÷ 17 % N of product = $1.4/lb N",
			"second strength = figure for the material = 46 % N of product",
			"second per nitrogen = second price ÷ 2000 ÷ second strength = " +
				"$560/ton ÷ 2000 ÷ 46 % N of product = $0.609/lb N",
			"first cost = nitrogen × first per nitrogen = 30 lb N/ac × $1.4/lb N = $42/ac",
			"second cost = nitrogen × second per nitrogen = 30 lb N/ac × $0.609/lb N = $18.3/ac",
			"first nitrate = figure for the material = 68 %", "first ammonium = figure for the material = 32 %",
			"first urea = figure for the material = 0 %", "second nitrate = figure for the material = 0 %",
			"second ammonium = figure for the material = 0 %", "second urea = figure for the material = 100 %",
			"first lime each = figure for the material = 0.53 lb CaCO3/lb N",
			"first lime = nitrogen × first lime each = 30 lb N/ac × 0.53 lb CaCO3/lb N = 15.9 lb CaCO3/ac",
			"second lime each = figure for the material = 1.8 lb CaCO3/lb N",
			"second lime = nitrogen × second lime each = 30 lb N/ac × 1.8 lb CaCO3/lb N = 54 lb CaCO3/ac"}},
		{situation{nitrogen.Injection, feedOf("AN-20", "6 h", "2 h", "90 min", "flow=500 gpm")}, []string{
			"strength = figure for the material = 20 % N of product",
			"gallon = figure for the material = 10.6 lb product/gal",
			"feed = nitrogen × acres = 5 lb N/ac × 20 ac = 100 lb N",
			"product = feed ÷ strength = 100 lb N ÷ 20 % N of product = 500 lb product",
			"volume = product ÷ gallon = 500 lb product ÷ 10.6 lb product/gal = 47.2 gal",
			"window = run − clean ÷ 60 − flush ÷ 60 = 6 h − 120 min ÷ 60 − 90 min ÷ 60 = 2.5 h",
			"rate = volume ÷ window = 47.2 gal ÷ 2.5 h = 18.9 gal/h",
			"water = flow × window × 60 = 500 gpm × 2.5 h × 60 = 75,000 gal",
			"concentration = feed ÷ water ÷ 8.345 lb/gal = 100 lb N ÷ 75,000 gal ÷ 8.345 lb/gal = 160 ppm N of water",
			"third = run ÷ 3 × 60 = 6 h ÷ 3 × 60 = 120 min"}},
	} {
		if got := enter(t, c.sheet, c.givens...).Work(); !slices.Equal(got, c.work) {
			t.Errorf("%s of %v:\n got  %q\n want %q", c.sheet.Name, c.givens, got, c.work)
		}
	}
}

// Each slip is what a grower who makes it would get on the back of an envelope.
func TestSlipsOfMaterialsByHand(t *testing.T) {
	const product = 30 / 0.32 // pounds of UAN-32 for 30 lb of nitrogen
	for _, c := range []struct {
		situation
		want map[string]float64
	}{
		{situation{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac", "material=UAN-32", "price=420 $/ton"}},
			map[string]float64{"nitrogen-for-product": 30, "share-multiplied": 9.6, "percent-as-number": 30.0 / 32,
				"pounds-for-gallons": product, "water-weight": product / 8.3454, "three-pounds": 10,
				"ton-for-pound": product * 420, "nitrogen-priced": 30 * 0.21, "product-priced": 0.21,
				"price-multiplied": 0.21 * 0.32}},
		{situation{nitrogen.MaterialNitrogen, []string{"amount=90 lb/ac", "material=UAN-32", "trees=110 trees/ac"}},
			map[string]float64{"product-for-nitrogen": 90, "share-divided": 90 / 0.32, "percent-as-number": 2880,
				"water-weight": 90 * 8.3454 * 0.32, "pounds-for-ounces": 28.8 / 110, "not-shared": 28.8 * 16}},
		{situation{nitrogen.MaterialCompare, []string{"nitrogen=30 lb N/ac", "first=UAN-32", "first-price=420 $/ton",
			"second=46-0-0", "second-price=560 $/ton", "third=none"}},
			map[string]float64{"first-product-priced": 0.21, "first-price-multiplied": 0.21 * 0.32,
				"second-product-priced": 0.28, "second-price-multiplied": 0.28 * 0.46, "first-lime-of-a-pound": 1.78,
				"first-lime-of-material": product * 1.78, "second-lime-of-a-pound": 1.8,
				"second-lime-of-material": 30 / 0.46 * 1.8}},
		{situation{nitrogen.Injection, feedOf("UAN-32", "6 h", "2 h", "1 h", "flow=500 gpm")},
			map[string]float64{"one-acre": 5 / 0.32 / 11.06, "pounds-for-gallons": 312.5, "water-weight": 312.5 / 8.3454,
				"whole-run": 312.5 / 11.06 / 6, "no-flush-in-rate": 312.5 / 11.06 / 4, "no-flush": 4,
				"minutes-for-hours":     100 / 90_000.0 / 8.3454 * 1e6 * 60,
				"material-for-nitrogen": 312.5 / 90_000.0 / 8.3454 * 1e6}},
	} {
		slipsByHand(t, c.situation, c.want)
	}
}
