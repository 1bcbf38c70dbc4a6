package unit

import (
	"math"
	"testing"
)

// The pound-force of NIST Special Publication 811 (2008), appendix B, where it is exact: 4.448 221 615 260 5 N (the
// figures from memory).
func TestPoundForceIsExact(t *testing.T) {
	if poundForce.Cmp(rational("4.4482216152605")) != 0 {
		t.Errorf("it is %s N", poundForce.FloatString(14))
	}
}

// Values of NIST Special Publication 811 (2008), appendix B.8: psi to kPa, mechanical horsepower to kW, psi to bar;
// and the pascal, the joule and the watt in base units.
func TestUnitsOfMachines(t *testing.T) {
	for _, c := range []struct {
		from, to string
		want     float64
	}{
		{"kPa", "kg/(m·s2)", 1000}, {"kWh", "kg·m2/s2", 3600000}, {"kW", "kg·m2/s3", 1000},
		{"psi", "kPa", 6.894757}, {"hp", "kW", 0.7456999}, {"psi", "bar", 0.06894757},
	} {
		f, err := MustParse(c.from).To(MustParse(c.to))
		if got := f.Apply(1); err != nil || math.Abs(got/c.want-1) > 1e-6 {
			t.Errorf("1 %s is %v %s, %v; want %v", c.from, got, c.to, err, c.want)
		}
	}
}
