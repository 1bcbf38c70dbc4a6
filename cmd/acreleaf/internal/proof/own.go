package proof

import (
	"fmt"
	"strings"
	"time"

	"acreleaf/cmd/acreleaf/internal/markdown"
)

const recordExample = `[23.4 lb](record:2026-09-14 "the scale ticket of block 3")`

// record checks a number of the author's own records: it has a day that is not still to come, and says what it is.
func (c *figureCheck) record(f *markdown.Figure, rest string) {
	day, err := time.Parse(time.DateOnly, f.Target)
	switch {
	case err != nil:
		c.fault("figure-record", f.TargetSpan, fmt.Sprintf("%q is not the day of a record", f.Target),
			"write year, month and day: "+recordExample)
	case strings.TrimSpace(f.Title) == "":
		c.fault("figure-record", f.Span, fmt.Sprintf("this record does not say what the %s is", f.Text),
			fmt.Sprintf("write it after the day, between quotes: [%s](record:%s \"what it is\")", f.Text, f.Target))
	case !c.counts(f.Text, rest):
		c.fault("figure-record", f.TextSpan, "a record is a number, and there is none here",
			"write the number between the brackets: "+recordExample)
	case !c.rules.Today.IsZero() && day.After(c.rules.Today):
		c.fault("figure-record", f.TargetSpan, "the day of this record is still to come",
			"write the day on which it was read, weighed or paid")
	}
}

// size checks that a plain size is one: a length, an area, a volume or a weight, and no dose.
func (c *figureCheck) size(f *markdown.Figure, rest string) {
	whole := f.Text + rest
	a, ok := c.language.Measure(whole)
	switch {
	case !ok || a.Start >= len(f.Text):
		c.fault("figure-size", f.TextSpan, fmt.Sprintf("%q is not a size", f.Text),
			"write a number and a unit of length, area, volume or weight between the brackets, as in [12 in](size:)")
	case !isSize(a.Unit):
		text := oneLine(whole[a.Start:max(a.End, len(f.Text))])
		c.fault("figure-size", f.TextSpan, fmt.Sprintf("%s is not a plain size: it measures a rate, a share, a price or a "+
			"material", text), ways(f.Text, a.Unit))
	}
}
