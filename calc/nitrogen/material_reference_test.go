package nitrogen_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"acreleaf/calc/internal/reference"
	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// onePound asks for a pound of nitrogen from a material, so that an answer is what a pound of nitrogen takes.
func onePound(material string, more ...string) []string {
	return append([]string{"nitrogen=1 lb N/ac", "material=" + material}, more...)
}

// compared sets a material beside urea.
func compared(material string) []string {
	return []string{"nitrogen=1 lb N/ac", "first=" + material, "first-price=400 $/ton", "second=46-0-0",
		"second-price=400 $/ton", "third=none"}
}

// told finds a number in the remarks about one pound of nitrogen from a material.
func told(t testing.TB, material, pattern string) float64 {
	t.Helper()
	o := work(t, nitrogen.MaterialAmount, write(t, nitrogen.MaterialAmount, onePound(material)...))
	return numberIn(t, allSaid(o), pattern)
}

func allSaid(o sheet.Outcome) string {
	var all []string
	for _, s := range o.Said() {
		all = append(all, s.Text)
	}
	return strings.Join(all, " ")
}

func numberIn(t testing.TB, text, pattern string) float64 {
	t.Helper()
	found := regexp.MustCompile(pattern).FindStringSubmatch(text)
	if found == nil {
		t.Fatalf("%q is not in %q", pattern, text)
	}
	n, err := strconv.ParseFloat(found[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func TestPublishedMaterials(t *testing.T) {
	rows := reference.Open(t, "f-materials")
	amount, back := nitrogen.MaterialAmount, nitrogen.MaterialNitrogen
	checkAll(t, rows, []published{
		// F01, F04, F05, F07, F08, F37: university table, Nitrogen fertilizer characteristics (San Joaquin Co. record)
		{"F01", amount, "strength", "% N of product", onePound("82-0-0")},
		{"F04", amount, "strength", "% N of product", onePound("46-0-0")},
		{"F05", amount, "strength", "% N of product", onePound("15.5-0-0-19Ca")},
		{"F07", amount, "strength", "% N of product", onePound("34-0-0")},
		{"F08", amount, "strength", "% N of product", onePound("CAN-17")},
		{"F37", amount, "strength", "% N of product", onePound("20-0-0")},
		// F02, F36: Alabama Cooperative Extension ANR-0174
		{"F02", amount, "strength", "% N of product", onePound("21-0-0-24S")},
		{"F36", amount, "strength", "% N of product", onePound("13-0-46")},
		// F32 to F35: USDA-NRCS New Mexico, Agronomy Technical Note 76
		{"F32", amount, "strength", "% N of product", onePound("12-0-0-26S")},
		{"F33", amount, "strength", "% N of product", onePound("11-52-0")},
		{"F34", amount, "strength", "% N of product", onePound("18-46-0")},
		{"F35", amount, "strength", "% N of product", onePound("10-34-0")},
		// F09 to F19: the university table again, and the weights that it implies
		{"F09", amount, "volume", "gal/ac", onePound("CAN-17")},
		{"F10", amount, "product", "lb product/ac", onePound("CAN-17")},
		{"F11", amount, "gallon", "lb product/gal", onePound("CAN-17")},
		{"F12", amount, "volume", "gal/ac", onePound("UAN-32")},
		{"F13", amount, "product", "lb product/ac", onePound("UAN-32")},
		{"F14", amount, "gallon", "lb product/gal", onePound("UAN-32")},
		// F15, F16: urea that was dissolved to 23 %; a gallon of it is 4.37 ÷ 0.46 lb
		{"F15", amount, "volume", "gal/ac", onePound("46-0-0", "analysis=23 % N", "density=9.5 lb/gal")},
		{"F16", amount, "product", "lb product/ac", onePound("46-0-0", "analysis=23 % N", "density=9.5 lb/gal")},
		{"F17", amount, "volume", "gal/ac", onePound("AN-20")},
		{"F18", amount, "gallon", "lb product/gal", onePound("AN-20")},
		{"F19", amount, "volume", "gal/ac", onePound("20-0-0")},
		// F20, F21: Univ. of Nebraska-Lincoln, Soils part 8: nitrogen fertilizers
		{"F20", amount, "gallon", "lb product/gal", onePound("82-0-0")},
		{"F21", amount, "in-gallon", "lb N/gal", onePound("82-0-0")},
		// F22: Purdue Extension, in Indiana Prairie Farmer 2023-01-17
		{"F22", amount, "in-gallon", "lb N/gal", onePound("UAN-28", "density={lb_per_gal} lb/gal")},
		// F25 to F27: IPNI Nutrient Source Specifics, Urea-ammonium nitrate
		{"F25", nitrogen.MaterialCompare, "first-urea", "", compared("UAN-32")},
		{"F26", nitrogen.MaterialCompare, "first-ammonium", "", compared("UAN-28")},
		{"F27", nitrogen.MaterialCompare, "first-nitrate", "", compared("UAN-32")},
		// F38 to F43: the university table; F41: Cornell NRCCA PO 37
		{"F38", amount, "lime", "lb CaCO3/ac", onePound("21-0-0-24S")},
		{"F40", amount, "lime", "lb CaCO3/ac", onePound("34-0-0")},
		{"F41", amount, "lime", "lb CaCO3/ac", onePound("46-0-0")},
		{"F42", amount, "lime", "lb CaCO3/ac", onePound("CAN-17")},
		{"F43", amount, "lime", "lb CaCO3/ac", onePound("UAN-32")},
		// F45, F46: Alabama ANR-0174, lime for 100 lb of product
		{"F45", amount, "lime", "lb CaCO3/ac", []string{"nitrogen=21 lb N/ac", "material=21-0-0-24S"}},
		{"F46", amount, "lime", "lb CaCO3/ac", []string{"nitrogen=82 lb N/ac", "material=82-0-0"}},
		// F51, F52: definition, a ton
		{"F51", back, "nitrogen", "lb N/ac", []string{"amount=2000 lb/ac", "material=16-20-0", "trees=110 trees/ac"}},
		{"F52", back, "nitrogen", "lb N/ac", []string{"amount=2000 lb/ac", "material=15-15-15", "trees=110 trees/ac"}},
	})
	// F23: Purdue Extension, in Indiana Prairie Farmer 2023-01-17
	rows.Check("F23", enter(t, back, "amount="+rows.Row("F23").Inputs["gal_per_acre"]+" gal/ac", "material=UAN-28",
		"density=10.6 lb/gal",
		"trees=110 trees/ac").Value("nitrogen").Value)
	// F39: the university table, anhydrous and aqua ammonia
	for _, ammonia := range []string{"82-0-0", "20-0-0"} {
		rows.Check("F39", answer(t, amount, "lime", "lb CaCO3/ac", onePound(ammonia)...))
	}
	// F44: the university table; F47: Alabama ANR-0174, 100 lb of product. Both work like lime, and need none.
	rows.Check("F44", answer(t, amount, "liming", "lb CaCO3/ac", onePound("15.5-0-0-19Ca")...))
	rows.Check("F47", answer(t, amount, "liming", "lb CaCO3/ac", "nitrogen=13 lb N/ac", "material=13-0-46"))
	// F03: Alabama ANR-0174; F06: the university table. They are in the name of the grade.
	rows.Check("F03", partOf(t, "21-0-0-24S", "S"))
	rows.Check("F06", partOf(t, "15.5-0-0-19Ca", "Ca"))
	// F28, F29: IPNI Nutrient Source Specifics, Urea-ammonium nitrate
	rows.Check("F28", told(t, "UAN-32", `salts out near 28 °F \((-\d+) °C\)`))
	rows.Check("F29", told(t, "UAN-28", `salts out near 0 °F \((-\d+) °C\)`))
	checkComposition(t, rows)
	// F48: UC micro-irrigation maintenance, calcium and sulfate; the sulfate of this table is ammonium sulfate
	rows.Check("F48", mayShareATank(t, "15.5-0-0-19Ca", "21-0-0-24S"))
	// F49: calcium and phosphate
	rows.Check("F49", mayShareATank(t, "CAN-17", "11-52-0"))

	rows.LeaveOut("F50", "a limit on the water alone; no sheet takes its calcium, and the caution says to try a jar")
	rows.LeaveOut("F57", "the salt that the index is counted from, which is no material here")
	rows.LeaveOut("F56", "the University's weight of thiosulfate; the table has the fluid trade's, and the note both")
	for _, id := range []string{"F24", "F53", "F54", "F55", "F58", "F59", "F60", "F61"} {
		rows.LeaveOut(id, "from memory, and no figure of ours rests on it")
	}
}

// checkComposition checks what the urea and the ammonium nitrate of a solution come to, and that the table has it.
func checkComposition(t *testing.T, rows *reference.Ledger) {
	t.Helper()
	urea, err := unit.Share("N", "CO(NH2)2")
	if err != nil {
		t.Fatal(err)
	}
	nitrate, err := unit.Share("N", "NH4NO3")
	if err != nil {
		t.Fatal(err)
	}
	// F30, F31: Alabama ANR-0174
	for id, material := range map[string]string{"F30": "UAN-32", "F31": "UAN-28"} {
		row := rows.Row(id)
		mixed := urea*row.Input(t, "urea_pct") + nitrate*row.Input(t, "ammonium_nitrate_pct")
		rows.Check(id, mixed)
		listed := answer(t, nitrogen.MaterialAmount, "strength", "% N of product", onePound(material)...)
		if !row.Accepts(listed) {
			t.Errorf("%s is listed at %v %% N, and its parts make %v", material, listed, mixed)
		}
	}
}

// mayShareATank is 1 when nothing is said against two materials in one tank, and 0 when a caution is.
func mayShareATank(t testing.TB, first, second string) float64 {
	t.Helper()
	s := nitrogen.MaterialCompare
	for _, said := range work(t, s, write(t, s, "nitrogen=30 lb N/ac", "first="+first, "first-price=400 $/ton",
		"second="+second, "second-price=400 $/ton", "third=none")).Said() {
		if said.Signal >= sheet.Notice && strings.Contains(said.Text, "Never put the two in one tank") {
			return 0
		}
	}
	return 1
}

func TestPublishedInjection(t *testing.T) {
	rows := reference.Open(t, "j-injection")
	amount, inject := nitrogen.MaterialAmount, nitrogen.Injection
	// A material with a pound of nitrogen in a gallon, so that pounds stand for gallons.
	gallons := func(more ...string) []string {
		return append([]string{"material=UAN-28", "analysis=10 % N", "density=10 lb/gal", "clean=0 min", "flush=0 min"},
			more...)
	}
	ten := []string{"material=UAN-28", "analysis={N_pct} % N", "density={lb_per_gal} lb/gal", "nitrogen=1 lb N/ac"}
	known := []string{"material=UAN-28", "analysis=10 % N", "density=10.69 lb/gal"} // J10
	checkAll(t, rows, []published{
		// J01: Univ. of Nebraska CropWatch 2023: what a machine covers in an hour is a block and an hour here
		{"J01", inject, "rate", "gal/h", gallons("nitrogen={gal_per_acre} lb N/ac", "acres={acres_per_hour} ac", "run=1 h")},
		// J02, J03: WSU Extension FS035E
		{"J02", inject, "rate", "gal/h", gallons("nitrogen=10 lb N/ac", "acres=35 ac", "run={hours} h")},
		{"J03", inject, "volume", "gal", gallons("nitrogen={gal_per_acre} lb N/ac", "acres={acres} ac", "run=22 h")},
		// J10 to J12: Vineyard Team tailgate sheet, Liquid fertilizer calculations
		{"J10", amount, "in-gallon", "lb N/gal", ten},
		{"J11", amount, "volume", "gal/ac", append([]string{"nitrogen={lb_N_per_acre} lb N/ac"}, known...)},
		{"J12", inject, "volume", "gal", append([]string{"nitrogen=15 lb N/ac", "acres={acres} ac", "run=6 h",
			"clean=120 min", "flush=120 min"}, known...)},
		// J13: definition: 35.4 lb in an hour are 10 gal of 3.54 lb
		{"J13", inject, "concentration", "ppm N of water", []string{"nitrogen=1.77 lb N/ac", "acres=20 ac", "run=1 h",
			"clean=0 min", "flush=0 min", "material=UAN-32", "flow={system_gpm} gpm"}},
	})
	// J05 to J08: UF/IFAS, What you need to know about citrus fertigation
	rows.Check("J05", constant(t, inject, "travel").Quantity.Value)
	rows.Check("J06", numberIn(t, constant(t, inject, "travel").Note, `20 to (\d+) min`))
	rows.Check("J07", constant(t, inject, "least-window").Quantity.Value)
	rows.Check("J08", constant(t, inject, "least-flush").Quantity.Value)

	rows.LeaveOut("J04", "an injector timed with a watch; the sheet says what to set it to")
	rows.LeaveOut("J15", "a week's feed shared over its days; no sheet feeds by the day")
	rows.LeaveOut("J16", "a grade of a system's evenness, which no sheet measures")
	rows.LeaveOut("J17", "a grade of a system's evenness, which no sheet measures")
}

func TestPublishedSoil(t *testing.T) {
	rows := reference.Open(t, "l-soil")
	// L01: Cornell NRCCA PO 37, urea
	rows.Check("L01", published{sheet: nitrogen.MaterialAmount, answer: "lime", in: "lb CaCO3/ac",
		givens: []string{"nitrogen={lb_N} lb N/ac", "material=46-0-0"}}.value(t, rows.Row("L01")))
	// L04, L05: stoichiometry; the official method that the table is tested by takes half of L05
	rows.Check("L04", acidOf(t, rows.Row("L04").Input(t, "mol_H_per_mol_N")))
	rows.Check("L05", acidOf(t, rows.Row("L05").Input(t, "mol_H_per_mol_N")))
	// L11, L12: USDA-NRCS New Mexico, Agronomy Technical Note 76
	rows.Check("L11", told(t, "46-0-0", `turns to nitrate in (\d+) to \d+ weeks`))
	rows.Check("L12", told(t, "46-0-0", `turns to nitrate in \d+ to (\d+) weeks`))
	// L13: Cornell NRCCA PO 26
	rows.Check("L13", told(t, "21-0-0-24S", `above pH (\d+\.\d)`))

	rows.LeaveOut("L02", "with 5.4 lb for ammonium sulfate; the table has 110/21, 5.24 (F38, F45), 3 % less")
	rows.LeaveOut("L03", "acid of ammonium before a crop takes up the nitrate; the table has the official lime instead")
	for _, id := range []string{"L06", "L07", "L08", "L09", "L10"} {
		rows.LeaveOut(id, "a grade of a soil test; no sheet reads that test")
	}
}
