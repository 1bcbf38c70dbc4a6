package formula_test

import (
	"strings"
	"testing"

	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
)

// A script lays a definition out in one text, so that places can be read off it. Every text of the definition is a
// line of it, with spans as they would have in a file.
type script struct{ lines []string }

func (s *script) text(t string) formula.Text {
	start := len(strings.Join(append(s.lines, ""), "\n"))
	s.lines = append(s.lines, t)
	return formula.Text{Text: t, Span: formula.Span{Start: start, End: start + len(t)}}
}

// at is what is at a place, with its line.
func (s *script) at(span formula.Span) string {
	whole := strings.Join(s.lines, "\n")
	line := strings.Count(whole[:span.Start], "\n")
	start := len(strings.Join(append(append([]string{}, s.lines[:line]...), ""), "\n"))
	end := min(span.End, start+len(s.lines[line]))
	return s.lines[line][:span.Start-start] + "⟦" + whole[span.Start:end] + "⟧" + whole[end:start+len(s.lines[line])]
}

func (s *script) given(name, example, allowed string) formula.Given {
	return formula.Given{Name: s.text(name), Label: name, Example: s.text(example), Range: s.text(allowed)}
}

func (s *script) constant(name, value string) formula.Constant {
	return formula.Constant{Name: s.text(name), Value: s.text(value), Label: name, Source: "geometry"}
}

func (s *script) result(name, unit string) formula.Result {
	return formula.Result{Name: s.text(name), Label: name, Unit: s.text(unit)}
}

// sprayer is a definition with a given of most kinds, to hang formulas on. The work is that of the caller.
func sprayer(s *script, answerUnit string, work ...string) *formula.Definition {
	d := &formula.Definition{
		Name: s.text("sprayer"), Title: "Sprayer", Summary: "A test.",
		Givens: []formula.Given{
			s.given("flow", "0.4 gal/min", "0.05 to 5"),
			s.given("ground-speed", "5 mi/h", "0 to 20"),
			s.given("width", "20 in", "5 to 200"),
			s.given("share", "20 %", "0 to 100"),
			s.given("count", "3", "1 to 10"),
			s.given("area", "40 ac", "1 to 500"),
			s.given("rate", "3 lb/ac", "0 to 100"),
		},
		Constants: []formula.Constant{s.constant("bag", "50 lb")},
		Answers:   []formula.Result{s.result("answer", answerUnit)},
	}
	for _, line := range work {
		d.Work = append(d.Work, s.text(line))
	}
	return d
}

// everything uses all that sprayer has, so that nothing is left over.
const everything = "unused = pow(flow / flow * ground_speed / ground_speed * width / width, 2) + share + count + " +
	"area * rate / bag"

func value(t *testing.T, s *sheet.Sheet, name string) string {
	t.Helper()
	values := map[string]float64{}
	for _, g := range s.Givens {
		values[g.Name] = g.Typical
	}
	o, err := s.Evaluate(values)
	if err != nil {
		t.Fatal(err)
	}
	return o.Text(name)
}

func TestAnswers(t *testing.T) {
	for _, c := range []struct{ unit, formula, want string }{
		{"gal/ac", "flow / (ground_speed * width)", "23.8 gal/ac"},
		{"lb", "rate * area", "120 lb"},
		{"number", "round_up(rate * area / bag)", "3"},
		{"number", "round_down(rate * area / bag)", "2"},
		{"number", "1 - share", "0.8"},
		{"number", "count-share-count*share", "2.2"}, // names that have no hyphen have a minus between them
		{"number", "count + share", "3.2"},
		{"lb", `rate * area + "1 ton"`, "2,120 lb"},
		{"lb", `max(0, rate * area - "200 lb")`, "0 lb"},
		{"lb", `min(rate * area, bag, "1 ton")`, "50 lb"},
		{"ft", "sqrt(pow(width, 2))", "1.67 ft"},
		{"number", "sqrt(16 * count / count)", "4"},
		{"lb", "if(area > \"30 ac\", rate * area, bag)", "120 lb"},
		{"lb", "if(area > \"50 ac\", rate * area, if(count == 3 && !(share < 0), bag, 0))", "50 lb"},
		{"lb", "-bag", "-50 lb"},
		{"lb", "if(count != 3, rate * area, bag)", "50 lb"},
		{"lb", "if(count != 4, rate * area, bag)", "120 lb"},
		{"lb", "(if(area > \"30 ac\", rate * area, bag))", "120 lb"},
		{"number", "-2 + 7 - 3 - 1", "1"},
		{"number", "size(2 - count * 4) / 4", "2.5"},
		{"number", "2 * (3 + 4) / 5", "2.8"},
		{"lb", "0", "0 lb"},
		{"number", "pow(count, 3)", "27"},
		{"number", "pow(pow(pow(count / 3, 5), 5), 2)", "1"},
		{"number", "pow(count / 3 * 2, 8)", "256"},
		{"number", "pow(pow(pow(1, 8), 8), 8)", "1"},
		{"number", "pow(pow(count / 3, 5), 5) * pow(pow(count / 3, 5), 5)", "1"},
		{"lb", "round_up(bag / 3 * 2)", "34 lb"},
		{"lb", "round_up(2 / 3 * bag)", "34 lb"},
		{"lb/ac", "min(0, 0, rate)", "0 lb/ac"},
		{"lb/ac", "max(0, rate, 0)", "3 lb/ac"},
		{"lb", "round_up(min(bag, 0) + bag / 3)", "17 lb"},
		{"lb", "round_up(max(bag / 3, bag / 4))", "17 lb"},
		{"number", "round_up(share * share)", "1"},
		{"number", "round_up(max(share, 0))", "0.2"}, // 20 of what the author wrote, which is percent
		{"number", "round_down(share * share * 100 / 3)", "1"},
		{"in", "round_up(width / 3 + \"0 in\")", "7 in"},
	} {
		s := &script{}
		made, faults := formula.Make(sprayer(s, c.unit, everything, "answer = "+c.formula))
		for _, f := range faults {
			t.Errorf("%s: %s: %s", c.formula, s.at(f.Span), f.Text)
		}
		if made == nil {
			continue
		}
		if got := value(t, made, "answer"); got != c.want {
			t.Errorf("%s is %s, want %s", c.formula, got, c.want)
		}
	}
}

