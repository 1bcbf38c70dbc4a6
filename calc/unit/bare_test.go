package unit

import "testing"

func TestBare(t *testing.T) {
	for _, c := range [][2]string{
		{"lb N/ac", "lb/ac"}, {"ppm NO3-N of soil", "ppm"}, {"oz product/tree", "oz/tree"}, {"gal/ac", "gal/ac"}, {"", ""},
	} {
		if got, want := MustParse(c[0]).Dimension().Bare(), MustParse(c[1]).Dimension(); got != want {
			t.Errorf("%s bare is %s, not %s", c[0], got, want)
		}
	}
	if d := MustParse("lb N/ac").Dimension(); d.Bare() == d || d != MustParse("kg N/ha").Dimension() {
		t.Error("the dimension itself was changed")
	}
}
