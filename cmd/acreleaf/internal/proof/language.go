package proof

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/reading"
)

// languageNames are the languages that a text can be told by.
var languageNames = map[string]string{"en": "English", "es": "Spanish"}

// foreignText keeps a paragraph that is in another language than its page. What is still to be translated says so.
func (c *textCheck) foreignText(p *markdown.Prose) {
	if p.Running && !page.Unwritten(p.Text) && c.isForeign(p.Text) {
		c.foreign = append(c.foreign, p.Span(0, len(strings.TrimRight(p.Text, "\n"))))
	}
}

// foreignBlocks keeps the texts of blocks, such as the story of an exercise, that are in another language than their
// page. Titles and hints are short: what no text of a block tells alone, all of them may tell together.
func (c *textCheck) foreignBlocks(blocks []*markdown.Block) {
	for _, b := range blocks {
		var all []string
		var longest markdown.Entry
		before := len(c.foreign)
		for _, e := range b.Entries {
			switch {
			case !b.Construct.HasText(e.Key):
			case page.Unwritten(e.Value):
				if c.rules.Advice {
					c.unwritten = append(c.unwritten, e.ValueSpan)
				}
			default:
				all = append(all, e.Value)
				if len(e.Value) > len(longest.Value) {
					longest = e
				}
				if c.isForeign(e.Value) {
					c.foreign = append(c.foreign, e.ValueSpan)
				}
			}
		}
		if len(c.foreign) == before && c.isForeign(strings.Join(all, ". ")) {
			c.foreign = append(c.foreign, longest.ValueSpan)
		}
	}
}

// isForeign says whether a text is in another language than the page.
func (c *textCheck) isForeign(text string) bool {
	language := reading.Language(text)
	return language != "" && language != c.page.Language && slices.Contains(reading.Languages(), c.page.Language)
}

// untranslated is a fault: a reader who chose the language of the page cannot read the text, and a program that reads
// pages aloud says it with the wrong sounds.
func (c *textCheck) untranslated() {
	if len(c.foreign) == 0 {
		return
	}
	other := languageNames["en"]
	if c.page.Language == "en" {
		other = languageNames["es"]
	}
	own := languageNames[c.page.Language]
	more := ""
	if n := len(c.foreign) - 1; n > 0 {
		more = fmt.Sprintf(", and so are %d more", n)
	}
	c.fault(c.foreign[0], "text-language",
		fmt.Sprintf("this text is in %s%s, and the page is in %s", other, more, own),
		fmt.Sprintf("write it in %s, or correct the language in the metadata", own))
}
