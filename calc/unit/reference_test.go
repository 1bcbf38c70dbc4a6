package unit

import (
	"testing"

	"acreleaf/calc/internal/reference"
)

// TestPublishedConstants checks every row of topic a: units, atomic weights and what follows from the two. The comment
// beside each row is its source; the full titles are in SOURCES.md beside the reference file.
func TestPublishedConstants(t *testing.T) {
	rows := reference.Open(t, "a-constants")
	for _, c := range []struct{ id, from, to string }{
		{"A01", "ac", "ft2"},            // NIST Handbook 44 App. C (international acre); CIA World Factbook App. G
		{"A02", "ac", "m2"},             // NIST Handbook 44 App. C; CIA World Factbook App. G
		{"A03", "ac", "ha"},             // NIST Handbook 44 App. C; CIA World Factbook App. G
		{"A04", "ha", "ac"},             // reciprocal of A03
		{"A05", "lb", "kg"},             // International yard and pound agreement 1959
		{"A06", "oz", "g"},              // International yard and pound agreement 1959
		{"A07", "lb", "oz"},             // International yard and pound agreement 1959
		{"A08", "ft", "m"},              // International yard and pound agreement 1959
		{"A09", "in", "m"},              // International yard and pound agreement 1959
		{"A10", "gal", "in3"},           // NIST Handbook 44 App. C; Truckee-Carson Irrigation District
		{"A11", "gal", "L"},             // NIST Handbook 44 App. C
		{"A12", "ton", "kg"},            // NIST Handbook 44 App. C
		{"A13", "ac-in", "gal"},         // exact ratio 3630 ft3 x 1728/231
		{"A14", "ac-in", "gal"},         // Truckee-Carson Irrigation District; UC Sacramento Valley ET report FAQ
		{"A15", "ac-in", "ft3"},         // Truckee-Carson Irrigation District
		{"A16", "ac-ft", "gal"},         // Oregon Water Resources Dept.; Oklahoma Water Resources Board
		{"A17", "ac-ft", "m3"},          // exact; printed as 1233 by Colorado River District
		{"A18", "cfs", "gal/min"},       // Oregon Water Resources Dept.
		{"A19", "lb/ac", "kg/ha"},       // exact ratio A05/A03
		{"A20", "kg/ha", "lb/acre"},     // reciprocal of A19
		{"A21", "gal/ac", "L/ha"},       // exact ratio A11/A03
		{"A22", "ton/ac", "t/ha"},       // exact ratio A12/A03
		{"A31", "kg NO3", "kg NO3-N"},   // from IUPAC weights
		{"A32", "kg NH4", "kg NH4-N"},   // from IUPAC weights
		{"A33", "kg urea", "kg urea-N"}, // from IUPAC weights
		{"A34", "kg NH3", "kg NH3-N"},   // Virginia Tech Extension SPES-201NP, Table 1a
		{"A35", "kg P2O5", "kg P"},      // Virginia Tech Extension SPES-201NP, Table 1a
		{"A36", "kg K2O", "kg K"},       // Virginia Tech Extension SPES-201NP, Table 1a
		{"A37", "kg P", "kg P2O5"},      // Virginia Tech Extension SPES-201NP, Table 1a
	} {
		factor, err := MustParse(c.from).To(MustParse(c.to))
		if err != nil {
			t.Errorf("%s: %v", c.id, err)
			continue
		}
		rows.Check(c.id, factor.Apply(1))
	}
	for _, id := range []string{"A23", "A24", "A25", "A26", "A27", "A28", "A29", "A30"} { // IUPAC/CIAAW 2021
		weight, known := AtomicWeight(rows.Row(id).Inputs["element"])
		if !known {
			t.Errorf("%s: no atomic weight for %v", id, rows.Row(id).Inputs)
		}
		rows.Check(id, weight)
	}
	for _, id := range []string{"A31", "A32", "A33", "A34", "A38"} { // IUPAC; Virginia Tech Extension SPES-201NP
		share, err := Share("N", rows.Row(id).Inputs["molecule"])
		if err != nil {
			t.Errorf("%s: %v", id, err)
		}
		rows.Check(id, share)
	}
	// A39: Virginia Tech Extension SPES-201NP, Table 1a: pure ammonium sulfate that holds one pound of N.
	sulfate, err := Share("N", "(NH4)2SO4")
	if err != nil {
		t.Fatal(err)
	}
	rows.Check("A39", rows.Row("A39").Input(t, "N_lb")/sulfate)
}
