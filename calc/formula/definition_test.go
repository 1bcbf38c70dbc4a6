package formula_test

import (
	"math"
	"strings"
	"testing"

	"acreleaf/calc/fact"
	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
)

// Each way that a definition goes wrong: what is done to one without a fault, and what is said, at its place. A fault
// is reported once, so that each has one line here for each thing that is wrong.
var flawed = []struct {
	name string
	do   func(s *script, d *formula.Definition)
	want string // by line: place: text; note
}{
	{"nothing", func(*script, *formula.Definition) {}, ""},
	{"a name of the calculation", func(s *script, d *formula.Definition) {
		d.Name = s.text("My Sprayer")
	},
		"calculation-name ⟦My Sprayer⟧: “My Sprayer” cannot be the name of a calculation; use small " +
			"letters a to z and digits, with a letter first, and hyphens between words"},
	{"a name of a given", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("Rate", "3 lb/ac", "0 to 9")
	},
		"formula-name unused = pow(flow / flow * ground_speed / ground_speed * width / width, 2) + " +
			"share + count + area * ⟦rate⟧ / bag: there is no “rate” in this calculation; add it under " +
			"givens or constants, or write one of: flow, ground_speed, width, share, count, area, bag, " +
			"unused, answer\n" +
			"formula-name answer = ⟦rate⟧: there is no “rate” in this calculation; add it under givens or " +
			"constants, or write one of: flow, ground_speed, width, share, count, area, bag, unused, answer\n" +
			"calculation-name ⟦Rate⟧: “Rate” cannot be the name of a given; use small letters a to z and " +
			"digits, with a letter first, and hyphens between words"},
	{"a given called as a function", func(s *script, d *formula.Definition) {
		d.Givens = append(d.Givens, s.given("round-up", "3 lb/ac", "0 to 9"))
	},
		"calculation-name ⟦round-up⟧: “round-up” is a function of the arithmetic; choose another name, " +
			"such as tank-round-up"},
	{"a given twice", func(s *script, d *formula.Definition) {
		d.Givens = append(d.Givens, s.given("rate", "3 lb/acc", "0 to 9"))
	},
		"calculation-name-twice ⟦rate⟧: there is a quantity “rate” in this calculation already; give " +
			"one of the two another name"},
	{"a name of a constant", func(s *script, d *formula.Definition) {
		d.Constants = append(d.Constants, s.constant("Bag", "50 lb"))
	},
		"calculation-name ⟦Bag⟧: “Bag” cannot be the name of a constant; use small letters a to z and " +
			"digits, with a letter first, and hyphens between words"},
	{"a line with a hyphen in its name", func(s *script, d *formula.Definition) {
		d.Work = append(d.Work, s.text("wind-speed = rate"))
	},
		"calculation-name ⟦wind-speed⟧ = rate: “wind-speed” cannot be the name of a line of work; " +
			"write wind_speed: in the work a hyphen is a minus"},
	{"a line with a capital in its name", func(s *script, d *formula.Definition) {
		d.Work = append(d.Work, s.text("Wind_speed = rate"))
	},
		"calculation-name ⟦Wind_speed⟧ = rate: “Wind_speed” cannot be the name of a line of work; " +
			"use small letters a to z and digits, with a letter first, and _ between words"},
	{"lines after one without a name", func(s *script, d *formula.Definition) {
		d.Work = append([]formula.Text{s.text("rate * 2")}, append(d.Work, s.text("more = answer"), s.text("most = more"))...)
	},
		"work-line ⟦rate * 2⟧: this line of work gives nothing a name; begin it with a name and =, " +
			"such as: rate = flow / area"},
	{"lines after one that cannot be called so", func(s *script, d *formula.Definition) {
		d.Work = append([]formula.Text{s.text("Two = rate * 2")},
			append(d.Work, s.text("more = answer"), s.text("most = more"))...)
	},
		"calculation-name ⟦Two⟧ = rate * 2: “Two” cannot be the name of a line of work; " +
			"use small letters a to z and digits, with a letter first, and _ between words"},
	{"a line of nothing", func(s *script, d *formula.Definition) {
		d.Work = append(d.Work, s.text("more ="))
	}, "formula-empty more ⟦=⟧: there is no formula here; write the arithmetic: flow / area"},
	{"the longest of the names with hyphens", func(s *script, d *formula.Definition) {
		d.Constants = append(d.Constants, s.constant("big-tank-size", "9 gal"), s.constant("tank-size", "5 gal"))
		d.Work = append(d.Work, s.text("tanks = big_tank_size + tank_size + count*tank_size + big-tank-size"))
	},
		"formula-hyphen tanks = big_tank_size + tank_size + count*tank_size + ⟦big-tank-size⟧: in a formula " +
			"“big-tank-size” is a minus; write big_tank_size for the name, or spaces around a minus"},
	{"a constant twice", func(s *script, d *formula.Definition) {
		d.Constants = append(d.Constants, s.constant("rate", "3 lb/acc"))
	},
		"calculation-name-twice ⟦rate⟧: there is a quantity “rate” in this calculation already; give " +
			"one of the two another name"},
	{"a constant that cannot be read", func(s *script, d *formula.Definition) {
		d.Constants[0] = s.constant("bag", "50 lbb")
	},
		"calculation-constant 50 ⟦lbb⟧: \"lbb\" is not a unit or a substance known here; did you mean " +
			"\"lb\"?"},
	{"a constant that breaks off", func(s *script, d *formula.Definition) {
		d.Constants[0] = s.constant("bag", "50 lb per")
	},
		"calculation-constant ⟦50 lb per⟧: \"lb per\": the unit breaks off; write what is missing at its end"},
	{"a constant without a number", func(s *script, d *formula.Definition) {
		d.Constants[0] = s.constant("bag", "lb")
	},
		"calculation-constant ⟦lb⟧: \"lb\": there is no number here; write one in digits, such as 12 ppm " +
			"NO3-N"},
	{"an example that cannot be read", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3 lb/acc", "0 to 9")
	},
		"calculation-given 3 lb/⟦acc⟧: \"acc\" is not a unit or a substance known here; did you mean \"ac\"?"},
	{"an example that cannot be read, beside a line that looks for a unit", func(s *script, d *formula.Definition) {
		d.Givens = append([]formula.Given{s.given("wind", "3 lbb", "0 to 9")}, d.Givens...)
		d.Work = append(d.Work, s.text("part = rate * area"))
	}, "calculation-given 3 ⟦lbb⟧: \"lbb\" is not a unit or a substance known here; did you mean \"lb\"?"},
	{"a range that cannot be read", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3 lb/ac", "0 to")
	},
		"calculation-range ⟦0 to⟧: \"0 to\": the second number is missing; write it, as in 3 to 4 oz " +
			"N/tree"},
	{"a range of another kind", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3 lb/ac", "0 to 9 ft")
	},
		"calculation-range ⟦0 to 9 ft⟧: 0 to 9 ft is a length; this needs lb/ac; write the range in the " +
			"unit of the example"},
	{"a range of one number", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3 lb/ac", "3 to 3")
	},
		"calculation-range ⟦3 to 3⟧: a range needs two different numbers; write the least and the most " +
			"that are taken, such as 0 to 600"},
	{"an example above its range", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3 lb/ac", "0 to 2")
	},
		"calculation-range ⟦0 to 2⟧: the example, 3 lb/ac, is outside this range; write a wider range, " +
			"or another example"},
	{"an example below its range", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3 lb/ac", "4 to 9")
	},
		"calculation-range ⟦4 to 9⟧: the example, 3 lb/ac, is outside this range; write a wider range, " +
			"or another example"},
	{"the ends of a range", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3 lb/ac", "0 to 3")
		d.Givens[5] = s.given("area", "40 ac", "40 to 50")
	}, ""},
	{"units of another kind", func(s *script, d *formula.Definition) {
		d.Givens[6].Units = []formula.Text{s.text("kg/ha"), s.text("ft"), s.text("lbb"), s.text("")}
	},
		"calculation-unit ⟦ft⟧: ft and lb/ac do not measure the same thing; write another unit of the " +
			"kind of lb/ac\n" +
			"calculation-unit ⟦lbb⟧: \"lbb\" is not a unit or a substance known here; did you mean \"lb\"?\n" +
			"calculation-unit ⟦⟧: a unit is missing here; write one, or number for a plain number"},
	{"an example without its unit, and one unit with it", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3", "0 to 9")
		d.Givens[6].Units = []formula.Text{s.text("kg/ha")}
	}, "calculation-unit ⟦kg/ha⟧: kg/ha and a plain number do not measure the same thing; " +
		"write another unit of the kind of a plain number"},
	{"an example in another unit, and one unit that is none", func(s *script, d *formula.Definition) {
		d.Givens[6] = s.given("rate", "3", "0 to 9")
		d.Givens[6].Units = []formula.Text{s.text("lbb")}
	}, "calculation-unit ⟦lbb⟧: \"lbb\" is not a unit or a substance known here; did you mean \"lb\"?"},
	{"no work", func(s *script, d *formula.Definition) {
		d.Work, d.Answers = nil, d.Answers[:0]
	},
		"work-line ⟦sprayer⟧: this calculation has no work; add lines such as:\n" +
			"work:\n" +
			"  - rate = flow / area\n" +
			"calculation-answer ⟦sprayer⟧: this calculation has no answer; add lines such as:\n" +
			"answers:\n" +
			"  rate:\n" +
			"    label: Spray on an acre\n" +
			"    unit: gal/ac"},
	{"no answer", func(s *script, d *formula.Definition) {
		d.Answers = nil
	},
		"calculation-answer ⟦sprayer⟧: this calculation has no answer; add lines such as:\n" +
			"answers:\n" +
			"  rate:\n" +
			"    label: Spray on an acre\n" +
			"    unit: gal/ac"},
	{"an answer without a line", func(s *script, d *formula.Definition) {
		d.Answers = append(d.Answers, s.result("anwser", "lb/ac"), s.result("flow-rate", "lb/ac"))
	},
		"calculation-answer ⟦anwser⟧: no line of work gives the answer “anwser”; write answer, or add a " +
			"line of work that begins with: anwser =\n" +
			"calculation-answer ⟦flow-rate⟧: no line of work gives the answer “flow-rate”; add a line of " +
			"work that begins with: flow_rate ="},
	{"a step that is an answer", func(s *script, d *formula.Definition) {
		d.Steps = append(d.Steps, s.result("answer", "lb/ac"))
	},
		"calculation-name-twice ⟦answer⟧: “answer” is among the answers already; take it out of one " +
			"of the two"},
	{"an answer without a unit", func(s *script, d *formula.Definition) {
		d.Answers[0] = s.result("answer", "")
	},
		"calculation-unit ⟦⟧: a unit is missing here; write one, or number for a plain number"},
	{"an answer in no known unit", func(s *script, d *formula.Definition) {
		d.Answers[0] = s.result("answer", "lb/acc")
	},
		"calculation-unit lb/⟦acc⟧: \"acc\" is not a unit or a substance known here; did you mean \"ac\"?"},
	{"an answer in another unit", func(s *script, d *formula.Definition) {
		d.Answers[0] = s.result("answer", "ft")
	},
		"formula-units ⟦ft⟧: answer works out as lb/ac, and its unit here is ft; write lb/ac for its " +
			"unit, or multiply or divide in the line by what makes ft of that"},
	{"an answer in another unit, and a line that uses it", func(s *script, d *formula.Definition) {
		d.Answers[0] = s.result("answer", "ft")
		d.Work = append(d.Work, s.text("more = answer * 2"))
	},
		"formula-units ⟦ft⟧: answer works out as lb/ac, and its unit here is ft; write lb/ac for its " +
			"unit, or multiply or divide in the line by what makes ft of that"},
	{"a step in another unit", func(s *script, d *formula.Definition) {
		d.Steps = append(d.Steps, s.result("unused", "lb"))
	},
		"formula-units ⟦lb⟧: unused works out as a plain number, and its unit here is lb; write a plain " +
			"number for its unit, or multiply or divide in the line by what makes lb of that"},
	{"a step without a unit", func(s *script, d *formula.Definition) {
		d.Steps = append(d.Steps, s.result("unused", ""))
	}, ""},
	{"a second unit of another kind", func(s *script, d *formula.Definition) {
		d.Answers[0].Also = s.text("ft")
	},
		"calculation-unit ⟦ft⟧: ft and lb/ac do not measure the same thing; write another unit of the " +
			"kind of lb/ac"},
	{"a second unit that is none", func(s *script, d *formula.Definition) {
		d.Answers[0].Also = s.text("kgg/ha")
	},
		"calculation-unit ⟦kgg/ha⟧: \"kgg\" is not a unit or a substance known here; did you mean \"kg\"?"},
	{"a second unit", func(s *script, d *formula.Definition) {
		d.Answers[0].Also = s.text("kg/ha")
	}, ""},
	{"a note of nothing", func(s *script, d *formula.Definition) {
		d.Notes = []formula.Text{s.text("At {rat} or {bag} or {zebra}."), s.text("At {rate bare} and {answer}."),
			s.text("At {rate")}
	},
		"remark-name At {⟦rat⟧} or {bag} or {zebra}.: there is no quantity “rat” to show; write " +
			"{rate}\n" +
			"remark-name At {rat} or {⟦bag⟧} or {zebra}.: there is no quantity “bag” to show; write one " +
			"of: {flow}, {ground-speed}, {width}, {share}, {count}, {area}, {rate}, {unused}, {answer}\n" +
			"remark-name At {rat} or {bag} or {⟦zebra⟧}.: there is no quantity “zebra” to show; write " +
			"one of: {flow}, {ground-speed}, {width}, {share}, {count}, {area}, {rate}, {unused}, {answer}\n" +
			"remark-name At ⟦{⟧rate: this { has no } after it; write the name of a quantity between the " +
			"two: {rate}"},
	{"a check that is no question", func(s *script, d *formula.Definition) {
		d.Checks = []formula.Check{{When: s.text("rate"), Say: s.text("Much.")},
			{When: s.text("rate >"), Say: s.text("Much.")},
			{When: s.text(`rate > "2 lb/ac"`), Say: s.text("Of {rat}.")}}
	},
		"formula-question ⟦rate⟧: rate is a quantity, and a question is needed; compare it with " +
			"something: rate > \"1 lb/ac\"\n" +
			"formula rate ⟦>⟧: the formula stops after “>”; write what comes after it\n" +
			"remark-name Of {⟦rat⟧}.: there is no quantity “rat” to show; write {rate}"},
	{"cases without a sentence", func(s *script, d *formula.Definition) {
		d.Cases = []formula.Check{{When: s.text(`rate > "2 lb/ac"`), Say: s.text("Much.")}}
	},
		"calculation-sentence ⟦Much.⟧: these cases leave nothing to say when none of them holds; add a " +
			"line such as: sentence: It comes to {answer}."},
	{"cases that cannot be asked", func(s *script, d *formula.Definition) {
		d.Sentence = s.text("It is {answer}.")
		d.Cases = []formula.Check{{When: s.text("rate"), Say: s.text("Much.")},
			{When: s.text("rate >"), Say: s.text("Much.")},
			{When: s.text(`rate > "2 lb/ac"`), Say: s.text("{rat}.")}}
	},
		"formula-question ⟦rate⟧: rate is a quantity, and a question is needed; compare it with " +
			"something: rate > \"1 lb/ac\"\n" +
			"formula rate ⟦>⟧: the formula stops after “>”; write what comes after it\n" +
			"remark-name {⟦rat⟧}.: there is no quantity “rat” to show; write {rate}"},
	{"too many notes", func(s *script, d *formula.Definition) {
		for range 101 {
			d.Notes = append(d.Notes, s.text("Note."))
		}
	},
		"calculation-long ⟦Note.⟧: this calculation has more than 100 of these; make two calculations " +
			"of it; a worksheet can take what another gives"},
	{"many notes", func(s *script, d *formula.Definition) {
		for range 100 {
			d.Notes = append(d.Notes, s.text("Note."))
		}
	}, ""},
	{"many steps", func(s *script, d *formula.Definition) {
		for range 100 {
			d.Steps = append(d.Steps, s.result("unused", "lb"))
		}
	},
		"calculation-long ⟦answer⟧: this calculation has more than 100 of these; make two calculations " +
			"of it; a worksheet can take what another gives"},
}

