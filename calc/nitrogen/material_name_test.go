package nitrogen_test

import (
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
)

// A grade that is spelled nearly right, and a material that is called by its common name, are told the name to write.
func TestUnknownMaterialsAreToldTheNearest(t *testing.T) {
	material := nitrogen.MaterialAmount.FindGiven("material")
	for text, want := range map[string]string{
		"UAM-32": "UAN-32", "can17x": "CAN-17", "46-0-O": "46-0-0", "urea": "46-0-0",
		"Calcium nitrate": "15.5-0-0-19Ca", "ammonium sulfate": "21-0-0-24S", "aqua": "20-0-0",
	} {
		_, err := material.Read(text)
		if err == nil || !strings.Contains(err.Error(), "; write "+want+", or one of: ") {
			t.Errorf("%q gives %v, want %s", text, err, want)
		}
	}
	if _, err := material.Read("gravel"); err == nil || !strings.Contains(err.Error(), "; choose one of: UAN-32, ") {
		t.Errorf("gravel gives %v", err)
	}
}
