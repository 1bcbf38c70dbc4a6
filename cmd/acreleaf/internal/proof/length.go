package proof

import (
	"fmt"
	"unicode/utf8"
)

// Lists of search engines and of other sites cut a title near 70 letters and a summary near 160 (common practice).
const (
	longTitle   = 70
	longSummary = 160
)

// lengths advises on a title and a summary that would be cut where they are listed.
func (c *textCheck) lengths() {
	if !c.rules.Advice {
		return
	}
	m := c.page.Metadata
	if n := utf8.RuneCountInString(m.Title); n > longTitle {
		c.advise(m.Places.Title, "title-long",
			fmt.Sprintf("this title has %d letters, and lists cut it after %d", n, longTitle), "write a shorter one")
	}
	if n := utf8.RuneCountInString(m.Summary); n > longSummary {
		c.advise(m.Places.Summary, "summary-long",
			fmt.Sprintf("this summary has %d letters, and lists cut it after %d", n, longSummary),
			"say in one short sentence what the reader gets")
	}
}
