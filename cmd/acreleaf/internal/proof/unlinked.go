package proof

import (
	"bytes"
	"regexp"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
)

// unlinkedText is what was meant as a link or a picture and reached the page as text: the address has a space in it, a
// space stands before it, a bracket is missing, or the name of the address is written nowhere.
var unlinkedText = regexp.MustCompile(`!?\[[^][]*(?:\]\([^()]*\)?|\] \([^() ]*(?:\.md|://)[^() ]*\)?|\]\[[^][]*\])`)

// unlinked advises on brackets that a reader would see. A \ in front of one says that they should.
func (c *textCheck) unlinked(p *markdown.Prose) {
	if !c.rules.Advice || !strings.Contains(p.Text, "]") {
		return
	}
	for _, at := range unlinkedText.FindAllStringIndex(p.Text, -1) {
		span := p.Span(at[0], at[1])
		if bytes.ContainsRune(c.page.Source.Text[span.Start:span.End], '\\') {
			continue
		}
		c.advise(span, "link-unmade", "this looks like a link and is none, so readers see the brackets",
			"write the text in [ ], and right after it the address in ( ), with no space in it")
	}
}
