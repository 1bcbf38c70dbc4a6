package nitrogen_test

import (
	"math/big"
	"testing"

	"acreleaf/calc/nitrogen"
)

// An acre-inch is 43,560 ft2 × 1/12 ft; a cubic metre of water is 1,000 kg, and a ppm a millionth of it; a pound is
// 0.45359237 kg and a foot 0.3048 m, exactly (NIST Handbook 44, Appendix C). C01 has the same to six digits.
func TestAcreInchIsExactToTheLastBit(t *testing.T) {
	exact := big.NewRat(43_560, 12)
	foot := big.NewRat(3048, 10_000)
	for range 3 {
		exact.Mul(exact, foot)
	}
	exact.Mul(exact, big.NewRat(1000, 1_000_000))
	exact.Quo(exact, big.NewRat(45_359_237, 100_000_000))
	want, _ := exact.Float64()

	got := constant(t, nitrogen.WaterNitrogen, "acre-inch").Quantity.Value
	if got != want {
		t.Errorf("the constant is %b, the nearest number to the exact ratio %b", got, want)
	}
	o := work(t, nitrogen.WaterNitrogen, map[string]float64{"nitrate": 1, "water": 1})
	if got := o.Value("nitrogen").Value; got != want {
		t.Errorf("1 ppm in 1 in is %b, want %b", got, want)
	}
}
