package formula_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/formula"
)

// Each formula, with the place of what is wrong in it and the sentence that says so.
var botched = []struct{ formula, place, text string }{
	{"rate + area", "rate ⟦+⟧ area", "rate is lb/ac and area is ac: they cannot be added"},
	{"flow * (rate - bag)", "flow * (rate ⟦-⟧ bag)", "rate is lb/ac and bag is lb: they cannot be subtracted"},
	{"rate * area + rate * 2", "rate * area ⟦+⟧ rate * 2",
		"“rate * area” is lb and “rate * 2” is lb/ac: they cannot be added"},
	{"rate + 5", "rate ⟦+⟧ 5", "rate is lb/ac and “5” is a plain number: they cannot be added"},
	{`rate + "5 lb K2O/ac"`, `rate ⟦+⟧ "5 lb K2O/ac"`,
		`rate is lb/ac and “"5 lb K2O/ac"” is lb K2O/ac: they cannot be added`},
	{"min(rate, area)", "min(rate, ⟦area⟧)", "rate is lb/ac and area is ac: they cannot be compared"},
	{"max(0, rate, area)", "max(0, rate, ⟦area⟧)", "rate is lb/ac and area is ac: they cannot be compared"},
	{"if(rate > area, 1, 2)", "if(rate ⟦>⟧ area, 1, 2)", "rate is lb/ac and area is ac: they cannot be compared"},
	{"if(count > 1, rate, area)", "if(count > 1, rate, ⟦area⟧)",
		"rate is lb/ac and area is ac: they cannot be the two ways of one line"},
	{"sqrt(rate * area)", "sqrt(⟦rate * area⟧)", "“rate * area” is lb, which has no square root"},
	{"sqrt(0 - count)", "sqrt(⟦0 - count⟧)", "“0 - count” is below 0, and has no square root"},
	{"round_up(rate * area)", "round_up(⟦rate * area⟧)",
		"round_up does not say in what unit “rate * area” is to count"},
	{"rat * area", "⟦rat⟧ * area", "there is no “rat” in this calculation"},
	{"Rate * area", "⟦Rate⟧ * area", "there is no “Rate” in this calculation"},
	{"rate * max", "rate * ⟦max⟧", "max is a function, and needs brackets"},
	{"rate(area)", "⟦rate⟧(area)", "rate is a quantity, and no function"},
	{"absolute(rate)", "⟦absolute⟧(rate)", "there is no function “absolute”"},
	{"ground-speed * 2", "⟦ground-speed⟧ * 2", "in a formula “ground-speed” is a minus"},
	{"2 * share-count-ground-speed", "2 * share-count-⟦ground-speed⟧", "in a formula “ground-speed” is a minus"},
	{"wind-speed * 2", "⟦wind-speed⟧ * 2", "there is no “wind-speed” in this calculation"},
	{"rate / 0", "rate / ⟦0⟧", "this divides by 0"},
	{"rate / (2 - 1 - 1)", "rate / ⟦(2 - 1 - 1)⟧", "this divides by 0"},
	{`rate / "0 lb"`, `rate / ⟦"0 lb"⟧`, "this divides by 0"},
	{"rate +", "rate ⟦+⟧", "the formula stops after “+”"},
	{"50 %", "50 ⟦%⟧", "the formula stops after “%”"},
	{"(rate", "⟦(⟧rate", "this bracket is not closed"},
	{"min(rate, (rate * 2)", "min⟦(⟧rate, (rate * 2)", "this bracket is not closed"},
	{"rate)", "rate⟦)⟧", "this bracket closes nothing"},
	{"43,560 * rate", "43⟦,⟧560 * rate", "“,” cannot be here"},
	{"2 lb", "2 ⟦lb⟧", "“lb” cannot be here"},
	{"rate area", "rate ⟦area⟧", "“area” cannot be here"},
	{"rate Zed90", "rate ⟦Zed90⟧", "“Zed90” cannot be here"},
	{"rate ÷ 2", "rate ⟦÷⟧ 2", "“÷” cannot be here"},
	{"rate = 2", "rate ⟦=⟧ 2", "“=” cannot be here"},
	{"rate ^ 2", "rate ⟦^⟧ 2", "“^” is not arithmetic"},
	{"rate =< 2", "rate ⟦=<⟧ 2", "“=<” cannot be here"},
	{"rate << 2", "rate ⟦<<⟧ 2", "“<<” is not arithmetic"},
	{"rate & area", "rate ⟦&⟧ area", "“&” is not arithmetic"},
	{"^rate", "⟦^rate⟧", "“^” is not arithmetic"},
	{"rate[1]", "⟦rate[1]⟧", "“rate[1]” is not arithmetic"},
	{"rate[" + strings.Repeat("1", 34) + "]", "⟦rate[" + strings.Repeat("1", 34) + "]⟧",
		"“rate[" + strings.Repeat("1", 34) + "]” is not arithmetic"},
	{"rate[" + strings.Repeat("1", 35) + "]", "⟦rate[" + strings.Repeat("1", 35) + "]⟧",
		"“rate[" + strings.Repeat("1", 35) + "…” is not arithmetic"},
	{`"2027-07-15" * rate`, `"⟦2027-07-15⟧" * rate`, `"2027-07-15": a range cannot be here`},
	{`"2 lb per" * rate`, `"2 lb pe⟦r⟧" * rate`, `"lb per": the unit breaks off`},
	{`"2 lb\x2fac" * rate`, `"2 lb⟦\x2fac⟧" * rate`, `"lb\\x2fac": the sign "\\" has no place in a unit`},
	{"-(rate > 0)", "-⟦(rate > 0)⟧", "“rate > 0” is a question, and a quantity is needed"},
	{"+(rate > 0)", "+⟦(rate > 0)⟧", "“rate > 0” is a question, and a quantity is needed"},
	{"^(rate + area)", "^(rate ⟦+⟧ area)", "rate is lb/ac and area is ac: they cannot be added"},
	{"sqrt(-count)", "sqrt(⟦-count⟧)", "“-count” is below 0, and has no square root"},
	{"pow(pow(count, 5), 5) * pow(pow(count, 5), 5) * count",
		"⟦pow(pow(count, 5), 5) * pow(pow(count, 5), 5) * count⟧", "the unit of this has grown beyond any use"},
	{"pow(pow(count, 5), 5) / (pow(pow(count, 5), 5) * 1) / count",
		"⟦pow(pow(count, 5), 5) / (pow(pow(count, 5), 5) * 1) / count⟧", "the unit of this has grown beyond any use"},
	{"if(count || rate > rate, 1, rate)", "if(⟦count⟧ || rate > rate, 1, rate)",
		"count is a quantity, and a question is needed"},
	{"rate[1:2]", "⟦rate[1:2]⟧", "“rate[1:2]” is not arithmetic"},
	{"rate.area", "⟦rate.area⟧", "“rate.area” is not arithmetic"},
	{"*rate", "⟦*rate⟧", "“*rate” is not arithmetic"},
	{"rate.(area)", "⟦rate.(area)⟧", "“rate.(area)” is not arithmetic"},
	{"min(rate...)", "⟦min(rate...)⟧", "“min(rate...)” is not arithmetic"},
	{"(min)(rate)", "⟦(min)(rate)⟧", "“(min)(rate)” is not arithmetic"},
	{"[]area{1}", "⟦[]area{1}⟧", "“[]area{1}” is not arithmetic"},
	{"rate * /* twice */ 2", "rate * ⟦/*⟧ twice */ 2", "“/*” is not arithmetic"},
	{"2i * rate", "⟦2i⟧ * rate", "“2i” is not a number"},
	{"1_000 * rate", "⟦1_000⟧ * rate", "“1_000” is not a number"},
	{"1e999 * rate", "⟦1e999⟧ * rate", "“1e999” is too large a number"},
	{"'a' * rate", "⟦'a'⟧ * rate", "“'a'” is not a number"},
	{`"lb" * rate`, `"⟦lb⟧" * rate`, `"lb": there is no number here`},
	{`"2 lb/acc" * rate`, `"2 lb/⟦acc⟧" * rate`, `"acc" is not a unit or a substance known here`},
	{"`2 lb` * rate", "⟦`2 lb`⟧ * rate", "this is not a quantity"},
	{"pow(rate, count)", "pow(rate, ⟦count⟧)", "a power is a whole number from 2 to 8, in digits"},
	{"pow(rate, 1)", "pow(rate, ⟦1⟧)", "a power is a whole number from 2 to 8, in digits"},
	{"pow(rate, 9)", "pow(rate, ⟦9⟧)", "a power is a whole number from 2 to 8, in digits"},
	{"pow(rate, 2.5)", "pow(rate, ⟦2.5⟧)", "a power is a whole number from 2 to 8, in digits"},
	{`pow(rate, "2")`, `pow(rate, ⟦"2"⟧)`, "a power is a whole number from 2 to 8, in digits"},
	{"pow(pow(count, 8), 8)", "⟦pow(pow(count, 8), 8)⟧", "the unit of this has grown beyond any use"},
	{"pow(pow(pow(count, 5), 5), 3)", "⟦pow(pow(pow(count, 5), 5), 3)⟧", "the unit of this has grown beyond any use"},
	{"sqrt(count - 10.5)", "sqrt(⟦count - 10.5⟧)", "“count - 10.5” is below 0, and has no square root"},
	{"round_up(min(bag, area * rate))", "round_up(⟦min(bag, area * rate)⟧)",
		"round_up does not say in what unit “min(bag, area * rate)” is to count"},
	{"round_up(area * rate * 2)", "round_up(⟦area * rate * 2⟧)",
		"round_up does not say in what unit “area * rate * 2” is to count"},
	{"round_up(2 * (area * rate))", "round_up(⟦2 * (area * rate)⟧)",
		"round_up does not say in what unit “2 * (area * rate)” is to count"},
	{"round_up(area * rate / 2)", "round_up(⟦area * rate / 2⟧)",
		"round_up does not say in what unit “area * rate / 2” is to count"},
	{"round_up(bag / area)", "round_up(⟦bag / area⟧)", "round_up does not say in what unit “bag / area” is to count"},
	{"round_down(max(area * rate, bag))", "round_down(⟦max(area * rate, bag)⟧)",
		"round_down does not say in what unit “max(area * rate, bag)” is to count"},
	// What depends on a fault is not reported again.
	{"min(rate, area) + count", "min(rate, ⟦area⟧) + count", "rate is lb/ac and area is ac: they cannot be compared"},
	{"pow(rate > 0, 2) + count", "pow(⟦rate > 0⟧, 2) + count", "“rate > 0” is a question, and a quantity is needed"},
	{"pow(rate + area, 2)", "pow(rate ⟦+⟧ area, 2)", "rate is lb/ac and area is ac: they cannot be added"},
	{"pow(pow(count, 8), 8) + rate", "⟦pow(pow(count, 8), 8)⟧ + rate", "the unit of this has grown beyond any use"},
	{"if(count > 1, if(count > 2, bag, area), rate)", "if(count > 1, if(count > 2, bag, ⟦area⟧), rate)",
		"bag is lb and area is ac: they cannot be the two ways of one line"},
	{"if(count > 1, count > 2, rate)", "if(count > 1, ⟦count > 2⟧, rate)",
		"“count > 2” is a question, and a quantity is needed"},
	{"if(count > 1, rate, rate > 0)", "if(count > 1, rate, ⟦rate > 0⟧)",
		"“rate > 0” is a question, and a quantity is needed"},
	{"pow(rate)", "⟦pow(rate)⟧", "pow takes a quantity and a whole number, and its brackets hold 1"},
	{"sqrt(rate, area)", "⟦sqrt(rate, area)⟧", "sqrt takes one quantity, and its brackets hold 2"},
	{"if(rate)", "⟦if(rate)⟧", "if takes a question and two quantities, and its brackets hold 1"},
	{"rate + if(count > 1, rate, rate)", "rate + ⟦if(count > 1, rate, rate)⟧",
		"an if can only be at the top of a line"},
	{"if(count, rate, rate)", "if(⟦count⟧, rate, rate)", "count is a quantity, and a question is needed"},
	{"rate * (count > 1)", "rate * ⟦(count > 1)⟧", "“count > 1” is a question, and a quantity is needed"},
	{"count > 1", "⟦count > 1⟧", "“count > 1” is a question, and a quantity is needed"},
	{"!count", "!⟦count⟧", "count is a quantity, and a question is needed"},
	{"answer * 2", "⟦answer⟧ * 2", "answer is used in the line that works it out"},
	{"later * 2", "⟦later⟧ * 2", "later is worked out further down"},
	{"rate // area", "rate ⟦//⟧ area", "“//” is not arithmetic"},
	{strings.Repeat("(", 21) + "rate", strings.Repeat("(", 20) + "⟦(⟧rate",
		"more than 20 brackets are inside each other here"},
	{strings.Repeat("rate+", 250) + "rate", "⟦" + strings.Repeat("rate+", 250) + "rate⟧",
		"this formula is longer than 1000 letters"},
}

