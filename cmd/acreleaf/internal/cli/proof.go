package cli

import (
	"cmp"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"acreleaf/calc/prose"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

type proofCommand struct {
	place
	Today day  `help:"The day for overdue reviews, as 2026-11-02 (today, by this computer's clock)." placeholder:"DATE"`
	JSON  bool `name:"json" xor:"form" help:"Print one JSON object."`
	SARIF bool `name:"sarif" xor:"form" help:"Print a SARIF 2.1.0 log, for editors and code review."`
	question
}

// A question is one about the numbers of a sentence.
type question struct {
	Explain  *string `xor:"form" help:"Say how the numbers of a sentence are read; check no page." placeholder:"TEXT"`
	Language string  `help:"The language of that sentence, as es (en)." placeholder:"CODE"`
}

// A day is a date of the calendar that was typed, at midnight UTC.
type day struct{ time.Time }

// UnmarshalText reads a date that was typed.
func (d *day) UnmarshalText(text []byte) (err error) {
	if d.Time, err = time.Parse(time.DateOnly, string(text)); err == nil {
		return nil
	}
	problem := fmt.Sprintf("a date is needed here, and this is %q", text)
	if len(text) == len(time.DateOnly) && strings.Trim(string(text), "0123456789-") == "" {
		problem = fmt.Sprintf("there is no day %s in the calendar", text)
	}
	return fault{"--today: " + problem, "write year, month and day, as in --today=2026-11-02"}
}

// localDay is the day that a clock shows where it stands, as a day at midnight UTC: an advisor looks at the calendar on
// the wall, and a review is due on a day, not at an hour.
func localDay(now time.Time) time.Time {
	year, month, date := now.Date()
	return time.Date(year, month, date, 0, 0, 0, 0, time.UTC)
}

// Run checks every guide and writes nothing.
func (c *proofCommand) Run(t *terminal) error {
	switch {
	case c.Explain != nil:
		return c.explain(t)
	case c.Language != "":
		return errUsage{fault{"--language is the language of a sentence to explain, and there is none",
			`name both, as in: acreleaf proof --explain="48 libras por acre" --language=es`}}
	}
	options, err := c.open()
	if err != nil {
		return err
	}
	if c.JSON || c.SARIF {
		options.Name = fromHere(options.Name)
	}
	rules := proof.Rules{Advice: true, Today: c.Today.Time}
	if rules.Today.IsZero() {
		rules.Today = localDay(time.Now())
	}
	found := book.Check(options, site.New, rules)
	switch {
	case c.JSON:
		err = message.JSON(t.out, found.Messages, message.Counts{Pages: found.Pages, Worked: found.Worked,
			Sourced: found.Sourced, Exercises: cardsOf(found.Exercises)})
	case c.SARIF:
		err = message.SARIF(t.out, found.Messages)
	default:
		return c.tell(t, found)
	}
	if err == nil && message.HasFault(found.Messages) {
		err = errFaults
	}
	return err
}

// explain prints how each number of a sentence is read, or why it is let go.
func (c *proofCommand) explain(t *terminal) error {
	language := prose.For(cmp.Or(c.Language, "en"))
	if !language.HasWords() {
		fmt.Fprintf(t.out, "no words of the language %q are known here: only symbols and digits are read\n", c.Language)
	}
	lines := prose.Trace(*c.Explain, language)
	if len(lines) == 0 {
		lines = []string{"there is no number in it"}
	}
	for _, line := range lines {
		fmt.Fprintln(t.out, line)
	}
	return nil
}

// tell prints what was found for people, and how much was read when there is no error.
func (c *proofCommand) tell(t *terminal, found book.Checked) error {
	if err := t.report(found.Messages); err != nil {
		return err
	}
	for _, e := range found.Exercises {
		fmt.Fprintln(t.out, countedCards(e))
	}
	result := "no errors"
	if len(found.Messages) > 0 {
		result += ", " + message.Summary(found.Messages)
	}
	fmt.Fprintf(t.out, "%d %s, %d worked and %d sourced figures: %s\n",
		found.Pages, plural(found.Pages, "page", "pages"), found.Worked, found.Sourced, result)
	return nil
}

// cardsOf is what is known of the cards of exercises, for other programs.
func cardsOf(exercises []book.CountedCards) []message.Cards {
	var list []message.Cards
	for _, e := range exercises {
		one := message.Cards{File: e.Page, Name: e.Name, Distinct: e.Distinct, Cards: e.Cards,
			Ambiguous: e.Doubt.Cards, Unsure: []message.Pair{}}
		for _, pair := range e.Unsure {
			p := message.Pair{Slip: pair.Slip.Name, Cards: pair.Cards}
			if pair.Other != nil {
				p.Other = pair.Other.Name
			}
			one.Unsure = append(one.Unsure, p)
		}
		list = append(list, one)
	}
	return list
}

// countedCards tells how many cards an exercise has, and which slips its cards do not tell apart.
func countedCards(e book.CountedCards) string {
	text := fmt.Sprintf("%s, exercise %s: %d different cards; of the %d asked for, ", e.Page, e.Name, e.Distinct, e.Cards)
	if e.Doubt.Cards == 0 {
		return text + "each tells all slips apart"
	}
	var pairs []string
	for _, pair := range e.Unsure {
		other := "the right answer"
		if pair.Other != nil {
			other = pair.Other.Name
		}
		pairs = append(pairs, fmt.Sprintf("%s from %s (%d)", pair.Slip.Name, other, pair.Cards))
	}
	return text + fmt.Sprintf("%d cannot tell %s", e.Doubt.Cards, strings.Join(pairs, ", "))
}

// fromHere is the way to a folder from the current one. What other programs read shall tell nothing of this machine.
func fromHere(folder string) string {
	if !filepath.IsAbs(folder) {
		return folder
	}
	here, err := filepath.Abs(".")
	if err == nil {
		if way, err := filepath.Rel(here, folder); err == nil {
			return filepath.ToSlash(way)
		}
	}
	return filepath.Base(folder)
}
