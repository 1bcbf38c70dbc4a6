package formula_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
)

// The arithmetic that has no answer for some numbers says so for those, and for no others.
func TestDivisionByNothingIsRefusedInWords(t *testing.T) {
	const byCount = "The work divides by “count - 3”, and that is 0 for these numbers. Change them."
	const byStep = "The work divides by past three, and that is 0 for these numbers. Change them."
	const root = "The work takes the square root of “count - 3”, and that is below 0 for these numbers. Change them."
	for _, c := range []struct {
		work    []string
		count   float64
		refused string
	}{
		{[]string{"answer = rate / (count - 3)"}, 3, byCount},
		{[]string{"answer = rate / (count - 3)"}, 4, ""},
		{[]string{"past_three = count - 3", "answer = rate / past_three"}, 3, byStep},
		{[]string{"answer = if(count > 3, rate / (count - 3), rate)"}, 3, ""},
		{[]string{"answer = if(count > 3, rate / (count - 2), rate / (count - 3))"}, 3, byCount},
		{[]string{"answer = if(count > 3, rate / (count - 3), rate / (count - 3))"}, 3, byCount},
		{[]string{"answer = if(count > 3, rate, if(count < 3, rate / (count - 3), rate))"}, 3, ""},
		{[]string{"answer = if(count > 3, if(count > 2, rate / (count - 3), rate), rate)"}, 3, ""},
		{[]string{"answer = rate * sqrt(count - 3)"}, 2, root},
		{[]string{"answer = rate * sqrt(count - 3)"}, 3, ""},
	} {
		s := &script{}
		made, faults := formula.Make(sprayer(s, "lb/ac", append([]string{everything}, c.work...)...))
		if faults != nil {
			t.Fatalf("%v: %+v", c.work, faults)
		}
		values := map[string]float64{}
		for _, g := range made.Givens {
			values[g.Name] = g.Typical
		}
		values["count"] = c.count
		_, err := made.Evaluate(values)
		var refused *sheet.Refused
		switch errors.As(err, &refused); {
		case c.refused == "" && err != nil:
			t.Errorf("%v of %g: %v", c.work, c.count, err)
		case c.refused != "" && (refused == nil || !slices.Contains(refused.Sentences, c.refused)):
			t.Errorf("%v of %g: %v, want %q", c.work, c.count, err, c.refused)
		}
	}
}

// What cannot be 0 by the ranges of its givens costs a page nothing.
func TestNoRefusalWhereNoneCanBe(t *testing.T) {
	for _, c := range []struct {
		formula string
		want    int
	}{
		{"rate / count", 0},       // 1 to 10
		{"rate / (count + 1)", 0}, // 2 to 11
		{"rate * flow / (count * flow)", 0},
		{"rate / share", 1},            // 0 to 100 %
		{"rate / (count - 10.5)", 0},   // -9.5 to -0.5
		{"rate / max(share, 0.1)", 0},  // 10 % or more
		{"rate / min(share, 0.1)", 1},  // 0 to 10 %
		{"rate / size(count - 11)", 0}, // 1 to 10
		{"rate / size(count - 5)", 1},  // 0 to 5
		// count - 8 is -7 to 2, so its size is 0 to 7, and not 0 to 2
		{"rate / (size(count - 8) - 5)", 1},
		{"rate / (size(count - 8) - 8)", 0},
		{"rate / pow(count, 2)", 0}, // 1 to 100
		{"rate / (pow(count, 2) - 50)", 1},
		{"rate / (pow(count, 2) - 100.5)", 0},
		{"rate * sqrt(count - 10)", 1},         // -9 to 0
		{"rate * sqrt(count - 9.5)", 1},        // -8.5 to 0.5
		{"rate * sqrt(count)", 0},              // 1 to 10
		{"rate * sqrt(count - 1)", 0},          // 0 to 9
		{"rate * sqrt(count - 2)", 1},          // -1 to 8
		{"rate / -count", 0},                   // -10 to -1
		{"rate / (1 - share / 2)", 0},          // 0.5 to 1
		{"rate / round_up(count)", 0},          // 1 to 10
		{"rate / round_down(count)", 0},        // 1 to 10
		{"rate / round_down(count - 0.5)", 1},  // 0 to 9
		{"rate / round_down(count - 10.5)", 0}, // -10 to -1
		{"rate / round_up(count - 10.5)", 1},   // -9 to 0
		{"rate / round_up(count - 11)", 0},     // -10 to -1
		{"if(count > 5, rate, bag / area)", 0},
	} {
		s := &script{}
		made, faults := formula.Make(sprayer(s, "lb/ac", everything, "answer = "+c.formula))
		if faults != nil {
			t.Fatalf("%v: %+v", c.formula, faults)
		}
		refusals := 0
		for _, r := range made.Remarks {
			if r.Signal == sheet.Refusal {
				refusals++
			}
		}
		// the line that uses everything divides by the speed, which may be 0
		if refusals-1 != c.want {
			t.Errorf("%s has %d refusals, want %d", c.formula, refusals-1, c.want)
		}
	}
}

// A figure that is in the work without a name is listed as one of which no source is known; one of a unit is not.
func TestFiguresOfTheWorkAreListed(t *testing.T) {
	s := &script{}
	made, faults := formula.Make(sprayer(s, "lb/ac", everything,
		`other = rate * "1 day" / "24 h" + "2 lb/ac" + "2 lb/ac" + "3 lb/ac" + "0 lb/ac"`, "answer = rate"))
	if faults != nil {
		t.Fatal(faults)
	}
	var listed []string
	for _, c := range made.Constants {
		listed = append(listed, c.Name+", "+c.Quantity.String()+", "+c.Sources[0])
	}
	want := []string{"bag, 50 lb, geometry", "figure-2, 24 h, memory", "figure-3, 2 lb/ac, memory",
		"figure-4, 3 lb/ac, memory"}
	if !slices.Equal(listed, want) {
		t.Errorf("%q, want %q", listed, want)
	}
	if got := value(t, made, "other"); got != "10 lb/ac" {
		t.Errorf("the line gives %s, want 10 lb/ac", got)
	}
}

// A name that an author took is left to the author, and "-2" is printed as it is written.
func TestFiguresTakeNoNameOfAnother(t *testing.T) {
	s := &script{}
	made, faults := formula.Make(&formula.Definition{Name: s.text("taken"), Title: "Taken", Summary: "A test.",
		Givens:    []formula.Given{s.given("figure-1", "3 lb", "0 to 9")},
		Constants: []formula.Constant{s.constant("one", "1 lb")},
		Work:      []formula.Text{s.text(`answer = figure_1 + "2 lb" + -2 * "5 lb" + one - "1 lb"`)},
		Answers:   []formula.Result{s.result("answer", "lb")}})
	if faults != nil {
		t.Fatal(faults)
	}
	if got := value(t, made, "answer"); got != "-5 lb" {
		t.Errorf("it is %s, want -5 lb", got)
	}
	var listed []string
	for _, c := range made.Constants {
		listed = append(listed, c.Name)
	}
	if !slices.Equal(listed, []string{"one", "figure-2", "figure-3"}) { // "1 lb" without a name is a unit
		t.Errorf("%q", listed)
	}
	o, err := made.Evaluate(map[string]float64{"figure-1": 3})
	if err != nil || !strings.Contains(o.Work()[0], "+ -2 × 5 lb + 1 lb") {
		t.Errorf("the work is %q, %v", o.Work(), err)
	}
}