func TestFormulaFaults(t *testing.T) {
	for _, c := range botched {
		s := &script{}
		made, faults := formula.Make(sprayer(s, "lb/ac", everything, "answer = "+c.formula, "later = count"))
		if made != nil || len(faults) != 1 {
			t.Errorf("%s: %d faults, want 1: %v", c.formula, len(faults), faults)
			continue
		}
		f := faults[0]
		if got := strings.TrimPrefix(s.at(f.Span), "answer = "); got != c.place || f.Text != c.text {
			t.Errorf("%s:\n got %s: %s\nwant %s: %s", c.formula, got, f.Text, c.place, c.text)
		}
		if f.Note == "" || f.ID == "" {
			t.Errorf("%s: no note or no id: %+v", c.formula, f)
		}
	}
}

// Each function takes so many operands, and no other number of them.
func TestFunctionsCountTheirOperands(t *testing.T) {
	takes := map[string][2]int{"min": {2, 9}, "max": {2, 9}, "round-up": {1, 1}, "round-down": {1, 1}, "sqrt": {1, 1},
		"size": {1, 1}, "pow": {2, 2}, "if": {3, 3}}
	names := []string{"if", "max", "min", "pow", "round-down", "round-up", "size", "sqrt"}
	if got := formula.Functions(); !slices.Equal(got, names) {
		t.Errorf("the functions are %q, want %q", got, names)
	}
	for name, takes := range takes {
		for count := range 11 {
			call := strings.ReplaceAll(name, "-", "_") + "(" + strings.TrimSuffix(strings.Repeat("rate, ", count), ", ") + ")"
			_, faults := formula.Make(sprayer(&script{}, "lb/ac", everything, "answer = "+call))
			told := slices.ContainsFunc(faults, func(f formula.Fault) bool {
				return strings.Contains(f.Text, "its brackets hold")
			})
			if want := count < takes[0] || count > takes[1]; told != want {
				t.Errorf("%s: refused for its operands %v, want %v", call, told, want)
			}
		}
	}
}

