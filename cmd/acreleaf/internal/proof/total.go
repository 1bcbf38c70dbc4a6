package proof

import (
	"regexp"

	"acreleaf/calc/prose"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// Most counts in a text are of a part ("two feeds in April", "after two feeds") or of another case ("never give six
// feeds"). A total has one of these verbs right before it, and the sentence ends or goes on with words for the whole.
var (
	beforeTotal = regexp.MustCompile(`(?i)(?:^|\s)(?:apply|are|gets?|gives?|have|has|into|is|makes?|needs?|` +
		`plans?|takes?|uses?|wants?)\s+$`)
	afterTotal = regexp.MustCompile(`(?i)^(?:\s*$|\s*[.,;:!?)]|\s+(?:a (?:season|year)|in (?:all|the season|total)|of|` +
		`this (?:season|year)|to)(?:\W|$))`)
	otherCase = regexp.MustCompile(`(?i)(?:^|\W)(?:could|else|if|instead|may|might|neighbors?|never|no|not|other|others|` +
		`some|unless|when|where|would)(?:\W|$)`)
)

// isTotal says whether a sentence states a count as the whole number of its things: "we give three feeds".
func isTotal(text string, n prose.Count) bool {
	from, to := sentenceSpan(text, n.Start, n.End)
	return beforeTotal.MatchString(text[from:n.Start]) && afterTotal.MatchString(text[n.End:to]) &&
		!otherCase.MatchString(text[from:to])
}

// isOnly says whether a candidate is named by the word of a count and no other, and no other number of the page with
// that name has another value.
func (c *figureCheck) isOnly(k *candidate, n prose.Count) bool {
	if n.Unit != "" || len(k.own) != 1 {
		return false
	}
	all := c.candidates()
	for i := range all {
		if other := &all[i]; len(other.own) == 1 && other.day == "" && c.mayBe(other, n) &&
			(other.value.Low != k.value.Low || other.value.High != k.value.High) {
			return false
		}
	}
	return true
}

// startOn finds the start of a sentence that tells the day of the first feed without naming it: "Start on April 2".
var startOn = regexp.MustCompile(`(?i)^\W*(?:(?:now|so|then)\s+)?` +
	`(?:begin|start)(?:\s+(?:feeding|to feed))?\s+(?:on\s+)?$|` +
	`(?:^|\W)feed(?:ing|s)?\s+(?:begins?|starts?)\s+(?:on\s+)?$`)

// startDay advises on a day on which to start that is another than the page's only day of a first thing.
func (c *figureCheck) startDay(p *markdown.Prose, d prose.Date) {
	from, _ := sentenceSpan(p.Text, d.Start, d.End)
	if !startOn.MatchString(p.Text[from:d.Start]) {
		return
	}
	var first *candidate
	all := c.candidates()
	for i := range all {
		switch k := &all[i]; {
		case k.day == "" || !k.own[ordinals["first"]]:
		case first != nil && first.day != k.day:
			return
		default:
			first = k
		}
	}
	if first != nil && !first.isDay(d) {
		c.differs(p.Span(d.Start, d.End), oneLine(p.Text[d.Start:d.End]), first, first.text, "")
	}
}
