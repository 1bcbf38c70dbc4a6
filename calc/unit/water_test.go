package unit

import (
	"math"
	"testing"
)

// What a laboratory prints for the nitrate in water, as ppm NO3-N: the atomic weights (IUPAC 2021: N 14.007, O 15.999),
// an acre-foot of 43,560 cubic feet, and a litre of water as a kilogram.
func TestNitrateInWaterHoweverItIsTold(t *testing.T) {
	asked := MustParse("ppm NO3-N").Carried("water")
	for text, want := range map[string]float64{
		"1 mg/L NO3-N": 1, "1 g NO3-N/m3": 1, "0.001 kg NO3-N/m3": 1, "1000 ug/L NO3-N": 1,
		"1 meq/L NO3": 14.007, "1 mmol/L NO3": 14.007, "1 mmol/L NO3-N": 14.007, "100 umol/L NO3": 1.4007,
		"62.004 mg/L NO3": 14.007,
		// 2.72 lb/ac-ft for each ppm (0.2266 an acre-inch): C01 of the published values prints 2.7.
		"2.7193619626968594 lb NO3-N/ac-ft": 1, "0.22661349689140495 lb NO3-N/ac-in": 1,
		"12.037647 lb NO3/ac-ft": 1,
	} {
		q, err := ParseQuantity(text)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		f, err := q.Unit.For(asked)
		if got := f.Apply(q.Value); err != nil || math.Abs(got/want-1) > 1e-6 {
			t.Errorf("%s is %v ppm NO3-N, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"lb N/ac-ft", "lb NH4-N/ac-ft", "meq/L NH4", "lb NO3-N/ac", "g NO3-N/kg soil"} {
		if f, err := MustParse(text).For(asked); err == nil {
			t.Errorf("%s was taken for nitrate in water, times %v", text, f)
		}
	}
}

func TestSoilIsNotToldByTheLitre(t *testing.T) {
	asked := MustParse("ppm NO3-N").Carried("soil")
	for _, text := range []string{"mg/L NO3-N", "ug/L NO3", "meq/L NO3", "mmol/L NO3-N"} {
		_, err := MustParse(text).For(asked)
		want := text + " is for a litre of water, and this is a share of soil; " +
			"take the line of a soil report, in ppm NO3-N or in mg/kg"
		if err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", text, err, want)
		}
	}
	for _, text := range []string{"ppm NO3-N", "mg/kg NO3-N", "mg NO3-N/kg soil"} {
		if f, err := MustParse(text).For(asked); err != nil || f != (Factor{1, 1}) {
			t.Errorf("%s for a share of soil: %v, %v", text, f, err)
		}
	}
	for _, text := range []string{"g NO3-N/m3", "lb NO3-N/ac-ft"} {
		if _, err := MustParse(text).For(asked); err == nil {
			t.Errorf("%s was taken for a share of soil", text)
		}
	}
}