func TestNotesSayWhatToWrite(t *testing.T) {
	for _, c := range []struct{ formula, note string }{
		{"rate + 5", `write the number with its unit, between quotes: "5 lb/ac"`},
		{"5 + rate", `write the number with its unit, between quotes: "5 lb/ac"`},
		{"rate + bag", "divide it by the area of the block first"},
		{"rat * area", "write rate"},
		{"Ground_Speed * 2", "write ground_speed"},
		{"abs(rate)", "write size"},
		{"sqr(rate)", "write sqrt(a)"},
		{"rate × 2", "write * for ×"},
		{"rate ^ 2", "write pow(x, 2) for a power"},
		{"2 lb", `put a number and its unit between quotes, such as "2 lb", or write * to multiply`},
		{"12 lb", `put a number and its unit between quotes, such as "12 lb", or write * to multiply`},
		{"2.5 lb", `put a number and its unit between quotes, such as "2.5 lb", or write * to multiply`},
		{"if(rate =< 2, 1, 2)", "write <="},
		{`rate + "5 lb K2O/ac"`, "multiply or divide one of them first, so that both measure the same thing"},
		{`"5 lb K2O/ac" + rate`, "multiply or divide one of them first, so that both measure the same thing"},
		{"43,560 * rate", "write a large number without a comma: 43560"},
		{"rate)", "take it out, or write the ( that it belongs to"},
		{"rate = 2", "write == to ask whether two things are the same; in a calculation each = has a line of work " +
			"for itself"},
		{"rate area", "write * or another sign between the two"},
		{`rate "2 ft"`, `put a quantity between two double quotes, such as "2 lb/ac", and * or another sign before it`},
		{"rate +", "write what comes after it"},
		{"rate * ½", "write 0.5 for ½"},
		{"rate * ¼", "write 0.25 for ¼"},
		{"rate * ¾", "write 0.75 for ¾"},
		{"rate2 lb", "write * or another sign between the two"},
		{"50 %", `a share is written between quotes, such as "50 %"`},
		{"ground-speed * 2", "write ground_speed for the name, or spaces around a minus"},
		{"later * 2", "move the line that begins with “later =” above this one"},
		{"5", `write the number with its unit, between quotes: "5 lb/ac"`},
	} {
		s := &script{}
		_, faults := formula.Make(sprayer(s, "lb/ac", everything, "answer = "+c.formula, "later = count"))
		if len(faults) != 1 || faults[0].Note != c.note {
			t.Errorf("%s: %+v, want the note %s", c.formula, faults, c.note)
		}
	}
}

