package nitrogen_test

import (
	"math"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

func init() {
	amount, back, compare := nitrogen.MaterialAmount, nitrogen.MaterialNitrogen, nitrogen.MaterialCompare
	responses = append(responses,
		response{amount, "product", "nitrogen", 1}, response{amount, "product", "analysis", -1},
		response{amount, "cost", "price", 1}, response{amount, "per-nitrogen", "nitrogen", 0},
		response{amount, "per-nitrogen", "price", 1}, response{amount, "per-nitrogen", "analysis", -1},
		response{back, "nitrogen", "amount", 1}, response{back, "nitrogen", "analysis", 1},
		response{back, "nitrogen", "trees", 0}, response{back, "rate", "trees", -1},
		response{compare, "first-cost", "nitrogen", 1}, response{compare, "first-per-nitrogen", "nitrogen", 0},
		response{compare, "second-cost", "second-price", 1}, response{compare, "second-cost", "first-price", 0},
		response{compare, "third-per-nitrogen", "third-price", 1}, response{compare, "first-lime", "first-price", 0},
	)
	scalings = append(scalings,
		scaling{amount, "product", 1, []string{"nitrogen"}}, scaling{amount, "volume", 1, []string{"nitrogen"}},
		scaling{amount, "cost", 2, []string{"nitrogen", "price"}}, scaling{amount, "lime", 1, []string{"nitrogen"}},
		scaling{amount, "per-nitrogen", 1, []string{"price"}},
		scaling{back, "nitrogen", 1, []string{"amount"}}, scaling{back, "rate", -1, []string{"trees"}},
		scaling{compare, "second-cost", 2, []string{"nitrogen", "second-price"}},
		scaling{compare, "second-lime", 1, []string{"nitrogen"}},
	)
	situations = append(situations,
		situation{amount, []string{"nitrogen=30 lb N/ac", "material=UAN-32", "price=420 $/ton"}},
		situation{amount, []string{"nitrogen=25 lb N/ac", "material=UAN-28"}},
		situation{amount, []string{"nitrogen=12 lb N/ac", "material=CAN-17", "price=500 $/ton", "density=12.5 lb/gal"}},
		situation{amount, []string{"nitrogen=30 lb N/ac", "material=21-0-0-24S", "price=380 $/ton"}},
		situation{amount, []string{"nitrogen=4 lb N/ac", "material=20-0-0"}},
		situation{back, []string{"amount=65 lb/ac", "material=46-0-0", "trees=110 trees/ac"}},
		situation{back, []string{"amount=150 lb/ac", "material=UAN-32", "trees=141 trees/ac"}},
		situation{compare, []string{"nitrogen=30 lb N/ac", "first=UAN-32", "first-price=420 $/ton",
			"second=21-0-0-24S", "second-price=380 $/ton", "third=CAN-17", "third-price=450 $/ton"}},
	)
}

// materialNames lists the names of the materials.
func materialNames() []string {
	var names []string
	for _, o := range nitrogen.MaterialAmount.FindGiven("material").Choices {
		names = append(names, o.Name)
	}
	return names
}

// Nitrogen to material and back is where it started, in pounds and in gallons, with the lists' figures and the label's.
func TestAmountAndNitrogenAreInverse(t *testing.T) {
	r := random(t)
	amount := sheet.NewBench(nitrogen.MaterialAmount)
	back := sheet.NewBench(nitrogen.MaterialNitrogen)
	single := func(v float64, other bool) sheet.Entry { return sheet.Entry{Value: v, High: v, Other: other} }
	for range draws {
		entries := map[string]sheet.Entry{
			"nitrogen": single(200*r.Float64(), false),
			"material": single(float64(r.IntN(len(materialNames()))), false),
		}
		if r.IntN(2) == 0 {
			entries["analysis"] = single(5+77*r.Float64(), false)
			if r.IntN(2) == 0 {
				entries["density"] = single(5+10*r.Float64(), false)
			}
		}
		o, err := amount.Work(entries)
		if err != nil {
			t.Fatal(err)
		}
		want := entries["nitrogen"].Value
		delete(entries, "nitrogen")
		entries["trees"] = single(110, false)
		entries["amount"] = single(o.Value("product").Value, false)
		alikeAmount(t, back, entries, want)
		if o.There("volume") {
			entries["amount"] = single(o.Value("volume").Value, true)
			alikeAmount(t, back, entries, want)
		}
	}
}

func alikeAmount(t *testing.T, back *sheet.Bench, entries map[string]sheet.Entry, want float64) {
	t.Helper()
	o, err := back.Work(entries)
	if err != nil {
		t.Fatal(err)
	}
	alike(t, "nitrogen, material, nitrogen", want, o.Value("nitrogen").Value)
	alike(t, "nitrogen a tree", want*16/110, o.Value("rate").Value)
}

// A price for a gallon is the price for a ton of the same material.
func TestPriceOfAGallonIsThatOfATon(t *testing.T) {
	r := random(t)
	for _, material := range materialNames() {
		liquid := enter(t, nitrogen.MaterialAmount, onePound(material)...)
		if !liquid.There("volume") {
			continue
		}
		ton := 100 + 900*r.Float64()
		gallon := ton / 2000 * liquid.Value("gallon").Value
		for _, c := range []struct {
			s                   *sheet.Sheet
			price, answer, cost string
			givens              []string
		}{
			{nitrogen.MaterialAmount, "price", "per-nitrogen", "cost", []string{"nitrogen=30 lb N/ac", "material=" + material}},
			{nitrogen.MaterialCompare, "first-price", "first-per-nitrogen", "first-cost", []string{"nitrogen=30 lb N/ac",
				"first=" + material, "second=46-0-0", "second-price=500 $/ton", "third=none"}},
		} {
			byTon := enter(t, c.s, append(c.givens, c.price+"="+decimal(ton)+" $/ton")...)
			byGallon := enter(t, c.s, append(c.givens, c.price+"="+decimal(gallon)+" $/gal")...)
			alike(t, material+" by the pound", byTon.Value(c.answer).Value, byGallon.Value(c.answer).Value)
			alike(t, material+" by the acre", byTon.Value(c.cost).Value, byGallon.Value(c.cost).Value)
		}
	}
}

// What one sheet says of a material, the one that compares says too.
func TestComparedIsAsAlone(t *testing.T) {
	r := random(t)
	for _, first := range materialNames() {
		second := materialNames()[r.IntN(len(materialNames()))]
		o := enter(t, nitrogen.MaterialCompare, "nitrogen=30 lb N/ac", "first="+first, "first-price=410 $/ton",
			"second="+second, "second-price=520 $/ton", "third="+first, "third-price=410 $/ton")
		for place, material := range map[string]string{"first": first, "second": second, "third": first} {
			price := map[string]string{"first": "410", "second": "520", "third": "410"}[place]
			alone := enter(t, nitrogen.MaterialAmount, "nitrogen=30 lb N/ac", "material="+material, "price="+price+" $/ton")
			for compared, own := range map[string]string{"per-nitrogen": "per-nitrogen", "cost": "cost", "lime": "lime"} {
				alike(t, place+" "+material+" "+own, o.Value(place+"-"+compared).Value, alone.Value(own).Value)
			}
		}
	}
}

// A heavier gallon takes fewer gallons, and the same pounds.
func TestGallonsFollowTheirWeight(t *testing.T) {
	light := enter(t, nitrogen.MaterialAmount, onePound("UAN-32", "density=11 lb/gal")...)
	heavy := enter(t, nitrogen.MaterialAmount, onePound("UAN-32", "density=11.5 lb/gal")...)
	if light.Value("product").Value != heavy.Value("product").Value {
		t.Error("the pounds of material change with the weight of a gallon")
	}
	alike(t, "gallons by weight", light.Value("volume").Value*11, heavy.Value("volume").Value*11.5)
}

// A third material that is none leaves its answers out, and nothing of it is said.
func TestNoThirdMaterialIsLeftOut(t *testing.T) {
	two := enter(t, nitrogen.MaterialCompare, compared("UAN-32")...)
	for _, r := range nitrogen.MaterialCompare.Answers() {
		if there := two.There(r.Name); there == (r.Name[:5] == "third") {
			t.Errorf("without a third material %s is there: %v", r.Name, there)
		}
	}
}

func TestNoNitrogenTakesNoMaterial(t *testing.T) {
	for _, material := range materialNames() {
		o := enter(t, nitrogen.MaterialAmount, "nitrogen=0 lb N/ac", "material="+material, "price=400 $/ton")
		for _, name := range []string{"product", "volume", "cost"} {
			if v := o.Value(name).Value; v != 0 {
				t.Errorf("no nitrogen takes %v of %s in %s", v, material, name)
			}
		}
		if v := o.Value("per-nitrogen").Value; !(v > 0) {
			t.Errorf("a pound of nitrogen of %s costs %v", material, v)
		}
	}
}

// A range that is given comes out as the range between its ends.
func TestMaterialOfARange(t *testing.T) {
	o := enter(t, nitrogen.MaterialAmount, "nitrogen=25 to 35 lb N/ac", "material=UAN-32", "price=400 to 450 $/ton")
	for name, want := range map[string]unit.Range{
		"product": {Low: 25 / 0.32, High: 35 / 0.32}, "volume": {Low: 25 / 0.32 / 11.06, High: 35 / 0.32 / 11.06},
		"cost": {Low: 25 / 0.32 * 0.2, High: 35 / 0.32 * 0.225}, "per-nitrogen": {Low: 0.2 / 0.32, High: 0.225 / 0.32},
	} {
		got := o.Range(name)
		if math.Abs(got.Low-want.Low) > 1e-12*want.Low || math.Abs(got.High-want.High) > 1e-12*want.High {
			t.Errorf("%s is %v to %v, want %v to %v", name, got.Low, got.High, want.Low, want.High)
		}
	}
}

func TestMaterialsThatAreRefused(t *testing.T) {
	solution := "This material is dry, so it has no weight of a gallon: leave that line empty. If you dissolved it, put " +
		"in the nitrogen of the solution as well, from its label."
	for _, c := range []struct {
		sheet  *sheet.Sheet
		givens []string
		want   string
	}{
		{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac", "material=46-0-0", "price=3 $/gal"},
			"The price is for a gallon, and this material is dry. Write the price of a ton, such as 400 $/ton."},
		{nitrogen.MaterialAmount, onePound("46-0-0", "density=9.5 lb/gal"), solution},
		{nitrogen.MaterialNitrogen, []string{"amount=8 gal/ac", "material=13-0-46", "trees=110 trees/ac"},
			"The amount is in gallons, and this material is dry. Write it in pounds, such as 90 lb/ac. If it was dissolved, " +
				"put in the weight of a gallon and the nitrogen of the solution."},
		{nitrogen.MaterialCompare, []string{"nitrogen=30 lb N/ac", "first=46-0-0", "first-price=3 $/gal",
			"second=UAN-32", "second-price=3 $/gal", "third=none"},
			"The price of the first material is for a gallon, and the material is dry. Write the price of a ton, such as 400 " +
				"$/ton."},
		{nitrogen.MaterialAmount, []string{"nitrogen=30 lb N/ac", "material=15-0-0-16S", "price=3 $/gal"},
			"The price is for a gallon, and no published weight of a gallon is at hand for this liquid. Put in the weight of " +
				"a gallon from the delivery ticket, or write the price of a ton, such as 400 $/ton."},
		{nitrogen.MaterialNitrogen, []string{"amount=8 gal/ac", "material=15-0-0-16S", "trees=110 trees/ac"},
			"The amount is in gallons, and no published weight of a gallon is at hand for this liquid. Put in the weight of a " +
				"gallon from the delivery ticket."},
		{nitrogen.MaterialCompare, []string{"nitrogen=30 lb N/ac", "first=15-0-0-16S", "first-price=3 $/gal",
			"second=UAN-32", "second-price=3 $/gal", "third=none"},
			"The price of the first material is for a gallon, and no published weight of a gallon is at hand for it. Write " +
				"the price of a ton, such as 400 $/ton."},
	} {
		refusedWith(t, c.sheet, c.givens, c.want)
	}
}
