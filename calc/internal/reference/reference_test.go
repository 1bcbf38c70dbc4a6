package reference

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

func TestEveryRowIsRead(t *testing.T) {
	values, err := rows()
	if err != nil {
		t.Fatal(err)
	}
	if want := strings.Count(file, "\n") - 1; len(values) != want {
		t.Errorf("%d rows were read, the file has %d", len(values), want)
	}
	kinds := []string{"standard", "handbook", "worked-example", "common-practice", "from-memory"}
	for _, v := range values {
		if v.Source == "" || v.Quantity == "" || !slices.Contains(kinds, v.Kind) {
			t.Errorf("row %s is not complete: %+v", v.ID, v)
		}
		if letter := strings.ToLower(v.ID[:1]); !strings.HasPrefix(v.Topic, letter+"-") {
			t.Errorf("row %s stands in topic %s", v.ID, v.Topic)
		}
	}
}

func TestRowHasWhatTheFileSays(t *testing.T) {
	v := Row(t, "C03")
	if v.Expected != 109 || v.Unit != "lb N/acre" || v.Input(t, "nitrate_n_ppm") != 20 || v.Input(t, "acre_in") != 24 {
		t.Errorf("C03 was read as %+v", v)
	}
}

func TestToleranceIsThatOfTheRow(t *testing.T) {
	cases := []struct {
		id   string
		got  float64
		want bool
	}{
		{"C03", 109.5, true}, // abs:0.5
		{"C03", 108.5, true},
		{"C03", 109.51, false},
		{"B09", 0.226613 * (1 + 1.9e-5), true}, // rel:2e-5
		{"B09", 0.226613 * (1 - 2.1e-5), false},
		{"A07", 16, true}, // abs:0
		{"A07", 16.000000000000004, false},
	}
	for _, c := range cases {
		if Row(t, c.id).Accepts(c.got) != c.want {
			t.Errorf("%s accepts %v: want %v", c.id, c.got, c.want)
		}
	}
}

func TestFailureNamesRowAndSource(t *testing.T) {
	fake := &recorder{TB: t}
	Row(t, "C03").Check(fake, 54)
	want := []string{"C03", "54", "109 ± 0.5", "Accounting for nitrate in irrigation water"}
	if len(fake.faults) != 1 {
		t.Fatalf("a wrong value made %d faults", len(fake.faults))
	}
	for _, part := range want {
		if !strings.Contains(fake.faults[0], part) {
			t.Errorf("%q does not say %q", fake.faults[0], part)
		}
	}
}

func TestLedgerMissesNoRow(t *testing.T) {
	fake := &recorder{TB: t}
	ledger := Open(fake, "c-water-nitrate")
	ledger.Check("C03", 109)
	ledger.Check("C04", 2.72)
	ledger.LeaveOut("C04", "both ways")
	ledger.LeaveOut("C05", "")
	ledger.LeaveOut("C06", "a reason")
	fake.end()
	said := strings.Join(fake.faults, "\n")
	for _, part := range []string{
		"row C01 (lb_N_per_acre_inch_per_ppm_NO3N_exact) is neither checked nor left out with a reason",
		"row C04 (lb_N_per_acre_foot_per_ppm_NO3N) is checked and left out at once",
		"row C05 is left out without a reason",
	} {
		if !strings.Contains(said, part) {
			t.Errorf("the ledger does not say %q:\n%s", part, said)
		}
	}
	for _, id := range []string{"C03", "C06"} {
		if strings.Contains(said, id) {
			t.Errorf("the ledger complains of %s, which is settled:\n%s", id, said)
		}
	}
}

func TestBadRowsAreNamed(t *testing.T) {
	const head = "id,topic,quantity,inputs,expected,unit,tolerance,source,kind,seen_at\n"
	const good = "C03,c-water,n,a=1,109,lb,abs:0.5,s,standard,not-seen\n"
	cases := []struct{ row, want string }{
		{strings.Replace(good, "109", "many", 1), "reference row C03: the expected value is no number"},
		{strings.Replace(good, "abs:0.5", "about", 1), `reference row C03: the tolerance "about"`},
		{strings.Replace(good, "abs:0.5", "abs:-1", 1), `reference row C03: the tolerance "abs:-1"`},
		{strings.Replace(good, "a=1", "a", 1), `reference row C03: the input "a"`},
		{good + good, "reference row C03 is there twice"},
		{"C03,c-water\n", "the reference file can not be read"},
	}
	for _, c := range cases {
		if _, err := read(head + c.row); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("read(%q) says %v, want %q", c.row, err, c.want)
		}
	}
}

// A recorder is a test that only takes down what it is told.
type recorder struct {
	testing.TB
	faults   []string
	cleanups []func()
}

func (r *recorder) Helper()          {}
func (r *recorder) Cleanup(f func()) { r.cleanups = append(r.cleanups, f) }
func (r *recorder) Errorf(format string, args ...any) {
	r.faults = append(r.faults, fmt.Sprintf(format, args...))
}

func (r *recorder) end() {
	for _, f := range r.cleanups {
		f()
	}
}
