package unit

import (
	"errors"
	"testing"
)

func TestParseQuantity(t *testing.T) {
	cases := []struct {
		text, unit string
		value      float64
		written    string // how String gives it back; the text itself when empty
	}{
		{"12 ppm NO3-N", "ppm NO3-N", 12, ""},
		{"3.5 oz N/tree", "oz N/tree", 3.5, ""},
		{"18 ft", "ft", 18, ""},
		{"10 ac-in/ac", "ac-in/ac", 10, ""},
		{"1.4 g/cm3", "g/cm3", 1.4, ""},
		{"1,200 lb/ac", "lb/ac", 1200, ""},
		{"1200 lb/ac", "lb/ac", 1200, "1,200 lb/ac"},
		{"2,000,000 lb soil/ac per 6 in", "lb soil/ac per 6 in", 2e6, ""},
		{"$0.62/lb", "$/lb", 0.62, ""},
		{"$ 0.62 / lb", "$/lb", 0.62, "$0.62/lb"},
		{"0.62 $/lb", "$/lb", 0.62, "$0.62/lb"},
		{"-$5/ac", "$/ac", -5, ""},
		{"$-5/ac", "$/ac", -5, "-$5/ac"},
		{"$1,200", "$", 1200, ""},
		{"70 %", "%", 70, ""},
		{"70%", "%", 70, "70 %"},
		{"12ppm NO3-N", "ppm NO3-N", 12, "12 ppm NO3-N"},
		{"  12   ppm\tNO3-N ", "ppm NO3-N", 12, "12 ppm NO3-N"},
		{"12\u00a0ppm NO3-N", "ppm NO3-N", 12, "12 ppm NO3-N"},
		{".5 in", "in", 0.5, "0.5 in"},
		{"5. in", "in", 5, "5 in"},
		{"-4 in", "in", -4, ""},
		{"−4 in", "in", -4, "-4 in"},
		{"7", "", 7, ""},
		{"68 lb N per 1000 lb crop", "lb N per 1000 lb crop", 68, ""},
		{"5/ac", "1/ac", 5, ""},
		{"5 /6 in", "/6 in", 5, ""},
		{"1.23 × 10^15 lb", "lb", 1.23e15, ""},
		{"0 lb", "lb", 0, ""},
		{"12 acres", "ac", 12, "12 ac"},
		{"½ in", "in", 0.5, "0.5 in"},
		{"1/2 in", "in", 0.5, "0.5 in"},
		{"2½ oz N/tree", "oz N/tree", 2.5, "2.5 oz N/tree"},
		{"2 1/2 in", "in", 2.5, "2.5 in"},
		{"2-1/2 in", "in", 2.5, "2.5 in"},
		{"-1/4 in", "in", -0.25, "-0.25 in"},
		{"$1 1/4/gal", "$/gal", 1.25, "$1.25/gal"},
		{`12"`, "in", 12, "12 in"},
		{"18'", "ft", 18, "18 ft"},
		{`18' 6"`, "in", 222, "222 in"},
		{"5 ft 6 1/2 in.", "in", 66.5, "66.5 in"},
		{"48# N/A", "lb N/ac", 48, "48 lb N/ac"},
		{"18 pounds of nitrogen", "lb N", 18, "18 lb N"},
		{"3 tons an acre", "tons/ac", 3, "3 tons/ac"},
		{"$3 a gallon", "$/gal", 3, "$3/gal"},
		{"1 tree", "tree", 1, ""},
	}
	for _, c := range cases {
		q, err := ParseQuantity(c.text)
		if err != nil {
			t.Errorf("ParseQuantity(%q): %v", c.text, err)
			continue
		}
		if q.Value != c.value || !q.Unit.Same(MustParse(c.unit)) {
			t.Errorf("ParseQuantity(%q) is %v of %q", c.text, q.Value, q.Unit)
		}
		want := c.written
		if want == "" {
			want = c.text
		}
		if q.String() != want {
			t.Errorf("%q is written %q, want %q", c.text, q, want)
		}
		again, err := ParseQuantity(q.String())
		if err != nil || again.Value != q.Value || !again.Unit.Same(q.Unit) {
			t.Errorf("%q reads back as %v, %v", q, again, err)
		}
	}
}

