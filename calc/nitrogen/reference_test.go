package nitrogen_test

import (
	"regexp"
	"strconv"
	"testing"

	"acreleaf/calc/internal/reference"
	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// A published value is an answer of a sheet for the inputs of a row of the reference file. {name} in a given stands
// for the input of that name. The comment beside each row is its source; the full titles are in SOURCES.md beside
// the file.
type published struct {
	id     string
	sheet  *sheet.Sheet
	answer string
	in     string
	givens []string
}

var inputName = regexp.MustCompile(`\{(\w+)\}`)

// value works the answer for a row.
func (p published) value(t testing.TB, row *reference.Value) float64 {
	t.Helper()
	givens := make([]string, len(p.givens))
	for i, text := range p.givens {
		givens[i] = inputName.ReplaceAllStringFunc(text, func(found string) string {
			return decimal(row.Input(t, found[1:len(found)-1]))
		})
	}
	return answer(t, p.sheet, p.answer, p.in, givens...)
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func checkAll(t *testing.T, rows *reference.Ledger, values []published) {
	t.Helper()
	for _, p := range values {
		rows.Check(p.id, p.value(t, rows.Row(p.id)))
	}
}

func TestPublishedSoilNitrate(t *testing.T) {
	rows := reference.Open(t, "b-soil-nitrate")
	soil := nitrogen.SoilNitrogen
	checkAll(t, rows, []published{
		// B06, B07: Montana State Univ. Soil Scoop, Questions to ask about soil tests
		{"B06", soil, "nitrogen", "lb N/ac", []string{"nitrate={nitrate_n_ppm} ppm NO3-N", "depth={depth_in} in"}},
		{"B07", soil, "nitrogen", "lb N/ac", []string{"nitrate={nitrate_n_ppm} ppm NO3-N", "depth={depth_in} in"}},
		// B09: exact, an acre-inch of water weighs 226,613 lb at 1 g/cm3
		{"B09", soil, "nitrogen", "lb N/ac", []string{"nitrate={nitrate_n_ppm} ppm NO3-N", "depth={depth_in} in",
			"bulk-density={bulk_density_g_cm3} g/cm3"}},
		// B10, B11: definition (B09)
		{"B10", soil, "nitrogen", "lb N/ac", []string{"nitrate={nitrate_n_ppm} ppm NO3-N", "depth={thickness_in} in",
			"bulk-density={bulk_density_g_cm3} g/cm3"}},
		{"B11", soil, "nitrogen", "lb N/ac", []string{"nitrate={nitrate_n_ppm} ppm NO3-N", "depth={thickness_in} in",
			"bulk-density={bulk_density_g_cm3} g/cm3"}},
		// B12: definition, mg/kg x g/cm3 x cm x 0.1
		{"B12", soil, "nitrogen", "kg N/ha", []string{"nitrate={nitrate_n_mg_kg} mg/kg NO3-N",
			"depth={thickness_cm} cm", "bulk-density={bulk_density_g_cm3} g/cm3"}},
	})

	// One ppm of a layer is a millionth of its weight, so a million times the answer for 1 ppm is the weight.
	// B04, B05: Penn State Extension, What is an acre furrow slice of soil?, at the bulk density of its example (B02).
	density := rows.Row("B02").Input(t, "bulk_density_g_cm3")
	ofLayer := func(depth float64, in string) float64 {
		return answer(t, soil, "nitrogen", "lb N/ac", "nitrate=1 ppm NO3-N", "depth="+decimal(depth)+" "+in,
			"bulk-density="+decimal(density)+" g/cm3")
	}
	rows.Check("B04", 1e6*ofLayer(rows.Row("B04").Input(t, "depth_in"), "in"))
	rows.Check("B05", rows.Row("B05").Input(t, "nutrient_ppm")*ofLayer(rows.Row("B05").Input(t, "depth_in"), "in"))
	// B14: Brady & Weil 2008, as quoted in a secondary text
	rows.Check("B14", 1e6*published{sheet: soil, answer: "nitrogen", in: "kg N/ha", givens: []string{
		"nitrate=1 ppm NO3-N", "depth={depth_cm} cm", "bulk-density={bulk_density_g_cm3_implied} g/cm3",
	}}.value(t, rows.Row("B14")))

	rows.LeaveOut("B01", "a volume of soil; no calculation of this shelf answers one")
	rows.LeaveOut("B02", "a weight of a cubic foot with water at 62.4 lb/ft3; ours weighs 62.43, 0.05 % more, which is "+
		"past the printed rounding")
	rows.LeaveOut("B03", "the weight of the slice from B02, so 0.05 % below ours and past the printed rounding")
	rows.LeaveOut("B08", "three times the top 6 in for 24 in; a guess at a layer nobody sampled, which no sheet makes")
	rows.LeaveOut("B13", "a crop credit of Nebraska, less than what is in the soil; no sheet gives crop credits")
}

func TestPublishedWaterNitrate(t *testing.T) {
	rows := reference.Open(t, "c-water-nitrate")
	water, basis := nitrogen.WaterNitrogen, nitrogen.NitrateBasis
	inches := []string{"nitrate={nitrate_n_ppm} ppm NO3-N", "water={acre_in} in"}
	feet := []string{"nitrate={nitrate_n_ppm} ppm NO3-N", "water={acre_ft} ac-ft/ac"}
	checkAll(t, rows, []published{
		// C01: exact from the pound, the acre-inch and 1 mg/L
		{"C01", water, "nitrogen", "lb N/ac", inches},
		// C02, C03: UC ANR Ventura Co., Accounting for nitrate in irrigation water
		{"C02", water, "nitrogen", "lb N/ac", inches},
		{"C03", water, "nitrogen", "lb N/ac", inches},
		// C04: North Platte NRD; WateReuse salinity management guide
		{"C04", water, "nitrogen", "lb N/ac", feet},
		// C05: North Platte NRD, Nitrogen credits for soil and water
		{"C05", water, "nitrogen", "lb N/ac", feet},
		// C06, C07: UC Solution Center for Nutrient Management, Nitrogen in irrigation water
		{"C06", basis, "nitrogen", "ppm NO3-N", []string{"reported={nitrate_ppm} ppm NO3", "of=water"}},
		{"C07", water, "nitrogen", "lb N/ac", feet},
		// C08, C09: UC Cooperative Extension (Tehama Co.), Western Farm Press
		{"C08", water, "nitrogen", "lb N/ac", feet},
		{"C09", water, "nitrogen", "lb N/ac", feet},
		// C10: exact C01 x A31; C11: exact C10 x 12
		{"C10", water, "nitrogen", "lb N/ac", []string{"nitrate={nitrate_ppm} ppm NO3", "water={acre_in} in"}},
		{"C11", water, "nitrogen", "lb N/ac", []string{"nitrate={nitrate_ppm} ppm NO3", "water={acre_ft} ac-ft/ac"}},
		// C12: UC Sacramento Valley Orchards, Evaluating a water supply
		{"C12", water, "nitrogen", "lb N/ac", feet},
		// C13: definition, mg/L x mm x 0.01
		{"C13", water, "nitrogen", "kg N/ha", []string{"nitrate={nitrate_n_mg_L} mg/L NO3-N", "water={depth_mm} mm"}},
		// C14: Almond Facts Mar-Apr 2021 (UCCE column): the nitrogen in 100 parts of nitrate
		{"C14", basis, "nitrogen", "ppm NO3-N", []string{"reported=100 ppm NO3", "of=water"}},
	})
}

func TestPublishedTreeRates(t *testing.T) {
	rows := reference.Open(t, "e-per-tree")
	area := []string{"need={lb_N_per_acre} lb N/ac fed", "soil=0 lb N/ac", "water=0 lb N/ac"}
	checkAll(t, rows, []published{
		// E01: definition, oz x trees / 16; E02 to E04: definition
		{"E01", nitrogen.TreeRate, "nitrogen", "lb N/ac",
			[]string{"rate={oz_N_per_tree} oz N/tree", "trees={trees_per_acre} trees/ac"}},
		{"E02", nitrogen.TreeRate, "nitrogen", "lb N/ac",
			[]string{"rate={oz_N_per_tree} oz N/tree", "trees={trees_per_acre} trees/ac"}},
		{"E03", nitrogen.AcreRate, "rate", "oz N/tree",
			[]string{"nitrogen={lb_N_per_acre} lb N/ac", "trees={trees_per_acre} trees/ac"}},
		{"E04", nitrogen.TreeRate, "nitrogen", "kg N/ha",
			[]string{"rate={g_N_per_tree} g N/tree", "trees={trees_per_ha} trees/ha"}},
		// E17, E18: ASHS abstract on drip-fertigated pecan
		{"E17", nitrogen.SeasonBudget, "apply", "kg N/ha", area},
		{"E18", nitrogen.SeasonBudget, "apply", "kg N/ha", area},
	})
	// E19: UCCE Master Gardeners San Diego, Fertilize fruit trees. The pounds of one tree are those of an acre with one
	// tree on it.
	rows.Check("E19", published{"E19", nitrogen.MaterialAmount, "product", "lb product/ac",
		[]string{"nitrogen={lb_N_per_tree} lb N/ac", "material=46-0-0", "analysis={analysis_N_pct} % N"},
	}.value(t, rows.Row("E19")))
	// E09 to E11: UC Cooperative Extension San Joaquin Co., Fertilizing one-year-old trees: be careful, as Growing
	// Produce prints it. At 16 trees an acre a pound an acre is an ounce a tree.
	rows.Check("E09", constant(t, nitrogen.TreeRate, "feed-a-year").Quantity.Value)
	season := []string{"trees=16 trees/ac", "material=46-0-0", "first=2027-04-15", "last=2027-07-15"}
	checkAll(t, rows, []published{
		{"E09", nitrogen.FeedSchedule, "limit", "oz N/tree",
			append([]string{"nitrogen=1 lb N/ac", "leaf={tree_age_years}"}, season...)},
		{"E10", nitrogen.FeedSchedule, "limit", "oz N/tree",
			append([]string{"nitrogen=1 lb N/ac", "leaf={tree_age_years}"}, season...)},
		{"E11", nitrogen.FeedSchedule, "feeds", "", append([]string{"nitrogen={oz_N_per_tree_year} lb N/ac", "leaf=1",
			"cap={max_oz_per_application} oz N/tree"}, season...)},
	})

	// E32, E33: Farm Progress, Match fertilizer rates in young orchards to growing needs. The most in a season is theirs
	// in first and in fourth leaf, and lies between in second and third.
	each := constant(t, nitrogen.FeedSchedule, "season-a-year").Quantity.Value / 16
	rows.Check("E32", each*1)
	rows.Check("E33", each*4)
	// E34: Growing Produce, Baby those babies
	burns := enter(t, nitrogen.FeedSchedule, feedsOf("20", "1", "UAN-32")...)
	rows.Check("E34", numberIn(t, allSaid(burns), `at least (\d+) in from the trunk`))

	for id, reason := range map[string]string{
		"E14": "a table of advice for pecans, not arithmetic",
		"E15": "a table of advice for pecans, not arithmetic",
		"E16": "a table of advice for pecans, not arithmetic",
		"E30": "the low end of a range for first-leaf walnuts, which guides cite",
		"E31": "the high end of a range for first-leaf walnuts, which guides cite",
	} {
		rows.LeaveOut(id, reason)
	}
}

func TestPublishedSafety(t *testing.T) {
	rows := reference.Open(t, "i-safety")
	// I01: 40 CFR 141.62
	for _, s := range []*sheet.Sheet{nitrogen.WaterNitrogen, nitrogen.NitrateBasis} {
		rows.Check("I01", constant(t, s, "drinking-limit").Quantity.Value)
	}
	// I05: Cal. Code Regs. tit. 22 s. 64482(b)
	for _, s := range []*sheet.Sheet{nitrogen.WaterNitrogen, nitrogen.NitrateBasis} {
		rows.Check("I05", constant(t, s, "half-limit").Quantity.Value)
	}
	// I03: from IUPAC weights
	rows.Check("I03", published{sheet: nitrogen.NitrateBasis, answer: "nitrate", in: "ppm NO3",
		givens: []string{"reported={nitrate_n_mg_L} ppm NO3-N", "of=water"}}.value(t, rows.Row("I03")))
	for id, reason := range map[string]string{
		"I02": "the old round figure for the limit as NO3; ours is the exact 44.27, and the note beside it has both",
		"I04": "a limit for nitrite, which no calculation of this shelf takes",
		"I06": "the guideline of another authority, from memory; the warnings of this shelf go by the limit",
		"I07": "a limit for the air that workers breathe, which no calculation answers",
		"I08": "a limit for the air that workers breathe, which no calculation answers",
		"I09": "a limit for the air that workers breathe, which no calculation answers",
		"I10": "a limit for the air that workers breathe, which no calculation answers",
		"I11": "a part of a check valve; advice for a guide, not arithmetic",
		"I12": "a part of a check valve; advice for a guide, not arithmetic",
		"I13": "a list of devices; advice for a guide, not arithmetic",
	} {
		rows.LeaveOut(id, reason)
	}
}

// constant finds a constant of a sheet.
func constant(t testing.TB, s *sheet.Sheet, name string) *sheet.Constant {
	t.Helper()
	for _, c := range s.Constants {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("%s has no constant %q", s.Name, name)
	return nil
}
