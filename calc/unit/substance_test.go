package unit

import "testing"

// For a unit of another substance the message offers the one to write instead, with what is below the line unchanged.
func TestUnitOfAnotherSubstance(t *testing.T) {
	for _, c := range []struct{ unit, of, want string }{
		{"lb N/ac", "NO3", "lb NO3/ac"},
		{"lb N/ac", "", "lb/ac"},
		{"lb/ac", "N", "lb N/ac"},
		{"ppm", "NO3-N", "ppm NO3-N"},
		{"gal water/ac", "product", "gal product/ac"},
		{"% N of product", "P2O5", "% P2O5 of product"},
		{"ac/lb", "N", ""},
		{"gal/ac", "N", ""},
		{"ft·lb", "N", "ft·lb N"},
		{"ft·lb N", "K", "ft·lb K"},
		{"$/lb N", "NO3", ""},
		{"trees/ac", "N", ""},
	} {
		got, ok := MustParse(c.unit).Of(c.of)
		want := MustParse(c.want)
		switch {
		case ok != (c.want != ""):
			t.Errorf("%s of %q: %v, %v", c.unit, c.of, got, ok)
		case ok && (got.String() != c.want || !got.Same(want) || got.Dimension() != want.Dimension()):
			t.Errorf("%s of %q is %s, want %s", c.unit, c.of, got, c.want)
		}
	}
}
