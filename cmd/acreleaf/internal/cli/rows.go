package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/rows"
)

// standardInput is what is typed for it, in place of the name of a file.
const standardInput = "-"

// checkRows says what does not go with rows.
func (c *reckonCommand) checkRows() error {
	switch {
	case c.Rows == "":
		return nil
	case c.Calculation == "":
		return errUsage{fault{"--rows needs a calculation", "name one: acreleaf reckon soil-nitrogen --rows=" + c.Rows}}
	case c.JSON:
		return errUsage{fault{"--rows prints CSV, and --json something else", "leave one of the two out"}}
	}
	return nil
}

// mostRowsTold is how many messages on rows are printed: the last column has all of them.
const mostRowsTold = 100

// workRows works a calculation for every row of a file.
func (c *reckonCommand) workRows(t *terminal, s *sheet.Sheet) error {
	r := &givenReader{sheet: s, entries: map[string]sheet.Entry{}, tried: map[string]bool{}}
	for _, word := range c.Givens {
		r.read(word)
	}
	if r.faults != nil {
		return r.faults
	}
	in, name, err := openRows(c.Rows)
	if err != nil {
		return err
	}
	defer func() { _ = in.Close() }() // it was only read
	told := 0
	progress := &progress{to: t.err, quiet: !isTerminal(t.err) || isTerminal(t.out.to), since: time.Now()}
	tally, err := rows.Job{
		Sheet: s, Typed: r.entries, Name: name, In: in, Out: t.out,
		Report: func(m message.Message) {
			if told++; told > mostRowsTold {
				return
			}
			progress.clear()
			t.printer.PrintOne(t.err, m)
		},
		Progress: progress.show,
	}.Run()
	progress.clear()
	if err != nil {
		return err
	}
	if told > mostRowsTold {
		fmt.Fprintf(t.err, "%d more messages are not printed here.\n", told-mostRowsTold)
	}
	if tally.Faulty > 0 {
		fmt.Fprintf(t.err, "Rows without an answer: %d of %d. The last column says why.\n", tally.Faulty, tally.Rows)
	}
	if tally.Faults > 0 {
		return errFaults
	}
	return nil
}

// openRows opens the file with the rows, and gives its name for messages.
func openRows(name string) (io.ReadCloser, string, error) {
	if name == standardInput {
		return io.NopCloser(os.Stdin), "standard input", nil
	}
	shown := filepath.ToSlash(name)
	file, err := os.Open(name)
	var path *fs.PathError
	switch {
	case err == nil:
		return file, shown, nil
	case errors.Is(err, fs.ErrNotExist):
		return nil, "", fault{fmt.Sprintf("there is no file %q here", shown), "name a CSV file: --rows=blocks.csv"}
	case errors.Is(err, fs.ErrPermission):
		return nil, "", fault{fmt.Sprintf("you may not read %q", shown), "give yourself the right to read it"}
	case errors.As(err, &path):
		err = path.Err // the message has the path already
	}
	return nil, "", fault{text: fmt.Sprintf("%q cannot be opened: %v", shown, err)}
}

// A progress tells on one line of a terminal how many rows came out, when that takes long.
type progress struct {
	to    io.Writer
	quiet bool
	since time.Time // when it was last told
	width int       // of the cell as it is written
}

// progressEvery is the time between two tellings, and before the first.
const progressEvery = time.Second

func (p *progress) show(rows int) {
	if p.quiet || time.Since(p.since) < progressEvery {
		return
	}
	p.since = time.Now()
	line := fmt.Sprintf("%d rows", rows)
	p.width = len(line)
	fmt.Fprintf(p.to, "\r%s", line)
}

// clear makes room on the line for something else.
func (p *progress) clear() {
	if p.width > 0 {
		fmt.Fprintf(p.to, "\r%s\r", strings.Repeat(" ", p.width))
		p.width = 0
	}
}
