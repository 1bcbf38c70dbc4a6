package nitrogen_test

import (
	"testing"

	"acreleaf/calc/nitrogen"
)

// credits are the givens of a season's budget that come off the demand.
var credits = []string{"soil", "water", "cover-crop", "compost", "manure", "organic-matter", "other"}

func init() {
	situations = append(situations, situation{nitrogen.SeasonBudget,
		append(budget("120", "15", "18"), "compost=12 lb N/ac", "organic-matter=20 lb N/ac")})
	once := "Count each credit once,"
	sayings = append(sayings,
		saying{nitrogen.SeasonBudget, append(budget("120", "15", "18"), "organic-matter=40 lb N/ac"), []string{feeds, once}},
		saying{nitrogen.SeasonBudget, append(budget("120", "15", "18"), "organic-matter=41 lb N/ac"),
			[]string{"NOTICE 41 lb N/ac is a good deal from organic matter:", feeds, once}},
		saying{nitrogen.SeasonBudget, append(budget("35", "15", "0"), "manure=20 lb N/ac"), []string{covered, once}},
	)
	for _, credit := range credits[2:] {
		responses = append(responses, response{nitrogen.SeasonBudget, "credits", credit, 1})
	}
	responses = append(responses, response{nitrogen.SeasonBudget, "apply", "compost", -1})
}

// A credit is worth the same wherever it comes from, and none left empty stands in the work.
func TestCreditsAreWorthTheSame(t *testing.T) {
	bare := budget("60", "10", "5")
	for _, credit := range credits[2:] {
		got := answer(t, nitrogen.SeasonBudget, "apply", "lb N/ac", append(bare, credit+"=12 lb N/ac")...)
		alike(t, credit, got, 33/0.7)
	}
	readsAs(t, nitrogen.SeasonBudget, append(bare, "cover-crop=12 lb N/ac", "manure=40 lb N/ac"),
		"organic = cover crop + compost + manure + organic matter + other = "+
			"12 lb N/ac + 0 lb N/ac + 40 lb N/ac + 0 lb N/ac + 0 lb N/ac = 52 lb N/ac",
		"credits = soil + water + organic = 10 lb N/ac + 5 lb N/ac + 52 lb N/ac = 67 lb N/ac",
		"short = the larger of 0 lb N/ac and (demand − credits) = "+
			"the larger of 0 lb N/ac and (60 lb N/ac − 67 lb N/ac) = 0 lb N/ac",
		"apply = short ÷ efficiency = 0 lb N/ac ÷ 70 % = 0 lb N/ac",
		"surplus = the larger of 0 lb N/ac and (credits − demand) = "+
			"the larger of 0 lb N/ac and (67 lb N/ac − 60 lb N/ac) = 7 lb N/ac")
}

// What is applied, less what is lost of it, and the credits are what the trees take up.
func TestWhatIsAppliedAndCreditedIsTheDemand(t *testing.T) {
	r := random(t)
	for range draws {
		values, o := drawTaken(t, r, nitrogen.SeasonBudget)
		v := func(name string) float64 { return o.Value(name).Value }
		closeBy(t, "demand", v("apply")*values["efficiency"]/100+v("credits")-v("surplus"), values["demand"], values)
	}
}
