package proof

import (
	"strings"
	"testing"
)

// plan answers 3 feeds, the first of them on April 20.
const plan = "```worksheet plan\ncalculation: feed-schedule\nnitrogen: 18.1 lb N/ac\ntrees: 110 trees/ac\nleaf: 1\n" +
	"first: 2027-04-20\nlast: 2027-07-15\nmaterial: 21-0-0-24S\n```\n\n"

// well is given 6 in of water.
const well = "```worksheet well\ncalculation: water-nitrogen\nwater: 6 in\nnitrate: 5 ppm NO3-N\n```\n\n"

// A number that the page works out is compared where its words are around it, and no other.
func TestContradictions(t *testing.T) {
	const differs = "figure-contradicts"
	for _, c := range []struct{ name, file, text, want string }{
		{"a size by a worksheet's name", "guides/a.md", well + "Keep it [20 ft](size:) from the well.", ""},
		{"a size by an answer's words", "guides/a.md", well + "The water put on is [20 ft](size:).", differs},
		{"a total", "guides/a.md", plan + "We give three feeds.", ""},
		{"another total", "guides/a.md", plan + "It takes five feeds.", differs},
		{"another total in all", "guides/a.md", plan + "We give 5 feeds in all.", differs},
		{"a total of two worksheets that differ", "guides/a.md", plan + strings.NewReplacer("worksheet plan",
			"worksheet old", "18.1 lb", "6 lb").Replace(plan) + "We give five feeds.",
			strings.TrimSpace(strings.Repeat("given-twice ", 5))},
		{"a part", "guides/a.md", plan + "Give two feeds in May. After two feeds, look. The other two feeds are small. " +
			"Never give six feeds. If trees are weak, give 4 feeds. Two feeds are early. We gave 2 feeds.", ""},
		{"the first day", "guides/a.md", plan + "Start on April 20.", ""},
		{"another first day", "guides/a.md", plan + "Start on April 2.", differs},
		{"another first day of feeding", "guides/a.md", plan + "Feeding begins on April 2.", differs},
		{"a day of something else", "guides/a.md", plan + "Start the pump on April 2. The walk begins on May 3.", ""},
		{"a count beside a figure of a worksheet whose name goes on", "guides/a.md", strings.ReplaceAll(plan,
			"worksheet plan", "worksheet plan-b") + "It took 5 feeds at [6.03 lb/ac](worked:plan-b.each-acre).", differs},
		{"a count beside a worked figure", "guides/a.md",
			plan + "That makes 5 feeds, [43 days](worked:plan.every) apart.", differs},
	} {
		if got := alone(t, c.file, c.text); got != c.want {
			t.Errorf("%s: %q and not %q", c.name, got, c.want)
		}
	}
}
