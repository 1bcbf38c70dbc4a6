package proof

import "testing"

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
		{"a count beside a worked figure", "guides/a.md", plan + "That makes 5 feeds, [43 days](worked:plan.every) apart.", differs},
	} {
		if got := alone(t, c.file, c.text); got != c.want {
			t.Errorf("%s: %q and not %q", c.name, got, c.want)
		}
	}
}