func TestBadQuantities(t *testing.T) {
	const unknown = " is not a unit or a substance known here; "
	cases := []struct {
		text    string
		at      int
		message string
	}{
		{"", 0, "nothing is written here; write a number with its unit, such as 12 ppm NO3-N"},
		{"  \t", 3, "nothing is written here; write a number with its unit, such as 12 ppm NO3-N"},
		{"lb", 0, `"lb": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"twelve ppm", 0, `"twelve ppm": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"$/lb", 0, `"$/lb": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"-", 0, `"-": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"NaN", 0, `"NaN": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"Inf lb", 0, `"Inf lb": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"trace", 0, `"trace": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"<5", 0, `"<5": a lab writes < for less than; write the number you want to use, such as 0`},
		{"<5 ppm NO3-N", 0, `"<5 ppm NO3-N": a lab writes < for less than; write the number you want to use, such as 0`},
		{"> 50 ppm", 0, `"> 50 ppm": a lab writes > for more than; write the number you want to use`},
		{"ND", 0, `"ND": ND means not detected; write the number you want to use, such as 0`},
		{"1,2 lb", 0, `"1,2 lb": a comma parts thousands, as in 1,200; for a decimal write a point, as in 1.2`},
		{"12,34 lb", 0, `"12,34 lb": a comma parts thousands, as in 1,200; for a decimal write a point, as in 12.34`},
		{"0,123 lb", 0, `"0,123 lb": a comma parts thousands, as in 1,200; for a decimal write a point, as in 0.123`},
		{"1,23,456 lb", 0,
			`"1,23,456 lb": a comma parts thousands, as in 1,200; put the commas there or leave them out`},
		{"12,34.5 lb", 0,
			`"12,34.5 lb": a comma parts thousands, as in 1,200; put the commas there or leave them out`},
		{",5 lb", 0, `",5 lb": a comma parts thousands, as in 1,200; for a decimal write a point, as in 0.5`},
		{"1.234,5 lb", 0,
			`"1.234,5 lb": commas part thousands, before the decimal point only; write it such as 1,200.5`},
		{"1.2.3 lb", 0, `"1.2.3 lb": a number has one decimal point; write it such as 1.2`},
		{". lb", 0, `". lb": there is no digit in this number; write it such as 12 or 0.5`},
		{"1 200 lb", 0, `"1 200 lb": two numbers are side by side; write one, such as 1,200 or 1.5`},
		{"0x1F lb", 0, `"0x1F lb": write the number in ordinary digits, such as 12 or 0.5`},
		{"- 1/2 in", 0, `"- 1/2 in": there is no number here; write one in digits, such as 12 ppm NO3-N`},
		{"2.5 1/2 in", 0, `"2.5 1/2 in": two numbers are side by side; write one, such as 1,200 or 1.5`},
		{"7/5 in", 0, `"7/5 in": write a fraction as a decimal, such as 0.5 for 1/2`},
		{"3/7 in", 0, `"3/7 in": write a fraction as a decimal, such as 0.5 for 1/2`},
		{"4/15/27 in", 0, `"4/15/27 in": write a fraction as a decimal, such as 0.5 for 1/2`},
		{"1e5 lb", 0, `"1e5 lb": write the number out in full, such as 1,200 or 0.001`},
		{"1E-5 lb", 0, `"1E-5 lb": write the number out in full, such as 1,200 or 0.001`},
		{"3 to 4 oz N/tree", 0, `"3 to 4 oz N/tree": a range cannot be here; write one number`},
		{"3–4 oz N/tree", 0, `"3–4 oz N/tree": a range cannot be here; write one number`},
		{"12 ozz", 3, `"ozz"` + unknown + `did you mean "oz"?`},
		{"12 ppm N03", 7, `"N03"` + unknown + `did you mean "NO3"?`},
		{"$5 per lbb", 7, `"lbb"` + unknown + `did you mean "lb"?`},
		{"12 lb lb)", 8, `"lb lb)": this ) closes no bracket; take it out`},
	}
	for _, c := range cases {
		q, err := ParseQuantity(c.text)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("ParseQuantity(%q) gives %v, %v", c.text, q, err)
			continue
		}
		if e.Message != c.message {
			t.Errorf("ParseQuantity(%q) says\n %s, want\n %s", c.text, e.Message, c.message)
		}
		if e.At != c.at || e.Text != c.text {
			t.Errorf("ParseQuantity(%q) is wrong at %d of %q, want %d", c.text, e.At, e.Text, c.at)
		}
	}
}

func TestQuantityConverts(t *testing.T) {
	cases := []struct{ given, in, want string }{
		{"12 in", "ft", "1 ft"},
		{"3 ft", "in", "36 in"},
		{"48 lb N/ac", "kg N/ha", "53.8 kg N/ha"},
		{"54 ppm NO3", "ppm NO3-N", "12.2 ppm NO3-N"},
		{"45 mg/L NO3", "mg/L NO3-N", "10.2 mg/L NO3-N"},
		{"10 ac-in/ac", "in", "10 in"},
		{"1 ac-in/ac", "gal/ac", "27,154 gal/ac"},
		{"$500/ton", "$/lb", "$0.25/lb"},
		{"70 %", "", "0.7"},
		{"1.4 g/cm3", "lb/ft3", "87.4 lb/ft3"},
	}
	for _, c := range cases {
		q, err := ParseQuantity(c.given)
		if err != nil {
			t.Error(err)
			continue
		}
		if got, err := q.In(MustParse(c.in)); err != nil || got.String() != c.want {
			t.Errorf("%s in %q is %v, %v; want %s", c.given, c.in, got, err, c.want)
		}
	}
}

func TestCarriedKeepsTheText(t *testing.T) {
	u := MustParse("ppm NO3-N").Carried("soil")
	if u.String() != "ppm NO3-N" || u.Dimension() != MustParse("ppm NO3-N of soil").Dimension() {
		t.Errorf("it is %q, %v", u, u.Dimension())
	}
	if again := u.Carried("water"); !again.Same(u) {
		t.Errorf("a unit that has a carrier took another: %v", again.Dimension())
	}
	for _, bad := range []string{"N", "sand"} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s was taken for a carrier", bad)
				}
			}()
			MustParse("ppm NO3-N").Carried(bad)
		}()
	}
}

func TestAsChangesTheTextOnly(t *testing.T) {
	u := MustParse("g soil/cm3")
	if v := u.As("g/cm3"); v.String() != "g/cm3" || !v.Same(u) {
		t.Errorf("it is %q, %v", v, v.Dimension())
	}
}

func TestWorkedOutUnitsDropWhatCancels(t *testing.T) {
	p := MustParse
	cases := []struct {
		got  Unit
		want string
	}{
		{p("oz N/tree").Times(p("trees/ac")), "oz N/ac"},
		{p("ft").Times(p("ft")), "ft2"},
		{p("ft2/tree").Over(p("ft")), "ft/tree"},
		{p("lb").Over(p("lb")), ""},
		{p("").Times(p("lb N/ac")), "lb N/ac"},
		{p("lb N/ac").Over(p("")), "lb N/ac"},
		{p("").Over(p("ac")), "1/ac"},
		{p("lb").Over(p("ac")).Over(p("in")), "lb/(ac·in)"},
		{p("in").Times(p("lb soil/ac per 6 in")), "in·lb soil/(ac·(6 in))"},
		{p("mg").Over(p("L")), "mg/(L)"},
		{p("$").Times(p("$")), "$·$"},
		{p("lb N").Power(2), "lb N·lb N"},
		{p("ft").Power(3), "ft3"},
		{p("ft").Power(0), ""},
		{p("ft2").Power(-1), "1/ft2"},
		{p("oz N/tree fed").Times(p("trees/ac")), "oz N/ac fed"},
		{p("lb N/ac taken up").Over(p("% taken up/fed")), "lb N/(ac·%) fed"},
		{p("lb N/ac taken up").Over(p("taken up/fed")), "lb N/ac fed"},
		{p("lb N/ac taken up").Over(p("lb N/ac fed")), "taken up/fed"},
		{p("lb N/ac fed").Power(2), "lb N·lb N/ac2 fed fed"},
		{p("lb N/ac").Over(p("lb N/ac fed")), "1/fed"},
	}
	for _, c := range cases {
		if c.got.String() != c.want {
			t.Errorf("it is %q, want %q", c.got, c.want)
		}
	}
}

func TestRoot(t *testing.T) {
	roots := map[string]string{"ft2": "ft", "ft·ft": "ft", "ft4/in2": "ft2/in", "": "", "lb N·lb N": "lb N"}
	for text, want := range roots {
		root, ok := MustParse(text).Root()
		if !ok || root.String() != want || !root.Power(2).Same(MustParse(text)) {
			t.Errorf("the root of %q is %q, %v; want %q", text, root, ok, want)
		}
	}
	for _, text := range []string{"ft", "ac", "lb N/ac", "in·ft"} {
		if root, ok := MustParse(text).Root(); ok {
			t.Errorf("the root of %q is said to be %q", text, root)
		}
	}
}

func TestMeantLeavesOutButNeverStatesAnother(t *testing.T) {
	cases := []struct {
		figure, answer string
		factor         string // empty when the figure can not mean the answer
	}{
		{"lb/ac", "lb N/ac", "1/1"},
		{"oz/ac", "lb N/ac", "1/16"},
		{"lb N/ac", "lb N/ac", "1/1"},
		{"ppm", "ppm NO3-N", "1/1"},
		{"lb P/ac", "lb N/ac", ""},
		{"lb N/ac", "lb/ac", ""},
		{"lb/tree", "lb N/ac", ""},
	}
	for _, c := range cases {
		f, ok := MustParse(c.figure).Meant(MustParse(c.answer))
		if ok != (c.factor != "") || ok && f.Text() != c.factor {
			t.Errorf("%q for %q is %v, %v; want %q", c.figure, c.answer, f, ok, c.factor)
		}
	}
}

// What is wrong and what to write are parted for those who print them apart.
func TestAdviceStandsApart(t *testing.T) {
	for text, want := range map[string][2]string{
		"45 has no unit; write 45 lb":             {"45 has no unit", "write 45 lb"},
		"45 lb is a mass; this needs lb N/ac":     {"45 lb is a mass; this needs lb N/ac", ""},
		"a; this needs b; write for example 10 b": {"a; this needs b", "write for example 10 b"},
		"nothing to advise":                       {"nothing to advise", ""},
	} {
		if sentence, advice := Advice(errors.New(text)); sentence != want[0] || advice != want[1] {
			t.Errorf("%q is parted into %q and %q", text, sentence, advice)
		}
	}
}
