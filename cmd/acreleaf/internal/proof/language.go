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
	if !p.Running || page.Unwritten(p.Text) || !slices.Contains(reading.Languages(), c.page.Language) {
		return
	}
	if language := reading.Language(p.Text); language != "" && language != c.page.Language {
		c.foreign = append(c.foreign, p.Span(0, len(strings.TrimRight(p.Text, "\n"))))
	}
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
		fmt.Sprintf("this paragraph is in %s%s, and the page is in %s", other, more, own),
		fmt.Sprintf("write it in %s, or correct the language in the metadata", own))
}
