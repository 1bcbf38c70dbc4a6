package nitrogen_test

import (
	"testing"

	"acreleaf/calc/internal/reference"
	"acreleaf/calc/nitrogen"
)

func init() {
	situations = append(situations,
		situation{nitrogen.UptakeShare, share("220", "almond")},
		situation{nitrogen.UptakeShare, share("150", "pistachio")},
		situation{nitrogen.UptakeEfficiency, []string{"system=fertigation"}},
		situation{nitrogen.UptakeEfficiency, []string{"system=furrow-or-broadcast"}},
	)
	sayings = append(sayings,
		saying{nitrogen.UptakeShare, share("220", "almond"), []string{"First: petal fall to leaf-out.", notOneFeed}},
		saying{nitrogen.UptakeShare, share("220", "walnut"), []string{"First to fourth: May, June,", notOneFeed}},
		saying{nitrogen.UptakeShare, share("220", "pistachio"), []string{"First: the spring flush.", notOneFeed}},
		saying{nitrogen.UptakeEfficiency, []string{"system=general"}, []string{"These are planning figures"}},
	)
	for _, stage := range stages {
		responses = append(responses, response{nitrogen.UptakeShare, stage, "nitrogen", 1})
		scalings = append(scalings, scaling{nitrogen.UptakeShare, stage, 1, []string{"nitrogen"}})
	}
}

const notOneFeed = "A stage is not one feed."

var stages = []string{"first", "second", "third", "fourth"}

func share(pounds, crop string) []string {
	return []string{"nitrogen=" + pounds + " lb N/ac", "crop=" + crop}
}

// checkShares checks when a crop takes nitrogen up.
func checkShares(t *testing.T, rows *reference.Ledger) {
	of := func(crop, stage string) float64 {
		return answer(t, nitrogen.UptakeShare, stage, "lb N/ac", share("100", crop)...)
	}
	// G10 to G13: UC Cooperative Extension column, Almond Facts, March-April 2020
	for i, id := range []string{"G10", "G11", "G12", "G13"} {
		rows.Check(id, of("almond", stages[i]))
	}
	// G18: UC Cooperative Extension, N budgeting: following the 4 Rs
	for _, stage := range stages {
		rows.Check("G18", of("walnut", stage))
	}
	// G24, G25: CDFA-FREP and UC Davis guidelines, pistachio
	rows.Check("G24", of("pistachio", "first"))
	rows.Check("G25", of("pistachio", "second"))
}

func TestPublishedEfficiency(t *testing.T) {
	rows := reference.Open(t, "h-efficiency-credits")
	efficiency := func(system string) float64 {
		return answer(t, nitrogen.UptakeEfficiency, "efficiency", "", "system="+system)
	}
	// H01: Almond Board of California, Nitrogen budgeting; H02, H03: UC advisor notes in AgFax 2019-03-31
	rows.Check("H01", efficiency("general"))
	rows.Check("H02", efficiency("fertigation"))
	rows.Check("H03", efficiency("furrow-or-broadcast"))
	// H04, H05: coefficients of AgFax 2019-03-31, and of G02 with H01; values recomputed
	for id, of := range map[string][2]string{"H04": {"pistachio", "fertigation"}, "H05": {"almond", "general"}} {
		need := answer(t, nitrogen.CropDemand, "crop-removal", "lb N/ac", demand(of[0], "9", "1000 lb/ac")...)
		alike(t, id+": the removal", need, rows.Row(id).Input(t, "removal"))
		rows.Check(id, answer(t, nitrogen.SeasonBudget, "apply", "lb N/ac", "need="+decimal(need)+" lb N/ac taken up",
			"soil=0 lb N/ac", "water=0 lb N/ac", "efficiency="+decimal(100*efficiency(of[1]))+" %"))
	}
	// H06: Western Farm Press: 1,200 to 1,300 lb with 200 lb N is about 44 %
	row := rows.Row("H06")
	removed := published{"H06", nitrogen.CropDemand, "crop-removal", "lb N/ac",
		demand("almond", "9", "{yield_lb} lb/ac", "removal={removal_per_1000} lb N per 1000 lb")}.value(t, row)
	ratio := answer(t, nitrogen.Balance, "ratio", "", year(decimal(row.Input(t, "applied")), decimal(removed))...)
	rows.Check("H06", 1/ratio)
	// H08: A/R of the Central Valley Irrigated Lands Program; H09: A − R of State Water Board Order WQ 2018-0002
	checkAll(t, rows, []published{
		{"H08", nitrogen.Balance, "ratio", "", year("{applied_lb}", "{removed_lb}")},
		{"H09", nitrogen.Balance, "difference", "lb N/ac", year("{applied_lb}", "{removed_lb}")},
	})
	// H31: UCCE, Nitrogen management in walnuts: need minus other sources, then divided by efficiency
	checkAll(t, rows, []published{{"H31", nitrogen.SeasonBudget, "other-order", "lb N/ac",
		[]string{"need={need} lb N/ac taken up", "soil=0 lb N/ac", "water={other} lb N/ac", "efficiency=70 %"}}})
	// H30: Cahn and others 2017, California Agriculture 71(2):62-67. The budget lets a pound in the water stand for a
	// pound fed, so what was taken up of it must be the share that is taken up of small feeds in water.
	rows.Check("H30", 100*efficiency("fertigation"))
	checkOrganic(t, rows)
	rows.LeaveOut("H07", "what a tracer finds of one feed in the tree; it leaves out what the feed spares in the soil, "+
		"so it is no figure to plan with, and the page says so")
}