func TestDefinitionFaults(t *testing.T) {
	for _, c := range flawed {
		s := &script{}
		d := sprayer(s, "lb/ac", everything, "answer = rate")
		c.do(s, d)
		made, faults := formula.Make(d)
		if (made == nil) != (len(faults) > 0) {
			t.Errorf("%s: a sheet is there %v, with %d faults", c.name, made != nil, len(faults))
		}
		var told []string
		for _, f := range faults {
			told = append(told, f.ID+" "+s.at(f.Span)+": "+f.Text+"; "+f.Note)
		}
		if got := strings.Join(told, "\n"); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}

// What an author writes of a given is what a page asks by: the range in the unit of the example, and the other units.
func TestGivensAsTheyAreWritten(t *testing.T) {
	s := &script{}
	d := sprayer(s, "lb/ac", everything, "answer = rate")
	d.Givens[6] = s.given("rate", "3 lb/ac", "0 to 112.085 kg/ha") // 100 lb/ac, from 0.45359237 kg and 0.40468564224 ha
	d.Givens[6].Units = []formula.Text{s.text("kg/ha"), s.text("oz/ac")}
	d.Answers[0].Also = s.text("kg/ha")
	d.Steps = []formula.Result{{Name: s.text("unused"), Label: "All of it"}}
	hazard, _ := fact.FindHazard("acid")
	d.Checks = []formula.Check{{When: s.text("rate > 0"), Say: s.text("Acid."), Hazard: &hazard},
		{When: s.text(`rate > "1 lb/ac"`), Say: s.text("Much: {rate}."), Signal: sheet.Caution}}
	d.Notes = []formula.Text{s.text("Of {rate}.")}
	d.Sentence = s.text("It is {answer}.")
	d.Cases = []formula.Check{{When: s.text(`rate > "5 lb/ac"`), Say: s.text("It is much, {answer}.")}}
	made, faults := formula.Make(d)
	if faults != nil {
		t.Fatal(faults)
	}
	g := made.FindGiven("rate")
	if g.Low != 0 || math.Abs(g.High-100) > 0.001 || len(g.Units) != 2 {
		t.Errorf("%+v", g)
	}
	if r := made.FindResult("unused"); r.Label != "All of it" || made.FindResult("answer").Label != "answer" {
		t.Errorf("the step is labelled %q", r.Label)
	}
	for rate, want := range map[float64]string{3: "It is 3 lb an acre.", 6: "It is much, 6 lb an acre."} {
		values := map[string]float64{}
		for _, g := range made.Givens {
			values[g.Name] = g.Typical
		}
		values["rate"] = rate
		o, err := made.Evaluate(values)
		if err != nil {
			t.Fatal(err)
		}
		var said []string
		for _, r := range o.Said() {
			said = append(said, r.Text)
		}
		all := strings.Join(said, " ")
		if got := strings.Join(o.Words(), " "); got != want || !strings.Contains(all, "Acid.") ||
			!strings.Contains(all, "Much: ") || !strings.Contains(all, "Of ") {
			t.Errorf("at %g: %q, %q", rate, o.Words(), said)
		}
	}
}