// A fault is reported once: what depends on it is not reported again, and what does not is.
func TestFaultsAreToldOnceAndAllAtOnce(t *testing.T) {
	s := &script{}
	_, faults := formula.Make(sprayer(s, "lb/ac", everything,
		"first = rate + area", "second = first * 2", "third = rat", "fourth = rate +",
		"fifth = fourth * 2", "answer = second + flow"))
	var got []string
	for _, f := range faults {
		got = append(got, s.at(f.Span))
	}
	want := "[first = rate ⟦+⟧ area third = ⟦rat⟧ fourth = rate ⟦+⟧]"
	if fmt.Sprint(got) != want {
		t.Errorf("%v, want %s", got, want)
	}
}

// A text that does not be in the file letter for letter has its faults at the whole of it.
func TestFaultInATextWithQuotesIsAtTheWhole(t *testing.T) {
	s := &script{}
	d := sprayer(s, "lb/ac", everything)
	quoted := s.text(`'answer = rate + area'`)
	quoted.Text = "answer = rate + area"
	d.Work = append(d.Work, quoted)
	_, faults := formula.Make(d)
	if len(faults) != 1 || s.at(faults[0].Span) != "⟦'answer = rate + area'⟧" {
		t.Errorf("%v", faults)
	}
	quoted.Text = `answer = rate * "2 acc"`
	d.Work[len(d.Work)-1] = quoted
	if _, faults = formula.Make(d); len(faults) != 1 || s.at(faults[0].Span) != "⟦'answer = rate + area'⟧" {
		t.Errorf("%v", faults)
	}
}

