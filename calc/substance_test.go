package calc_test

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

var update = flag.Bool("update", false, "write testdata/substances.txt anew; then read it")

// substanceFile says of every given of the catalogue what becomes of every substance and account that may be written
// for it, for a person to read.
const substanceFile = "testdata/substances.txt"

// chemistry are the substances that convert into each other by their atomic weights alone, and no others do.
var chemistry = [][2]string{
	{"NO3", "NO3-N"}, {"NO2", "NO2-N"}, {"NH4", "NH4-N"}, {"NH3", "NH3-N"}, {"urea", "urea-N"},
	{"P2O5", "P"}, {"K2O", "K"}, {"SO4", "S"}, {"CaO", "Ca"},
}

// carriers may be left unsaid, and nutrients may not.
var carriers = strings.Fields("soil water product material fertilizer crop kernels in-shell CPC shells-and-hulls " +
	"lime CaCO3")

var accounts = []string{"fed", "taken up", "present"}

// A verdict is what becomes of a quantity that is typed for a given.
type verdict struct {
	taken bool
	by    float64 // the value over what is typed, in units of the given's scale; 0 when it is not taken
	form  int
	unit  unit.Unit // that the value is in
}

// judge types a quantity of a unit for a given. Only the kind counts: what is too large is taken.
func judge(t *testing.T, g *sheet.Given, u unit.Unit) verdict {
	t.Helper()
	const number = 7
	e, err := g.Read(unit.Quantity{Value: number, Unit: u}.String())
	outside := err != nil && strings.Contains(err.Error(), "is outside what this calculation takes")
	switch {
	case err == nil:
		return verdict{true, e.Value / e.Typed, e.Form, g.UnitFor(e)}
	case !outside:
		if !strings.Contains(err.Error(), "write") {
			t.Errorf("%s: %s is refused with no word on what to write: %v", g.Name, u, err)
		}
		return verdict{}
	}
	if factor, err := u.For(g.Unit); err == nil {
		return verdict{true, factor.Apply(1), 0, g.Unit}
	}
	return verdict{true, 1, 0, u} // of the second kind, and more of it than is taken
}

// substanceOf is the substance of a given's unit, "" when it is of none.
func substanceOf(u unit.Unit) string {
	for _, s := range unit.Substances() {
		if of, ok := u.Of(s); ok && of.Dimension() == u.Dimension() {
			return s
		}
	}
	return ""
}

// A row is what becomes of the substances and accounts for one given.
type row struct {
	wanted, chemistry, forms, refused, accountsTaken, accountsRefused []string
	unsaid                                                            bool
}

