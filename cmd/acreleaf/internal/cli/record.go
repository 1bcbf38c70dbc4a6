package cli

import (
	"errors"
	"fmt"
	"strings"
	"text/tabwriter"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/proof"
	"acreleaf/cmd/acreleaf/internal/record"
)

type recordCommand struct {
	Code []string `arg:"" optional:"" help:"The code of the record, in one piece or in groups."`
	place
}

// whatItProves is printed after the record of a code that is in order.
const whatItProves = `This proves the arithmetic of the record: its lessons, dates and scores.
It does not prove who sat there. The dates are those of the learner's own device, and a code is not signed.
`

// Run reads a code and tells what it says.
func (c *recordCommand) Run(t *terminal) error {
	if len(c.Code) == 0 {
		return errUsage{fault{"no code was typed", "type the code that is on the record: acreleaf record CODE"}}
	}
	options, err := c.open()
	if err != nil {
		return err
	}
	found := book.Check(options, site.New, proof.Rules{})
	if err := t.report(found.Messages); err != nil {
		return err
	}
	course, lessons, err := record.Read(strings.Join(c.Code, ""), found.Courses)
	var problem *record.Problem
	if errors.As(err, &problem) {
		return fault{problem.Text, problem.Note}
	}
	fmt.Fprintf(t.out, "%s (%s)\n\n", course.Title, course.Address)
	table := tabwriter.NewWriter(t.out, 0, 0, 2, ' ', 0)
	finished, right, asked := 0, 0, 0
	for i, done := range lessons {
		fmt.Fprintf(table, "%d.\t%s\t%s\t%s\n", i+1, course.Lessons[i].Title, finishedOn(done),
			scoreOf(done.Right, done.Asked()))
		right, asked = right+done.Right, asked+done.Asked()
		if done.Day != record.Unfinished {
			finished++
		}
	}
	if err := table.Flush(); err != nil {
		return err
	}
	_, err = fmt.Fprintf(t.out, "\n%d of %d lessons finished; %s\n\n%s", finished, len(lessons), scoreOf(right, asked),
		whatItProves)
	return err
}

func finishedOn(done record.Done) string {
	if done.Day == record.Unfinished {
		return "not finished"
	}
	return time.Unix(0, 0).UTC().AddDate(0, 0, done.Day).Format(time.DateOnly)
}

func scoreOf(right, asked int) string {
	if asked == 0 {
		return "no answers"
	}
	return fmt.Sprintf("%d of %d right at the first try", right, asked)
}