// The stages of a crop are the whole of its season, whether it has four or two.
func TestStagesAddUp(t *testing.T) {
	r := random(t)
	for range draws {
		values, o := drawTaken(t, r, nitrogen.UptakeShare)
		var sum float64
		for _, stage := range stages {
			if o.There(stage) {
				sum += o.Value(stage).Value
			}
		}
		closeBy(t, "the stages", sum, values["nitrogen"], values)
		if o.There("third") != (values["crop"] != 2) || o.There("third") != o.There("fourth") {
			t.Fatalf("crop %v has a third stage: %v", values["crop"], o.There("third"))
		}
	}
}

func TestUptakeByHand(t *testing.T) {
	// Almond is 20, 30, 30 and 20 %: 44, 66, 66 and 44 lb, which leave 176, 110 and 44 lb. Walnut is 25 % each. Of
	// pistachio, 30 and 70 %, the first of 150 lb leaves 105, and the second nothing.
	byHand(t, nitrogen.UptakeShare, share("220", "almond"), map[string]float64{
		"first-even": 55, "second-even": 55, "third-even": 55, "fourth-even": 55,
		"second-of-the-rest": 52.8, "third-of-the-rest": 33, "fourth-of-the-rest": 8.8})
	byHand(t, nitrogen.UptakeShare, share("200", "walnut"), map[string]float64{
		"second-of-the-rest": 37.5, "third-of-the-rest": 25, "fourth-of-the-rest": 12.5})
	byHand(t, nitrogen.UptakeShare, share("150", "pistachio"), map[string]float64{
		"first-even": 75, "second-even": 75, "second-of-the-rest": 73.5})
	byHand(t, nitrogen.UptakeEfficiency, []string{"system=furrow-or-broadcast"},
		map[string]float64{"share-for-ratio": 0.5, "loss-added": 1.5})
	readsAs(t, nitrogen.UptakeShare, share("220", "pistachio"),
		"first share = listed for this crop = 30 %", "first = nitrogen × first share = 220 lb N/ac fed × 30 % = "+
			"66 lb N/ac fed",
		"second share = listed for this crop = 70 %", "second = nitrogen × second share = 220 lb N/ac fed × 70 % "+
			"= 154 lb N/ac fed")
	readsAs(t, nitrogen.UptakeEfficiency, []string{"system=fertigation"},
		"efficiency = listed for this system = 80 % taken up/fed", "per pound = 1 ÷ efficiency = 1 ÷ 80 % taken "+
			"up/fed = 1.25 lb N/lb N fed/taken up")
}
