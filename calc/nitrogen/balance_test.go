package nitrogen_test

import (
	"testing"

	"acreleaf/calc/nitrogen"
)

func init() {
	signed["balance.difference"] = true
	situations = append(situations,
		situation{nitrogen.Balance, year("214", "170")}, situation{nitrogen.Balance, year("90", "150")})
	rules := "Rules differ in what counts as put on"
	sayings = append(sayings,
		saying{nitrogen.Balance, year("214", "170"), []string{"44 lb N/ac did not leave with the crop.", rules}},
		saying{nitrogen.Balance, year("170", "170"), []string{rules}},
		saying{nitrogen.Balance, year("0", "170"), []string{"More left with the crop than was put on.", rules}},
	)
	responses = append(responses,
		response{nitrogen.Balance, "ratio", "applied", 1}, response{nitrogen.Balance, "difference", "applied", 1})
	scalings = append(scalings,
		scaling{nitrogen.Balance, "ratio", 1, []string{"applied"}},
		scaling{nitrogen.Balance, "ratio", -1, []string{"removed"}},
		scaling{nitrogen.Balance, "ratio", 0, []string{"applied", "removed"}},
		scaling{nitrogen.Balance, "difference", 1, []string{"applied", "removed"}})
}

func year(applied, removed string) []string {
	return []string{"applied=" + applied + " lb N/ac", "removed=" + removed + " lb N/ac"}
}

func TestBalanceNeedsACrop(t *testing.T) {
	for _, removed := range []string{"0", "0.0000001", "0.99"} {
		withheld(t, nitrogen.Balance, year("30", removed), "Almost nothing was removed, so there is no ratio:")
	}
}

// Put on is removed and the difference, and removed times the ratio.
func TestBalanceGoesBothWays(t *testing.T) {
	r := random(t)
	for range draws {
		values, o := drawTaken(t, r, nitrogen.Balance)
		closeBy(t, "by the difference", values["removed"]+o.Value("difference").Value, values["applied"], values)
		closeBy(t, "by the ratio", values["removed"]*o.Value("ratio").Value, values["applied"], values)
	}
}

func TestBalanceByHand(t *testing.T) {
	byHand(t, nitrogen.Balance, year("214", "170"), map[string]float64{
		"upside-down": 170.0 / 214, "difference-for-ratio": 44.0 / 170, "wrong-way-round": -44})
	readsAs(t, nitrogen.Balance, year("214", "170"),
		"ratio = applied ÷ removed = 214 lb N/ac fed ÷ 170 lb N/ac taken up = 1.26",
		"difference = applied − removed = 214 lb N/ac fed − 170 lb N/ac taken up = 44 lb N/ac")
}
