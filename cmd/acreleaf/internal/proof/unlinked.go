package proof

import (
	"bytes"
	"regexp"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
)

// unlinkedText is what was meant as a link or a picture and reached the page as text: the address has a space in it, a
// space comes before it, a bracket is missing, or the name of the address is written nowhere.
var unlinkedText = regexp.MustCompile(`!?\[[^][]*(?:\]\([^()]*\)?|\] \([^() ]*(?:\.md|://)[^() ]*\)?|\]\[[^][]*\])`)

// unmade are marks of other dialects, which readers see as they are: text struck out, a box to tick, a formula.
var unmade = []struct {
	marks *regexp.Regexp
	text  string
	note  string
}{
	{regexp.MustCompile(`~~[^~\n]+~~`), "~~ strikes nothing out here, so readers see the marks", "take the text out"},
	{regexp.MustCompile(`^\[[ xX]\](?: |$)`), "this does not make a box to tick, so readers see the brackets",
		"take the brackets out; the list is enough"},
	{regexp.MustCompile(`\$[A-Za-z\\({][^$\n]*[^$\s]\$|\$\$[^$]+\$\$`),
		"a formula between $ signs is not drawn, so readers see the signs",
		"write it in words, or work it out in a worksheet"},
}

// marks advises on such marks. A \ in front of one says that readers should see it.
func (c *textCheck) marks(p *markdown.Prose) {
	if !c.rules.Advice || !strings.ContainsAny(p.Text, "~[$") {
		return
	}
	for _, u := range unmade {
		for _, at := range u.marks.FindAllStringIndex(p.Text, -1) {
			span := p.Span(at[0], at[1])
			if c.page.Source.Text[span.Start] != '\\' {
				c.advise(span, "mark-unmade", u.text, u.note)
			}
		}
	}
}

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
		c.advise(span, "link-unmade", "this looks like a link and is not one, so readers see the brackets",
			"write the text in [ ], and right after it the address in ( ), with no space in it")
	}
}
