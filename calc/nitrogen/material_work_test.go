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
			"share of nitrogen = listed for this material = 32 % N of product",
			"weight of a gallon = listed for this material = 11.06 lb product/gal",
			"product = nitrogen ÷ share of nitrogen = 30 lb N/ac fed ÷ 32 % N of product = 93.75 lb product/ac",
			"volume = product ÷ weight of a gallon = 93.75 lb product/ac ÷ 11.06 lb product/gal = 8.48 gal/ac",
			"nitrogen in a gallon = weight of a gallon × share of nitrogen = 11.06 lb product/gal × 32 % N of " +
				"product = 3.54 lb N/gal",
			"cost = product × price ÷ 2,000 = 93.75 lb product/ac × $420/ton ÷ 2,000 = $19.69/ac",
			"cost of a pound of N = price ÷ 2,000 ÷ share of nitrogen = $420/ton ÷ 2,000 ÷ 32 % N of product = $0.66/lb N",
			"difference = the size of (nitrogen in a gallon ÷ 3 lb N/gal − 1) = the size of (3.5392 lb N/gal ÷ " +
				"3 lb N/gal − 1) = 18 %",
			"lime for a pound of N = listed for this material = 1.78 lb CaCO3/lb N",
			"lime = nitrogen × lime for a pound of N = 30 lb N/ac fed × 1.78 lb CaCO3/lb N = 53.4 lb CaCO3/ac"}},
		{situation{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac fed", "material=CAN-17", "analysis=17.5 % N",
			"density=12.5 lb/gal", "price=3 $/gal"}}, []string{
			"share of nitrogen = analysis = 17.5 % N = 17.5 % N of product",
			"weight of a gallon = density = 12.5 lb/gal = 12.5 lb product/gal",
			"product = nitrogen ÷ share of nitrogen = 30 lb N/ac fed ÷ 17.5 % N of product = 171 lb product/ac",
			"volume = product ÷ weight of a gallon = 171 lb product/ac ÷ 12.5 lb product/gal = 13.7 gal/ac",
			"nitrogen in a gallon = weight of a gallon × share of nitrogen = 12.5 lb product/gal × 17.5 % N of " +
				"product = 2.19 lb N/gal",
			"cost = volume × price = 13.714 gal/ac × $3/gal = $41.14/ac",
			"cost of a pound of N = price ÷ nitrogen in a gallon = $3/gal ÷ 2.1875 lb N/gal = $1.37/lb N",
			"lime for a pound of N = listed for this material = 0.53 lb CaCO3/lb N",
			"lime = nitrogen × lime for a pound of N = 30 lb N/ac fed × 0.53 lb CaCO3/lb N = 15.9 lb CaCO3/ac"}},
		{situation{nitrogen.MaterialNitrogen, []string{"amount=8 gal/ac", "material=UAN-28", "trees=110 trees/ac"}}, []string{
			"share of nitrogen = listed for this material = 28 % N of product",
			"weight of a gallon = listed for this material = 10.67 lb product/gal",
			"product = amount × weight of a gallon = 8 gal/ac × 10.67 lb product/gal = 85.4 lb product/ac",
			"nitrogen = product × share of nitrogen = 85.36 lb product/ac × 28 % N of product = 23.9 lb N/ac fed",
			"rate = nitrogen × 16 oz/lb ÷ trees = 23.9 lb N/ac fed × 16 oz/lb ÷ 110 trees/ac = 3.48 oz N/tree fed"}},
		{situation{nitrogen.MaterialCompare, []string{"nitrogen=30 lb N/ac", "first=CAN-17", "first-price=3 $/gal",
			"second=46-0-0", "second-price=560 $/ton", "third=none"}}, []string{
			"first share of nitrogen = listed for this material = 17 % N of product",
			"first weight of a gallon = listed for this material = 12.6 lb product/gal",
			"first cost of a pound of N = first price ÷ first weight of a gallon ÷ first share of nitrogen = " +
				"$3/gal ÷ 12.6 lb product/gal ÷ 17 % N of product = $1.40/lb N",
			"second share of nitrogen = listed for this material = 46 % N of product",
			"second cost of a pound of N = second price ÷ 2,000 ÷ second share of nitrogen = $560/ton ÷ 2,000 ÷ " +
				"46 % N of product = $0.61/lb N",
			"first cost of an acre = nitrogen × first cost of a pound of N = 30 lb N/ac fed × $1.4006/lb N = $42.02/ac",
			"second cost of an acre = nitrogen × second cost of a pound of N = 30 lb N/ac fed × $0.6087/lb N = $18.26/ac",
			"first nitrate share = listed for this material = 66 %", "first ammonium share = listed for this material = 34 %",
			"first urea share = listed for this material = 0 %", "second nitrate share = listed for this material = 0 %",
			"second ammonium share = listed for this material = 0 %", "second urea share = listed for this material = 100 %",
			"first lime for a pound of N = listed for this material = 0.53 lb CaCO3/lb N",
			"first lime to make up for it = nitrogen × first lime for a pound of N = 30 lb N/ac fed × 0.53 lb " +
				"CaCO3/lb N = 15.9 lb CaCO3/ac",
			"second lime for a pound of N = listed for this material = 1.8 lb CaCO3/lb N",
			"second lime to make up for it = nitrogen × second lime for a pound of N = 30 lb N/ac fed × 1.8 lb " +
				"CaCO3/lb N = 54 lb CaCO3/ac"}},
		{situation{nitrogen.Injection, feedOf("AN-20", "6 h", "2 h", "90 min", "flow=500 gpm")}, []string{
			"share of nitrogen = listed for this material = 20 % N of product",
			"weight of a gallon = listed for this material = 10.6 lb product/gal",
			"feed = nitrogen × acres = 5 lb N/ac fed × 20 ac = 100 lb N",
			"product = feed ÷ share of nitrogen = 100 lb N ÷ 20 % N of product = 500 lb product",
			"volume = product ÷ weight of a gallon = 500 lb product ÷ 10.6 lb product/gal = 47.2 gal",
			"window = run − clean ÷ 60 − flush ÷ 60 = 6 h − 120 min ÷ 60 − 90 min ÷ 60 = 2.5 h",
			"rate = volume ÷ window = 47.2 gal ÷ 2.5 h = 18.9 gal/h",
			"water = flow × window × 60 = 500 gpm × 2.5 h × 60 = 75,000 gal",
			"concentration = feed ÷ water ÷ 8.3454 lb/gal = 100 lb N ÷ 75,000 gal ÷ 8.3454 lb/gal = 160 ppm N of water",
			"a third of the run = run ÷ 3 × 60 = 6 h ÷ 3 × 60 = 120 min"}},
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
				"price-multiplied": 0.21 * 0.32, "metric-ton": product * 420 / 2204.6226}},
		// 2.212 $/gal is 0.2 $ for each of the 11.06 lb.
		{situation{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac", "material=UAN-32", "price=2.212 $/gal"}},
			map[string]float64{"nitrogen-for-product": 30, "share-multiplied": 9.6, "percent-as-number": 30.0 / 32,
				"pounds-for-gallons": product, "water-weight": product / 8.3454, "three-pounds": 10,
				"nitrogen-priced": 6, "product-priced": 0.2, "price-multiplied": 0.2 * 0.32}},
		{situation{nitrogen.MaterialNitrogen, []string{"amount=90 lb/ac", "material=UAN-32", "trees=110 trees/ac"}},
			map[string]float64{"product-for-nitrogen": 90, "share-divided": 90 / 0.32, "percent-as-number": 2880,
				"pounds-for-ounces": 28.8 / 110, "not-shared": 28.8 * 16, "material-ounces": 90 * 16.0 / 110}},
		{situation{nitrogen.MaterialNitrogen, []string{"amount=9 gal/ac", "material=UAN-32", "trees=110 trees/ac"}},
			map[string]float64{"product-for-nitrogen": 99.54, "share-divided": 99.54 / 0.32, "percent-as-number": 3185.28,
				"water-weight": 9 * 8.3454 * 0.32, "pounds-for-ounces": 31.8528 / 110, "not-shared": 31.8528 * 16,
				"material-ounces": 99.54 * 16 / 110, "fluid-ounces": 9 * 128.0 / 110}},
		{situation{nitrogen.MaterialCompare, []string{"nitrogen=30 lb N/ac", "first=UAN-32", "first-price=420 $/ton",
			"second=46-0-0", "second-price=560 $/ton", "third=none"}},
			map[string]float64{"first-product-priced": 0.21, "first-price-multiplied": 0.21 * 0.32,
				"second-product-priced": 0.28, "second-price-multiplied": 0.28 * 0.46, "first-lime-of-a-pound": 1.78,
				"first-lime-of-material": product * 1.78, "second-lime-of-a-pound": 1.8,
				"second-lime-of-material": 30 / 0.46 * 1.8}},
		{situation{nitrogen.Injection, feedOf("UAN-32", "6 h", "2 h", "1 h", "flow=500 gpm")},
			map[string]float64{"one-acre": 5 / 0.32 / 11.06, "pounds-for-gallons": 312.5, "water-weight": 312.5 / 8.3454,
				"whole-run": 312.5 / 11.06 / 6, "rate-of-one-acre": 312.5 / 11.06 / 3 / 20, "rate-in-minutes": 312.5 / 11.06 / 180,
				"no-flush-in-rate": 312.5 / 11.06 / 4, "no-flush": 4,
				"minutes-for-hours":     100 / 90_000.0 / 8.3454 * 1e6 * 60,
				"material-for-nitrogen": 312.5 / 90_000.0 / 8.3454 * 1e6}},
	} {
		slipsByHand(t, c.situation, c.want)
	}
}
