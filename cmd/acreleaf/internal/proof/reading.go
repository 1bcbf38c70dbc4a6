package proof

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/reading"
)

// fewWords is the length of a text below which its measure says nothing: the formulas were made on samples of about a
// hundred words.
const fewWords = 100

// shownSentences is how many of the longest sentences a message tells the places of.
const shownSentences = 3

// readingCheck counts the sentences, words and syllables of a page's paragraphs.
type readingCheck struct {
	measure *reading.Measure // nil when nothing is counted
	count   reading.Count
	longest []sentence // the longest first, at most shownSentences
}

type sentence struct {
	words int
	at    message.Span
}

// newReadingCheck counts only when there is advice to give.
func newReadingCheck(p *Page, r Rules) readingCheck {
	if !r.Advice {
		return readingCheck{}
	}
	return readingCheck{measure: reading.For(p.Language)}
}

// prose counts one paragraph. Headings and cells are no sentences.
func (c *readingCheck) prose(p *markdown.Prose) {
	if c.measure == nil || !p.Running {
		return
	}
	for _, s := range reading.Sentences(p.Text) {
		before := c.count
		c.count.Add(p.Text[s.Start:s.End], c.measure.Syllables)
		c.keep(sentence{words: c.count.Words - before.Words, at: p.Span(s.Start, s.End)})
	}
}

// keep puts a sentence among the longest, if it is one of them.
func (c *readingCheck) keep(s sentence) {
	at := 0
	for at < len(c.longest) && c.longest[at].words >= s.words {
		at++
	}
	if at < shownSentences {
		c.longest = slices.Insert(c.longest, at, s)
		c.longest = c.longest[:min(len(c.longest), shownSentences)]
	}
}

// grade advises on a text that is too hard to read, at its longest sentence.
func (c *textCheck) grade() {
	m := c.readability.measure
	if m == nil || c.readability.count.Words < fewWords {
		return
	}
	limit := cmp.Or(c.site.Config.Reading[c.page.Language], m.Limit)
	score := m.Score(c.readability.count)
	if !m.TooHard(score, limit) {
		return
	}
	bound := "or below"
	if m.Ease {
		bound = "or above"
	}
	longest := c.readability.longest
	c.advise(longest[0].at, "reading-hard",
		fmt.Sprintf("this text scores %s by the %s, and the site asks for %g %s", scoreText(score, limit), m.Name, limit,
			bound),
		fmt.Sprintf("split long sentences and choose shorter words; the longest have %s words, on lines %s",
			listed(longest, func(s sentence) int { return s.words }),
			listed(longest, func(s sentence) int { return c.page.Source.Line(s.at.Start) })))
}

// scoreText rounds a score to a tenth, and further only when it would else look like the limit.
func scoreText(score, limit float64) string {
	text := strconv.FormatFloat(score, 'f', 1, 64)
	if rounded, _ := strconv.ParseFloat(text, 64); rounded == limit {
		return strconv.FormatFloat(score, 'f', 3, 64)
	}
	return text
}

func listed(sentences []sentence, number func(sentence) int) string {
	var texts []string
	for _, s := range sentences {
		texts = append(texts, strconv.Itoa(number(s)))
	}
	last := len(texts) - 1
	if last == 0 {
		return texts[0]
	}
	return strings.Join(texts[:last], ", ") + " and " + texts[last]
}
