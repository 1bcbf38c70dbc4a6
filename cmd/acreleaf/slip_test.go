package main

import (
	"strings"
	"testing"
)

// A tie is offered only to what has the number's kind and words, and its note says what that is and how to tie a number
// that holds whatever is typed there.
func TestTiesThatWereHalfWrong(t *testing.T) {
	const whatever = "if it holds whatever is typed there"
	for _, c := range []struct {
		text  string
		notes []string // of each figure
		not   string
	}{
		{"Sprinklers that put on 0.10 in/h protect to 27 °F.",
			[]string{`worksheet "frost" is given 0.1 in/h, "Rate of the sprinklers": write [0.10 in/h](worked:frost.rate);` +
				"\nor, " + whatever}, "frost.flow"},
		{"Walnut leaves are fine in the range above 1.2%.",
			[]string{`worksheet "leaf" answers 1.2 %, "Range from": write [1.2%](worked:leaf.low);` +
				"\nor, " + whatever}, "well"},
		{"| Soil | First leaf | Third leaf |\n| - | - | - |\n| Sandy | 0.5 lb K2O per tree | 1 lb K2O per tree |",
			[]string{"right after it (worked:NAME.ANSWER)", "right after it (worked:NAME.ANSWER)"}, "worked:potash"},
		{"Table: Fixed costs on 20-foot rows\n\n| What | Cost |\n| - | - |\n| Drip line | high |",
			[]string{`"Distance between rows": write [20-foot](worked:mulch.row);` + "\nor, " + whatever}, "spacing"},
		{"About 35 percent of dairy manure nitrogen comes free.",
			[]string{`"Share that becomes available this season": write [35 percent](worked:dairy.share);` +
				"\nor, " + whatever}, "compost"},
		{"161 cubic yards on 20-foot rows cover the block.",
			[]string{`"Chips to order": write [161 cubic yards](worked:mulch.chips)`,
				`"Distance between rows": write [20-foot](worked:mulch.row);` + "\nor, " + whatever}, "pond"},
	} {
		found := tiePage(t, c.text+"\n", "slips.md")
		if len(found) != len(c.notes) {
			t.Errorf("%q: %v", c.text, found)
			continue
		}
		for i, m := range found {
			if m.ID != "figure-loose" || !strings.Contains(m.Note, c.notes[i]) || strings.Contains(m.Note, c.not) {
				t.Errorf("%q: %s: %s", c.text, m.Text, m.Note)
			}
		}
	}
}

// Slips that once stayed in a clean page: each is reported with the number that the page gives.
func TestSlips(t *testing.T) {
	for _, c := range []struct{ text, id, at string }{
		{"That leaves the block short by 10 lb N/ac.", "figure-loose", "credits.short"},
		{"The credits leave the block short by [10 lb N/ac](source:practice \"a small need\").", "figure-contradicts",
			"credits.short"},
		{"So put on 14.3 lb/ac of nitrogen.", "figure-loose", `answers 12.3 lb N/ac fed`},
		{"That takes 45 lb/ac of UAN-32.", "figure-loose", "buy.product"},
		{"Buy [45 lb of UAN-32](record:2026-09-01 \"our order\") an acre.", "figure-contradicts", "buy.product"},
		{"Credits bring 91.3.", "figure-contradicts", "credits.credits"},
		{"Of [31.6 lb/ac](worked:credits.fed-need), the credits bring 91.3.", "figure-contradicts", "credits.credits"},
		{"A pump of 750 horsepower is large.", "figure-loose", "pump.power"},
		{"Our 750-hp pump is large.", "figure-loose", "pump.power"},
		{"The pump has [750 horsepower](record:2026-09-01 \"its plate\").", "figure-contradicts", "pump.power"},
	} {
		found := tiePage(t, c.text+"\n", "slips.md")
		if len(found) == 0 || found[0].ID != c.id || !strings.Contains(found[0].Note+found[0].Text, c.at) {
			t.Errorf("%q: %v", c.text, found)
		}
	}
}

// A unit of machines and salts, and a count of trees, make a figure where the page works with it, and nowhere else.
func TestMeasuresOfAPage(t *testing.T) {
	for _, c := range []struct{ text, at string }{
		{"We ordered 2,200 trees.", "write [2,200 trees](worked:block.order)"},
		{"The order was for 2,020 trees.", "answers 2,200 trees"},
		{"The well has 2.1 dS/m of salts.", "is given 1.2 dS/m"},
		{"The well has 1.2 dS/m of salts.", "write [1.2 dS/m](worked:block.salts)"},
		{"The pump takes 75 hp.", "write [75 hp](worked:pump.power)"},
		{"The pump takes 65 kW.", "is given 75 hp"},
		{"Last year it used 950 kWh.", "pump.energy"},
		// the page has none of these, or too few to be of the block
		{"The filter needs 40 psi.", ""},
		{"We looked at 12 trees, and at five trees more.", ""},
		{"See [110 trees/ac](worked:block.density) of UAN-32, 46-0-0 and EPA 100-1234.", ""},
	} {
		found := tiePage(t, c.text+"\n", "slips.md")
		if c.at == "" && len(found) == 0 || len(found) == 1 && found[0].ID == "figure-loose" && c.at != "" &&
			strings.Contains(found[0].Note, c.at) {
			continue
		}
		t.Errorf("%q: %v", c.text, found)
	}
	for _, text := range []string{"The pump has 75 hp and 40 kW.", "We ordered 2,200 trees.", "The well has 2.1 dS/m."} {
		if found := tiePage(t, text+"\n"); len(found) > 0 {
			t.Errorf("%q, on a page that works with none of it: %v", text, found)
		}
	}
}

// What a case of a passage says is checked as all prose is.
func TestContradictionsInPassages(t *testing.T) {
	passage := func(say string) string {
		return "```passage\n- when: compost.nitrogen > \"5 lb N/ac\" and compost.material is compost\n  say: >\n    " + say +
			"\n- otherwise: Count on nothing.\n```\n"
	}
	for _, c := range []struct{ say, want string }{
		{"Count [9 lb N/ac](source:practice \"of credit in a year\") for the compost.", "figure-contradicts"},
		{"The compost brings [9 lb N/ac](record:2026-08-02 \"our sheet\").", "figure-contradicts"},
		{"The compost brings [9 lb N/ac](worked:compost.nitrogen).", "figure-differs"},
		{"The compost brings [6.75 lb N/ac](worked:compost.nitrogen).", ""},
	} {
		got := ""
		for _, m := range tiePage(t, passage(c.say)) {
			got += m.ID
		}
		if got != c.want {
			t.Errorf("%q: %q and not %q", c.say, got, c.want)
		}
	}
}
