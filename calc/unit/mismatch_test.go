package unit

import (
	"errors"
	"testing"
)

func TestMismatchSentences(t *testing.T) {
	cases := []struct{ given, wanted, sentence string }{
		{"12 ft", "ppm NO3-N", "12 ft is a length; this needs ppm NO3-N"},
		{"12", "ppm NO3-N", "12 has no unit; this needs ppm NO3-N: write 12 ppm NO3-N"},
		{"0.62", "$/lb", "0.62 has no unit; this needs $/lb: write $0.62/lb"},
		{"5", "1/ac", "5 has no unit; this needs 1/ac: write 5/ac"},
		{"54 ppm NO3", "ppm NO3-N", "54 ppm NO3 is nitrate; this needs nitrate-nitrogen (ppm NO3-N)"},
		{"54 ppm NO3", "ppm NH4", "54 ppm NO3 is nitrate; this needs ammonium (ppm NH4)"},
		{"30 lb NO3-N/ac present", "lb N/ac present", "30 lb NO3-N/ac present is nitrate-nitrogen; this needs nitrogen " +
			"(lb N/ac present): a pound of NO3-N is a pound of N, so write 30 lb N/ac present"},
		{"12 ppm NH4-N", "ppm NO3-N", "12 ppm NH4-N is ammonium-nitrogen; this needs nitrate-nitrogen (ppm NO3-N): " +
			"take the line of the report that says NO3-N, NO3 or nitrate"},
		{"12 ppm NO2-N", "ppm NO3", "12 ppm NO2-N is nitrite-nitrogen; this needs nitrate (ppm NO3): " +
			"take the line of the report that says NO3-N, NO3 or nitrate"},
		{"12 ppm N", "ppm NO3-N", "12 ppm N is nitrogen; this needs nitrate-nitrogen (ppm NO3-N): N alone is " +
			"nitrogen of any form, so write 12 ppm NO3-N only if the report means nitrate as N"},
		{"20 ppm total N", "ppm NO3-N", "20 ppm total N is total nitrogen; this needs nitrate-nitrogen (ppm NO3-N): " +
			"take the line of the report that says NO3-N, NO3 or nitrate"},
		{"27 lb N/ac-ft", "ppm NO3-N of water", "27 lb N/ac-ft is nitrogen; this needs nitrate-nitrogen (ppm NO3-N of " +
			"water): N alone is nitrogen of any form, so write 27 lb NO3-N/ac-ft only if the report means nitrate as N"},
		{"0.01 kg N/m3", "ppm NO3-N of water", "0.01 kg N/m3 is nitrogen; this needs nitrate-nitrogen (ppm NO3-N of " +
			"water): N alone is nitrogen of any form, so write 0.01 kg NO3-N/m3 only if the report means nitrate as N"},
		{"2,000 lb in-shell/ac", "lb kernels/ac", "2,000 lb in-shell/ac is in-shell nuts; " +
			"this needs kernels (lb kernels/ac): weigh the crop in that form"},
		{"54 ppm", "ppm NO3-N", "54 ppm does not say what it is of; this needs nitrate-nitrogen (ppm NO3-N)"},
		{"48 lb/ac", "lb N/ac", "48 lb/ac does not say what it is of; this needs nitrogen (lb N/ac)"},
		{"48 lb N/ac", "lb/ac", "48 lb N/ac is nitrogen; this needs lb/ac with no substance named"},
		{"50 lb product/ac", "lb N/ac", "50 lb product/ac is product; this needs nitrogen (lb N/ac): " +
			"multiply it by the share of nitrogen in the product first"},
		{"90 lb P2O5/ac", "kg K2O/ha", "90 lb P2O5/ac is phosphate; this needs potash (kg K2O/ha)"},
		{"12 ppm N of water", "ppm N of soil",
			"12 ppm N of water is a share of N in water; this needs a share of N in soil (ppm N of soil)"},
		{"3 oz N/tree", "lb N/ac",
			"3 oz N/tree is a mass of N for each tree; this needs lb N/ac: multiply it by trees/ac first"},
		{"48 lb N/ac", "oz N/tree",
			"48 lb N/ac is a mass of N on an area; this needs oz N/tree: divide it by trees/ac first"},
		{"900 lb N", "lb N/ac", "900 lb N is a mass of N; this needs lb N/ac: divide it by the area of the block first"},
		{"48 lb N/ac", "lb N",
			"48 lb N/ac is a mass of N on an area; this needs lb N: multiply it by the area of the block first"},
		{"3 lb N", "oz N/tree", "3 lb N is a mass of N; this needs oz N/tree: divide it by the number of trees first"},
		{"3 oz N/tree", "lb N",
			"3 oz N/tree is a mass of N for each tree; this needs lb N: multiply it by the number of trees first"},
		{"48 lb N/ac", "lb N/ac/feed",
			"48 lb N/ac is a mass of N on an area; this needs lb N/ac/feed: divide it by the number of feeds first"},
		{"8 lb N/ac/feed", "lb N/ac",
			"8 lb N/ac/feed is a mass of N on an area for each feed; this needs lb N/ac: " +
				"multiply it by the number of feeds first"},
		{"20 gal/ac", "lb N/ac", "20 gal/ac is a volume on an area; this needs lb N/ac"},
		{"20 gal product/ac", "lb N/ac", "20 gal product/ac is a volume of product on an area; this needs lb N/ac"},
		{"10 ac-in/ac", "ft2", "10 ac-in/ac is a volume on an area; this needs ft2"},
		{"1.4 g/cm3", "in", "1.4 g/cm3 is a mass in a volume; this needs inches (in)"},
		{"110 trees/ac", "ft", "110 trees/ac is a count of trees on an area; this needs ft"},
		{"3 years", "trees", "3 years is a time; this needs trees"},
		{"70 %", "lb N/ac", "70 % is a plain number; this needs lb N/ac"},
		{"12 ft", "", "12 ft is a length; this needs a plain number"},
		{"$5/lb N", "$/gal", "$5/lb N is money for each mass of N; this needs $/gal"},
		{"4 ac", "lb", "4 ac is an area; this needs lb"},
		{"30 lb N/ac taken up", "lb N/ac fed", "30 lb N/ac taken up is taken up; this needs fed (lb N/ac fed): " +
			"divide it by the share of what is fed that the trees take up first"},
		{"30 lb N/ac fed", "lb N/ac taken up", "30 lb N/ac fed is fed; this needs taken up (lb N/ac taken up): " +
			"multiply it by the share of what is fed that the trees take up first"},
		{"48 lb N/ac present", "lb N/ac fed", "48 lb N/ac present is present; this needs fed (lb N/ac fed): " +
			"count what is in the soil as a credit instead"},
		{"48 lb N/ac fed", "lb N/ac present", "48 lb N/ac fed is fed; this needs present (lb N/ac present): " +
			"no share makes one of the other"},
		{"30 lb N/ac taken up", "lb N/ac present", "30 lb N/ac taken up is taken up; this needs present " +
			"(lb N/ac present): no share makes one of the other"},
		{"48 lb N/ac present", "lb N/ac taken up", "48 lb N/ac present is present; this needs taken up " +
			"(lb N/ac taken up): count what is in the soil as a credit instead"},
		{"48 lb N/ac", "lb N/ac fed", "48 lb N/ac does not say that it is fed; this needs lb N/ac fed"},
		{"70 % taken up/fed", "% fed/taken up", "70 % taken up/fed is a share taken up of what is fed; " +
			"this needs a share fed of what is taken up (% fed/taken up)"},
		{"70 % taken up/fed", "%", "70 % taken up/fed is a share taken up of what is fed; this needs a plain number (%)"},
		{"48 lb N/ac fed", "lb N/ac", "48 lb N/ac fed is fed; this needs lb N/ac with no account named"},
		{"70 % fed", "% taken up/fed", "70 % fed is a share fed; " +
			"this needs a share taken up of what is fed (% taken up/fed)"},
	}
	for _, c := range cases {
		q, err := ParseQuantity(c.given)
		if err != nil {
			t.Error(err)
			continue
		}
		wanted := MustParse(c.wanted)
		m := &Mismatch{Given: q.String(), Unit: q.Unit, Wanted: wanted}
		if m.Error() != c.sentence {
			t.Errorf("%s for %q says\n %s, want\n %s", c.given, c.wanted, m, c.sentence)
		}
		_, err = q.In(wanted)
		if _, converts := q.Unit.To(wanted); converts != nil && (err == nil || err.Error() != c.sentence) {
			t.Errorf("%s in %q says\n %v, want\n %s", c.given, c.wanted, err, c.sentence)
		}
	}
}

func TestMismatchOfUnitsAlone(t *testing.T) {
	cases := []struct{ from, to, sentence string }{
		{"ft", "ppm NO3-N", "ft is a length; this needs ppm NO3-N"},
		{"", "lb N/ac", "a number without a unit was given; this needs lb N/ac"},
	}
	for _, c := range cases {
		_, err := MustParse(c.from).To(MustParse(c.to))
		var m *Mismatch
		if !errors.As(err, &m) || m.Error() != c.sentence {
			t.Errorf("%q to %q says %v, want %s", c.from, c.to, err, c.sentence)
		}
	}
}

func TestMismatchOfRangeQuotesBothNumbers(t *testing.T) {
	r, err := ParseRange("3 to 4 oz N/tree")
	if err != nil {
		t.Fatal(err)
	}
	_, err = r.In(MustParse("ft"))
	want := "3 to 4 oz N/tree is a mass of N for each tree; this needs ft"
	if err == nil || err.Error() != want {
		t.Errorf("it says %v, want %s", err, want)
	}
}
