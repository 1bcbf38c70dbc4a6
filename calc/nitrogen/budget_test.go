package nitrogen_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// credits are the givens of a season's budget that come off the need.
var credits = []string{"soil", "water", "cover-crop", "compost", "manure", "organic-matter", "other"}

const (
	feeds    = "Split it into small feeds,"
	covered  = "The credits cover the need:"
	order    = "The need was divided by the share first,"
	wasFed   = "The need is a rate that was fed."
	oneCount = "Count each credit once,"
	allSoil  = "NOTICE All "
)

// budget is a season whose need is told as taken up.
func budget(need, soil, water string, more ...string) []string {
	return append([]string{"need=" + need + " lb N/ac taken up", "efficiency=70 %", "reach=100 %",
		"soil=" + soil + " lb N/ac", "water=" + water + " lb N/ac"}, more...)
}

// fedBudget is a season whose need is a rate that was fed.
func fedBudget(need, soil, water string, more ...string) []string {
	return append([]string{"need=" + need + " lb N/ac fed", "reach=100 %", "soil=" + soil + " lb N/ac",
		"water=" + water + " lb N/ac"}, more...)
}

func init() {
	season := nitrogen.SeasonBudget
	situations = append(situations,
		situation{season, budget("35", "10", "8")},
		situation{season, budget("120", "15", "18", "compost=12 lb N/ac", "organic-matter=20 lb N/ac")},
	)
	sayings = append(sayings,
		saying{season, budget("35", "10", "8"), []string{feeds, order + "*what is left: 24.3 lb N/ac fed."}},
		saying{season, budget("35", "25", "25"), []string{covered, order}},
		saying{season, budget("35", "48", "18.1"),
			[]string{covered, "NOTICE 16.1 lb N/ac more is there than the trees need.", order}},
		saying{season, budget("35", "49.9", "0"), []string{feeds, order}},
		saying{season, budget("0", "0", "0"), []string{order}},
		saying{season, fedBudget("0", "0", "0"), []string{wasFed}},
		saying{season, fedBudget("0", "0", "3"), []string{"NOTICE 3 lb N/ac more", wasFed}},
		saying{season, fedBudget("30", "10", "0"), []string{feeds, wasFed}},
		saying{season, []string{"need=30 lb N/ac fed", "soil=10 lb N/ac", "water=0 lb N/ac"},
			[]string{"NOTICE All 10 lb N/ac in the soil were counted,", feeds, wasFed}},
		saying{season, []string{"need=30 lb N/ac fed", "soil=0 lb N/ac", "water=0 lb N/ac"}, []string{feeds, wasFed}},
		saying{season, budget("120", "15", "18", "organic-matter=40 lb N/ac"), []string{feeds, order, oneCount}},
		saying{season, budget("120", "15", "18", "organic-matter=41 lb N/ac"),
			[]string{"NOTICE 41 lb N/ac is a good deal from organic matter:", feeds, order, oneCount}},
		saying{season, budget("35", "15", "0", "manure=35 lb N/ac"), []string{covered, order, oneCount}},
	)
	for _, credit := range credits[1:] {
		responses = append(responses, response{season, "credits", credit, 1})
	}
	responses = append(responses,
		response{season, "apply", "compost", -1}, response{season, "credits", "reach", 1},
		response{season, "credits", "need", 0}, response{season, "credits", "efficiency", 0},
		response{season, "short", "need", 1}, response{season, "short", "soil", -1},
		response{season, "apply", "efficiency", -1}, response{season, "other-order", "efficiency", -1},
		response{season, "apply", "need", 1}, response{season, "apply", "water", -1},
		response{season, "surplus", "need", -1}, response{season, "surplus", "other", 1},
	)
	scalings = append(scalings,
		scaling{season, "apply", 1, append([]string{"need"}, credits...)},
		scaling{season, "surplus", 1, append([]string{"need"}, credits...)},
		scaling{season, "other-order", 1, append([]string{"need"}, credits...)},
	)
}

// A credit is worth the same wherever it comes from, and none left empty is in the work.
func TestCreditsAreWorthTheSame(t *testing.T) {
	bare := budget("60", "10", "5")
	for _, credit := range credits[2:] {
		got := answer(t, nitrogen.SeasonBudget, "apply", "lb N/ac", append(bare, credit+"=12 lb N/ac")...)
		alike(t, credit, got, 60/0.7-10-5-12)
	}
	readsAs(t, nitrogen.SeasonBudget, append(bare, "cover-crop=12 lb N/ac", "manure=40 lb N/ac"),
		"fed need = need ÷ efficiency = 60 lb N/ac taken up ÷ 70 % = 85.7 lb N/ac fed",
		"in reach = soil × reach = 10 lb N/ac present × 100 % = 10 lb N/ac fed",
		"organic = cover crop + compost + manure + organic matter + other = "+
			"12 lb N/ac fed + 0 lb N/ac fed + 40 lb N/ac fed + 0 lb N/ac fed + 0 lb N/ac fed = 52 lb N/ac fed",
		"credits = in reach + water + organic = 10 lb N/ac fed + 5 lb N/ac fed + 52 lb N/ac fed = 67 lb N/ac fed",
		"apply = the larger of 0 lb N/ac fed and (fed need − credits) = "+
			"the larger of 0 lb N/ac fed and (85.7 lb N/ac fed − 67 lb N/ac fed) = 18.7 lb N/ac fed",
		"surplus = the larger of 0 lb N/ac fed and (credits − fed need) = "+
			"the larger of 0 lb N/ac fed and (67 lb N/ac fed − 85.7 lb N/ac fed) = 0 lb N/ac fed",
		"other order = (the larger of 0 lb N/ac taken up and (need − credits × 100 %)) ÷ efficiency = "+
			"(the larger of 0 lb N/ac taken up and (60 lb N/ac taken up − 67 lb N/ac fed × 100 %)) ÷ 70 % = 0 lb N/ac fed")
}