func TestEveryGivenAndEverySubstance(t *testing.T) {
	var text strings.Builder
	text.WriteString(substanceHead)
	for _, s := range calc.Standard().All() {
		for _, g := range s.Givens {
			for _, kind := range kindsOf(g) {
				if _, may := kind.Of(""); may && !g.Date && len(g.Choices) == 0 {
					fmt.Fprintf(&text, "\n%s %s, in %s\n", s.Name, g.Name, kind)
					examine(t, s, g, kind).write(&text)
				}
			}
		}
	}
	if *update {
		if err := os.WriteFile(substanceFile, []byte(text.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(substanceFile)
	if err != nil {
		t.Fatal(err)
	}
	if text.String() != string(want) {
		t.Errorf("%s is not what the calculations do: run go test ./calc -run Substance -update, and read what changed",
			substanceFile)
	}
}

// kindsOf are the units of the kinds of quantity that a given takes, its own first.
func kindsOf(g *sheet.Given) []unit.Unit {
	kinds := []unit.Unit{g.Unit}
	if g.Else.Unit != "" {
		kinds = append(kinds, unit.MustParse(g.Else.Unit))
	}
	return kinds
}

// write lists what becomes of the substances, a line for each end that they come to.
func (r row) write(text *strings.Builder) {
	for _, line := range []struct {
		name string
		list []string
	}{
		{"wanted", r.wanted}, {"told as a form", r.forms}, {"by chemistry", r.chemistry}, {"refused", allOthers(r.refused)},
		{"account taken", r.accountsTaken}, {"account refused", r.accountsRefused},
	} {
		if len(line.list) > 0 {
			fmt.Fprintf(text, "  %-16s %s\n", line.name, strings.Join(line.list, ", "))
		}
	}
	fmt.Fprintf(text, "  %-16s %s\n", "left unsaid", map[bool]string{true: "may be", false: "refused"}[r.unsaid])
}

const substanceHead = `What becomes of every substance and every account that may be written for a given.
Made by go test ./calc -run Substance -update, and read by a person after each change.
wanted: it is what the given is of, under any of its words. by chemistry: converted by atomic weights.
told as a form: the number is taken, and the calculation refuses a form that its figure is not for.
`

// allOthers is said in place of a long list of what is refused.
func allOthers(refused []string) []string {
	return []string{fmt.Sprintf("all others (%d)", len(refused))}
}

// A link takes from another sheet what a person may type, in the account that it is in, and nothing else.
func TestALinkTakesWhatMayBeTyped(t *testing.T) {
	taken, refused := 0, 0
	for _, from := range calc.Standard().All() {
		graph := &sheet.Graph{}
		graph.Add("from", from, nil)
		for _, answer := range from.Answers() {
			if answer.Date || answer.When != nil {
				continue
			}
			for _, to := range calc.Standard().All() {
				for _, g := range to.Givens {
					if g.Date || len(g.Choices) > 0 {
						continue
					}
					v := judge(t, g, answer.Unit)
					want := v.taken && answer.Unit.Dimension().SameAccounts(v.unit.Dimension())
					err := graph.CheckLink(to, g.Name, sheet.Link{Use: "from", Name: answer.Name})
					if (err == nil) != want {
						t.Errorf("%s.%s for %s.%s: a link says %v, and typing takes it: %v", from.Name, answer.Name, to.Name,
							g.Name, err, v.taken)
					}
					if want {
						taken++
					} else {
						refused++
					}
				}
			}
		}
	}
	if taken < 100 || refused < 100 {
		t.Errorf("%d links are taken and %d refused", taken, refused)
	}
}

// examine types every substance and account for one kind of a given, and holds what becomes of them to the rules.
func examine(t *testing.T, s *sheet.Sheet, g *sheet.Given, kind unit.Unit) row {
	t.Helper()
	var r row
	own := substanceOf(kind)
	name := s.Name + " " + g.Name
	bare, _ := kind.Of("")
	r.unsaid = judge(t, g, bare).taken || own == "" && judge(t, g, kind).taken
	if nutrient := own != "" && !slices.Contains(carriers, own); nutrient == r.unsaid {
		t.Errorf("%s is of %q, and that may be left unsaid: %v", name, own, r.unsaid)
	}
	same := judge(t, g, kind).by
	for _, substance := range unit.Substances() {
		of, _ := kind.Of(substance)
		v := judge(t, g, of)
		switch {
		case !v.taken:
			r.refused = append(r.refused, substance)
		case v.form > 0:
			r.forms = append(r.forms, substance)
		case own == "" && slices.Contains(carriers, substance), own != "" && of.Dimension() == kind.Dimension():
			r.wanted = append(r.wanted, substance)
			if v.by != same {
				t.Errorf("%s: %s is taken %v times", name, substance, v.by/same)
			}
		default:
			r.chemistry = append(r.chemistry, fmt.Sprintf("%s × %s", substance, unit.Text(v.by/same)))
			holdToChemistry(t, name, own, substance, v.by/same)
		}
	}
	for _, account := range accounts {
		told := strings.TrimSuffix(kind.String(), " "+kind.Account()) + " " + account
		if judge(t, g, unit.MustParse(told)).taken {
			r.accountsTaken = append(r.accountsTaken, account)
		} else {
			r.accountsRefused = append(r.accountsRefused, account)
		}
	}
	if len(r.accountsTaken) > 2 {
		t.Errorf("%s takes every account", name)
	}
	return r
}

// holdToChemistry wants a substance that is converted to be a compound of the wanted element, by its share of it.
func holdToChemistry(t *testing.T, name, own, other string, by float64) {
	t.Helper()
	for _, pair := range chemistry {
		compound, element := pair[0], strings.TrimSuffix(strings.TrimPrefix(pair[1], "urea-"), "-N")
		if strings.HasSuffix(pair[1], "-N") {
			element = "N"
		}
		formula := strings.Replace(compound, "urea", "CO(NH2)2", 1)
		share, err := unit.Share(element, formula)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case own == pair[1] && other == compound && near(by, share), own == compound && other == pair[1] && near(by, 1/share):
			return
		}
	}
	t.Errorf("%s is of %s, and %s is taken for it, times %v", name, own, other, by)
}

func near(a, b float64) bool { return a/b-1 < 1e-12 && b/a-1 < 1e-12 }
