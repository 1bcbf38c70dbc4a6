package fact

import (
	"slices"
	"testing"
)

// A thing must not meet what any of its traits must not meet, once, and the most dangerous comes first.
func TestApart(t *testing.T) {
	for _, c := range []struct {
		traits Trait
		want   []string
	}{
		{0, nil},
		{Pressure, nil},
		{Solution | Nitrate, []string{"WARNING strong acid", "NOTICE calcium"}},
		{Acid | Sulfate, []string{"DANGER ammonia", "DANGER thiosulfate", "DANGER chlorine (bleach)", "WARNING nitrate",
			"NOTICE calcium"}},
		{Ammonia, []string{"DANGER strong acid", "DANGER chlorine (bleach)", "NOTICE calcium", "NOTICE phosphate"}},
	} {
		var got []string
		for _, m := range Apart(c.traits, "en") {
			got = append(got, m.Signal.String()+" "+m.With)
			if len(m.Sources) == 0 {
				t.Errorf("%v: nothing is cited for %s", c.traits, m.With)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v is kept from %q, want %q", c.traits, got, c.want)
		}
	}
	// calcium meets sulfate and phosphate of one thing: two pairs, and the sources of both
	both := Apart(Sulfate|Phosphate, "es")
	cited := []string{"ucanr-mixing", "nrcs-nm-jar"}
	if len(both) != 2 || both[0].With != "calcio" || !slices.Equal(both[0].Sources, cited) {
		t.Errorf("sulfate and phosphate are kept from %v", both)
	}
}