// Words that mean something in Go mean nothing to an author.
func TestNamesMayBeWordsOfGo(t *testing.T) {
	s := &script{}
	d := &formula.Definition{Name: s.text("words"), Title: "Words", Summary: "A test.",
		Givens: []formula.Given{
			s.given("range", "3 oz/tree", "0 to 20"), s.given("type", "$2/lb", "0 to 5"), s.given("go-func", "-2", "-9 to 9"),
			s.given("nil", "110 trees/ac", "1 to 1000"),
		},
		Work:    []formula.Text{s.text("map = range * nil"), s.text("var = if(go_func < 0, map * type, map * type * 2)")},
		Answers: []formula.Result{s.result("var", "$/ac")},
	}
	made, faults := formula.Make(d)
	if faults != nil {
		t.Fatalf("%s: %s", s.at(faults[0].Span), faults[0].Text)
	}
	if got := value(t, made, "var"); got != "$41.25/ac" { // 3 × 110 ÷ 16 × 2
		t.Errorf("it is %s", got)
	}
}

// A quantity between quotes that tells no account is in that of what it is compared with, and no other is read as it.
func TestQuotedQuantitiesTakeTheAccount(t *testing.T) {
	for formulaText, want := range map[string]string{
		`if(fed > "30 lb N/ac", 1, 2)`: "1", `if("50 lb N/ac" < fed, 1, 2)`: "2", `if(fed > "30 lb N/ac present", 1, 2)`: "",
	} {
		s := &script{}
		made, faults := formula.Make(&formula.Definition{Name: s.text("fed"), Title: "Fed", Summary: "A test.",
			Givens:  []formula.Given{s.given("fed", "40 lb N/ac fed", "0 to 99")},
			Work:    []formula.Text{s.text("answer = " + formulaText)},
			Answers: []formula.Result{s.result("answer", formula.PlainNumber)}})
		switch {
		case want == "" && (made != nil || len(faults) != 1):
			t.Errorf("%s: %+v", formulaText, faults)
		case want != "" && made == nil:
			t.Errorf("%s: %+v", formulaText, faults)
		case want != "" && value(t, made, "answer") != want:
			t.Errorf("%s is %s, want %s", formulaText, value(t, made, "answer"), want)
		}
	}
}

// A step of which nothing is said is in a unit that its author uses for such a quantity: that of a given before that of
// an answer, and the one that the arithmetic gives where there is none.
func TestStepsAreInUnitsOfTheirAuthor(t *testing.T) {
	for work, want := range map[string]string{
		"step = area / width":                        "12,545,280 in", // 43,560 ft2 in an acre
		"step = rate * area":                         "120 lb",
		"step = width / ground_speed * 88 / 5":       "4 s", // 5 mi/h is 88 in/s
		"step = bag / flow":                          "125 lb·min/gal",
		"step = bag / flow * flow / width * count*4": "30 lb/in",
	} {
		s := &script{}
		made, faults := formula.Make(sprayer(s, "s", everything, work, "answer = width / ground_speed"))
		if faults != nil {
			t.Errorf("%s: %s", work, faults[0].Text)
			continue
		}
		if got := value(t, made, "step"); got != want {
			t.Errorf("%s gives %s, want %s", work, got, want)
		}
	}
}
