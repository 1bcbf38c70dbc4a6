package calc_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// A text is something that a reader is told, with where it stands.
type text struct{ where, text string }

// sentences lists what must be whole sentences, of every calculation.
func sentences() []text {
	var all []text
	for _, s := range calc.Standard().All() {
		add := func(where, t string) { all = append(all, text{s.Name + ", " + where, t}) }
		add("the summary", s.Summary)
		for _, g := range s.Givens {
			add("the hint of "+g.Name, g.Hint)
			for _, o := range g.Choices {
				if o.Note != "" {
					add("the note on the option "+o.Name, o.Note)
				}
			}
		}
		for _, c := range s.Constants {
			if c.Note != "" {
				add("the note on "+c.Name, c.Note)
			}
		}
		for i, r := range s.Remarks {
			add("remark "+string(rune('0'+i)), r.Text)
		}
		if s.Headline != nil {
			for i, c := range s.Headline.Cases {
				add("case "+string(rune('0'+i)), c.Text)
			}
		}
		for _, slip := range s.Slips {
			add("the slip "+slip.Name, slip.Text)
		}
	}
	return all
}

// labels lists what is beside a number, which is no sentence.
func labels() []text {
	var all []text
	for _, s := range calc.Standard().All() {
		add := func(where, t string) { all = append(all, text{s.Name + ", " + where, t}) }
		add("the title", s.Title)
		for _, g := range s.Givens {
			add("the label of "+g.Name, g.Label)
			for _, o := range g.Choices {
				add("the option "+o.Name, o.Label)
			}
		}
		for _, r := range s.Results {
			add("the label of "+r.Name, r.Label)
		}
		for _, c := range s.Constants {
			add("the constant "+c.Name, c.Label)
		}
	}
	return all
}

func TestSentencesAreWhole(t *testing.T) {
	for _, s := range sentences() {
		if !strings.HasSuffix(s.text, ".") || strings.HasSuffix(s.text, "..") {
			t.Errorf("%s does not end with a full stop: %q", s.where, s.text)
		}
		first := regexp.MustCompile(`^([A-Z0-9]|\{[a-z])`)
		if !first.MatchString(s.text) {
			t.Errorf("%s does not start like a sentence: %q", s.where, s.text)
		}
	}
	for _, l := range labels() {
		if strings.HasSuffix(l.text, ".") || strings.HasSuffix(l.text, ":") {
			t.Errorf("%s is a label and ends with a stop: %q", l.where, l.text)
		}
	}
}

func TestTextsAreTidy(t *testing.T) {
	slack := regexp.MustCompile(`  |^ | $| [.,;:]|[\t\n]|\.\.|\( | \)`)
	for _, s := range append(sentences(), labels()...) {
		if at := slack.FindStringIndex(s.text); at != nil {
			t.Errorf("%s is not tidy at %d: %q", s.where, at[0], s.text)
		}
		for _, word := range []string{"utilize", "please", "simply", "just ", "N03", "NO₃", "No3", "lbs", "acre-inches"} {
			if strings.Contains(s.text, word) {
				t.Errorf("%s says %q: %q", s.where, word, s.text)
			}
		}
	}
}

// The nitrate form and the nitrogen in it differ 4.43 times, so every text that says NO3 alone is listed here: each was
// read, and means the whole nitrate.
func TestNitrateIsSaidAloneOnlyWhereItIsMeant(t *testing.T) {
	meant := []string{
		"nitrate-basis, the summary",
		"nitrate-basis, the note on drinking-limit",
		"nitrate-basis, the label of nitrate",
		"soil-nitrogen, the hint of nitrate",
		"soil-nitrogen, remark 4",
		"soil-nitrogen, the slip nitrate-for-nitrogen",
		"water-nitrogen, the hint of nitrate",
		"water-nitrogen, the slip nitrate-for-nitrogen",
	}
	alone := regexp.MustCompile(`NO3([^-]|-[^N]|$)`)
	var found []string
	for _, s := range append(sentences(), labels()...) {
		if alone.MatchString(s.text) {
			found = append(found, s.where)
		}
	}
	for _, where := range found {
		if !slices.Contains(meant, where) {
			t.Errorf("%s says NO3: does it mean NO3-N? If it does not, list it", where)
		}
	}
	for _, where := range meant {
		if !slices.Contains(found, where) {
			t.Errorf("%s is listed and does not say NO3", where)
		}
	}
}

// A unit in a text must be one that a reader can write back.
func TestNumbersInTextsHaveUnitsThatAreKnown(t *testing.T) {
	quantity := regexp.MustCompile(`\d[\d,.]* ((?:ppm|lb|oz|g|kg|in|ft|mg|ft2|trees)\b` +
		`(?:[/ ](?:NO3-N|NO3|N|ac|tree|cm3|L)\b)*)`)
	var found int
	for _, s := range append(sentences(), labels()...) {
		for _, match := range quantity.FindAllStringSubmatch(s.text, -1) {
			found++
			if _, err := unit.Parse(match[1]); err != nil {
				t.Errorf("%s: %q: %v", s.where, match[0], err)
			}
		}
	}
	if found < 20 {
		t.Errorf("only %d quantities were found in all texts", found)
	}
}

// What a remark calls at or above, and what a caution calls the most, are the constants beside them.
func TestRemarksNameTheLimitThatTheyTest(t *testing.T) {
	for _, c := range []struct{ calculation, constant, said string }{
		{"nitrate-basis", "drinking-limit", "limit for drinking water, 10 ppm NO3-N"},
		{"water-nitrogen", "drinking-limit", "limit for drinking water, 10 ppm NO3-N"},
		{"water-nitrogen", "field-factor", "The 0.23 of the field"},
		{"tree-rate", "feed-a-year", "at most 1 oz of nitrogen a tree"},
		{"acre-rate", "feed-a-year", "at most 1 oz of nitrogen a tree"},
		{"crop-demand", "full-crop", "almonds over 2,000 lb of kernels an acre"},
		{"season-budget", "usual-release", "gives 20 to 40 lb an acre a year"},
		{"soil-nitrogen", "field-rule", "6 in of soil on an acre weigh 2,000,000 lb"},
	} {
		s := calc.Standard().Find(c.calculation)
		said := slices.ContainsFunc(s.Remarks, func(r *sheet.Remark) bool { return strings.Contains(r.Text, c.said) })
		known := slices.IndexFunc(s.Constants, func(k *sheet.Constant) bool { return k.Name == c.constant })
		if !said || known < 0 {
			t.Errorf("%s does not say %q, or has no constant %s", c.calculation, c.said, c.constant)
			continue
		}
		value := unit.Text(s.Constants[known].Quantity.Value)
		if c.constant != "field-rule" && !strings.Contains(c.said, value+" ") {
			t.Errorf("%s: %s is %s, and the remark says %q", c.calculation, c.constant, value, c.said)
		}
	}
}
