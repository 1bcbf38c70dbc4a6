package nitrogen_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/unit"
)

// limePerMole is the lime, in grams, that takes up a mole of acid: half a mole of CaCO3.
func limePerMole(t testing.TB) float64 {
	t.Helper()
	return (weightOf(t, "Ca") + weightOf(t, "C") + 3*weightOf(t, "O")) / 2
}

func weightOf(t testing.TB, element string) float64 {
	t.Helper()
	weight, known := unit.AtomicWeight(element)
	if !known {
		t.Fatalf("no weight of %s", element)
	}
	return weight
}

// acidOf is the lime for a pound of nitrogen that makes so many acids for each atom.
func acidOf(t testing.TB, acids float64) float64 {
	t.Helper()
	return acids * limePerMole(t) / weightOf(t, "N")
}

// calciumOfCAN is the calcium of CAN-17, in %, that the university table prints beside its lime.
const calciumOfCAN = 8

// The forms of CAN-17 rest on the same calcium as its lime: two nitrates with each calcium, and half of the rest.
func TestFormsOfCANFollowFromItsCalcium(t *testing.T) {
	of := func(calcium float64) float64 {
		withCalcium := 2 * weightOf(t, "N") / weightOf(t, "Ca") * calcium
		return 100 * (withCalcium + (17-withCalcium)/2) / 17
	}
	got := work(t, nitrogen.MaterialCompare, write(t, nitrogen.MaterialCompare, compared("CAN-17")...))
	if nitrate := got.Value("first-nitrate").Value; math.Abs(nitrate-of(calciumOfCAN)) > 0.5 {
		t.Errorf("%v %% of its nitrogen is nitrate, and the calcium makes it %.1f", nitrate, of(calciumOfCAN))
	}
}

var gradePart = regexp.MustCompile(`^(\d+(?:\.\d+)?)(S|Ca)?$`)

// partOf reads a part of a grade: "N", "P2O5" or "K2O" by its place, "S" or "Ca" by its letters.
func partOf(t testing.TB, grade, part string) float64 {
	t.Helper()
	name, number, _ := strings.Cut(grade, "-")
	places := []string{"N", "P2O5", "K2O"}
	texts := strings.Split(grade, "-")
	if strings.Trim(name, "ANUC") == "" { // UAN-32
		texts = []string{number}
	}
	for i, text := range texts {
		found := gradePart.FindStringSubmatch(text)
		if found == nil {
			t.Fatalf("%q is no part of the grade %s", text, grade)
		}
		if found[2] == part || found[2] == "" && i < len(places) && places[i] == part {
			value, err := strconv.ParseFloat(found[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			return value
		}
	}
	return 0
}

// The lime of every material is near what the official method gives for its grade: half an acid for each nitrogen, two
// for each sulfur, one for each phosphorus, less two for each calcium and one for each potassium. Printed figures of
// one material differ by about 3 %, so that much is allowed.
func TestLimeIsThatOfTheOfficialMethod(t *testing.T) {
	mole := limePerMole(t)
	oxide := func(element string) float64 {
		atoms := map[string]float64{"P": 2.5, "K": 0.5}[element] // oxygen atoms to one of the element
		return mole / (weightOf(t, element) + atoms*weightOf(t, "O"))
	}
	// Not in the name of the grade.
	unnamed := map[string]map[string]float64{"CAN-17": {"Ca": calciumOfCAN}, "16-20-0": {"S": 15}}
	// The university table (San Joaquin County record 517758, page 79) prints "8 % calcium" for CAN-17, a whole number:
	// it may be half a percent more or less.
	rounded := map[string]float64{"CAN-17": 0.5}
	for _, o := range nitrogen.MaterialAmount.FindGiven("material").Choices {
		part := func(name string) float64 { return partOf(t, o.Name, name) + unnamed[o.Name][name] }
		want := acidOf(t, 0.5) + (2*mole/weightOf(t, "S")*part("S")+oxide("P")*part("P2O5")-
			2*mole/weightOf(t, "Ca")*part("Ca")-oxide("K")*part("K2O"))/part("N")
		if o.Name == "15-15-15" { // its potash comes with chloride or sulfate, which is as acid as the potash is not
			want += oxide("K")
		}
		got := answer(t, nitrogen.MaterialAmount, "lime", "lb CaCO3/ac", onePound(o.Name)...)
		if want < 0 { // it works like lime, and needs none
			if got != 0 {
				t.Errorf("%s: lime for a pound of nitrogen is %v, and it works like lime", o.Name, got)
			}
			got = -answer(t, nitrogen.MaterialAmount, "liming", "lb CaCO3/ac", onePound(o.Name)...)
		}
		slack := 2 * mole / weightOf(t, "Ca") * rounded[o.Name] / part("N")
		if math.Abs(got-want) > 0.03*math.Abs(want)+0.05+slack {
			t.Errorf("%s: lime for a pound of nitrogen is %v, and the method gives %.3f", o.Name, got, want)
		}
	}
}

// The table is in the order of the trade's list, and each material's grade says its own nitrogen.
func TestMaterialsAreTheGradesOfTheTrade(t *testing.T) {
	want := strings.Fields("UAN-32 UAN-28 CAN-17 AN-20 46-0-0 21-0-0-24S 34-0-0 15.5-0-0-19Ca 13-0-46 15-15-15 16-20-0 " +
		"11-52-0 18-46-0 10-34-0 20-0-0 82-0-0 12-0-0-26S 15-0-0-16S")
	liquids := " UAN-32 UAN-28 CAN-17 AN-20 10-34-0 20-0-0 82-0-0 12-0-0-26S "
	options := nitrogen.MaterialAmount.FindGiven("material").Choices
	if len(options) != len(want) {
		t.Fatalf("there are %d materials, want %d", len(options), len(want))
	}
	for i, o := range options {
		if o.Name != want[i] {
			t.Errorf("material %d is %s, want %s", i, o.Name, want[i])
		}
		got := work(t, nitrogen.MaterialAmount, write(t, nitrogen.MaterialAmount, onePound(o.Name)...))
		if strength := got.Value("strength").Value; strength != partOf(t, o.Name, "N") {
			t.Errorf("%s is listed at %v %% N", o.Name, strength)
		}
		if liquid := strings.Contains(liquids, " "+o.Name+" "); got.There("volume") != liquid {
			t.Errorf("%s is a liquid: %v, and gallons are given: %v", o.Name, liquid, got.There("volume"))
		}
		if o.Note == "" || !strings.HasSuffix(o.Note, ".") {
			t.Errorf("%s has no note in sentences: %q", o.Name, o.Note)
		}
		forms := work(t, nitrogen.MaterialCompare, write(t, nitrogen.MaterialCompare, compared(o.Name)...))
		var all float64
		for _, form := range []string{"first-nitrate", "first-ammonium", "first-urea"} {
			all += forms.Value(form).Value
		}
		if want := map[bool]float64{true: 100}[o.Name != "15-15-15"]; all != want || forms.There("first-urea") != (want > 0) {
			t.Errorf("the forms of %s make %v %%", o.Name, all)
		}
	}
}