func TestNamesAreTakenOnce(t *testing.T) {
	for _, c := range []struct{ work, place string }{
		{"flow = rate", "⟦flow⟧ = rate"},
		{"bag = rate", "⟦bag⟧ = rate"},
		{"answer = rate * 2", "⟦answer⟧ = rate * 2"},
		{"min = rate", "⟦min⟧ = rate"},
		{"ground-speed = rate", "⟦ground-speed⟧ = rate"},
		{"Flow = rate", "⟦Flow⟧ = rate"},
		{"rate * 2", "⟦rate * 2⟧"},
		{"rate == 2", "⟦rate == 2⟧"},
		{"rate >= 2", "⟦rate >= 2⟧"},
		{"= 2", "⟦= 2⟧"},
		{"other =", "other ⟦=⟧"},
	} {
		s := &script{}
		_, faults := formula.Make(sprayer(s, "lb/ac", everything, "answer = rate", c.work))
		if len(faults) != 1 || s.at(faults[0].Span) != c.place {
			t.Errorf("%s: %+v", c.work, faults)
		}
	}
}

// A divisor with a name is called by it.
func TestNamedZeroDividesNothing(t *testing.T) {
	s := &script{}
	_, faults := formula.Make(sprayer(s, "lb/ac", everything, "none = count * 0", "answer = rate / none"))
	if len(faults) != 1 || faults[0].Text != "none is 0, and nothing can be divided by it" ||
		s.at(faults[0].Span) != "answer = rate / ⟦none⟧" {
		t.Errorf("%+v", faults)
	}
}

// A line of two ways does not say in what unit it counts when one of them does not.
func TestBothWaysMustBeCounted(t *testing.T) {
	for ways, want := range map[string]int{"area * rate, bag": 1, "bag, area * rate": 1, "bag, bag": 0} {
		s := &script{}
		_, faults := formula.Make(sprayer(s, "lb/ac", everything, "part = if(count > 1, "+ways+")",
			"more = round_up(part)", "answer = rate"))
		if len(faults) != want {
			t.Errorf("%s: %+v", ways, faults)
		}
	}
}

// The first line, too, cannot use itself.
func TestFirstLineUsesItself(t *testing.T) {
	s := &script{}
	_, faults := formula.Make(sprayer(s, "lb/ac", "answer = answer * 2", everything, "other = rate"))
	if len(faults) != 1 || faults[0].Text != "answer is used in the line that works it out" {
		t.Errorf("%+v", faults)
	}
}

func TestWhatNothingUsesIsAFault(t *testing.T) {
	s := &script{}
	_, faults := formula.Make(sprayer(s, "lb/ac", "answer = rate"))
	if len(faults) != 7 { // all givens but one, and the constant
		t.Errorf("%d faults: %+v", len(faults), faults)
	}
}