// drawBudget draws a season, half of them with a need that was fed.
func drawBudget(t *testing.T, r *rand.Rand, bench *sheet.Bench) (need float64, fed bool, o sheet.Outcome) {
	t.Helper()
	values := draw(r, nitrogen.SeasonBudget)
	if r.IntN(2) == 0 { // near the credits that were drawn, so that as many are short as not
		values["need"] = min(500, (values["soil"]+values["water"])*r.Float64())
	}
	entries := map[string]sheet.Entry{}
	for name, value := range values {
		entries[name] = sheet.Entry{Value: value, High: value}
	}
	fed = r.IntN(2) == 0
	if e := entries["need"]; fed {
		e.Other = true
		entries["need"] = e
	} else if _, stated := entries["efficiency"]; !stated {
		entries["efficiency"] = sheet.Entry{Value: 70, High: 70}
	}
	o, err := bench.Work(entries)
	if err != nil {
		t.Fatalf("%v: %v", entries, err)
	}
	return entries["need"].Value, fed, o
}

// What goes on and what is credited, less what is left over, is the need as it is fed. A need that was fed is not
// divided, and one that is taken up is taken up of it.
func TestBudgetBalances(t *testing.T) {
	r := random(t)
	bench := sheet.NewBench(nitrogen.SeasonBudget)
	var short, surplus int
	for range 8 * draws {
		need, wasFed, o := drawBudget(t, r, bench)
		v := func(name string) float64 { return o.Value(name).Value }
		given := map[string]float64{"need": need, "credits": v("credits"), "fed": v("fed-need")}
		closeBy(t, "apply + credits − surplus", v("apply")+v("credits")-v("surplus"), v("fed-need"), given)
		back := v("fed-need") * v("efficiency") / 100
		if wasFed && v("fed-need") != need || !wasFed && math.Abs(back-need) > 1e-9*need {
			t.Fatalf("a need of %v (fed: %v) is %v to feed", need, wasFed, v("fed-need"))
		}
		if o.There("other-order") == wasFed {
			t.Fatalf("the other order is there (%v) for a need that was fed (%v)", o.There("other-order"), wasFed)
		}
		// By the walnut guide's order a credit counts more, so less is applied.
		if !wasFed && v("other-order") > v("apply")*(1+1e-12) {
			t.Fatalf("%v: the other order applies %v, ours %v", given, v("other-order"), v("apply"))
		}
		reach := 1.0
		if o.Stated("reach") {
			reach = v("reach") / 100
		}
		sum := v("soil")*reach + v("water")
		for _, credit := range credits[2:] {
			if o.Stated(credit) {
				sum += v(credit)
			}
		}
		closeBy(t, "the credits", sum, v("credits"), given)
		if v("short") > 0 {
			short++
		}
		if v("surplus") > 0 {
			surplus++
		}
		if v("short") > 0 && v("surplus") > 0 || v("apply") != v("short") {
			t.Fatalf("%v: short of %v, to apply %v, left over %v", given, v("short"), v("apply"), v("surplus"))
		}
	}
	if short < draws/2 || surplus < draws/2 {
		t.Errorf("%d budgets were short and %d had some left over: too few to say much", short, surplus)
	}
}

// A need says in which account it is, and one that is taken up needs the share.
func TestNeedTellsItsAccount(t *testing.T) {
	need := nitrogen.SeasonBudget.FindGiven("need")
	if _, err := need.Read("30 lb N/ac"); err == nil {
		t.Error("a need that tells no account was taken")
	}
	if _, err := need.Read("30 lb N/ac present"); err == nil {
		t.Error("a need that lies in the soil was taken")
	}
	refusedWith(t, nitrogen.SeasonBudget, []string{"need=30 lb N/ac taken up", "soil=0 lb N/ac", "water=0 lb N/ac"},
		"A need that is taken up is not yet what must go on. Put in efficiency, the share of a feed that trees take up; "+
			"or, if the rate was fed, write it as fed, such as 30 lb N/ac fed.")
}
