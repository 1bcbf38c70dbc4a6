package cli

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
)

// defaultContent is the content folder when none is named. It need not be there to reckon.
const defaultContent = "content"

type reckonCommand struct {
	Calculation string   `arg:"" optional:"" help:"Which calculation. Leave it out to list them."`
	Givens      []string `arg:"" optional:"" help:"What is given, such as: nitrate='12 ppm NO3-N' depth='12 in'"`
	JSON        bool     `name:"json" help:"Print one JSON object."`
	Rows        string   `help:"Work every row of a CSV file, and print CSV; - is standard input." placeholder:"FILE"`
	place
}

// Help says where more is to be found.
func (c *reckonCommand) Help() string {
	return "The page \"Every unit\" of the manual lists how units and substances may be written."
}

// Run works one calculation.
func (c *reckonCommand) Run(t *terminal) error {
	if err := c.checkRows(); err != nil {
		return err
	}
	catalogue, messages, err := c.catalogue()
	if err != nil {
		return err
	}
	if c.Calculation == "" {
		listCalculations(t, catalogue)
		return t.report(messages)
	}
	if catalogue.Find(c.Calculation) == nil && len(messages) > 0 {
		t.printer.Print(t.err, messages) // what is asked for may be among those with a fault
	}
	s, err := c.find(catalogue)
	if err == nil && c.Rows != "" {
		return c.workRows(t, s)
	}
	var outcome sheet.Outcome
	var entries map[string]sheet.Entry
	if err == nil {
		outcome, entries, err = c.work(s)
	}
	if c.JSON {
		return printJSON(t, c.Calculation, outcome, entries, err)
	}
	if err != nil {
		return err
	}
	printOutcome(t, outcome, entries)
	return nil
}

// catalogue is the standard catalogue, with the calculations of the content folder if there is one and they are wanted.
func (c *reckonCommand) catalogue() (*calc.Catalogue, message.List, error) {
	standard := calc.Standard()
	if standard.Find(c.Calculation) != nil {
		return standard, nil, nil
	}
	options, err := c.open()
	if _, missing := os.Stat(c.From); c.From == defaultContent && errors.Is(missing, fs.ErrNotExist) {
		return standard, nil, nil
	}
	if err != nil {
		return nil, nil, err
	}
	catalogue, messages := book.Catalogue(options)
	return catalogue, messages, nil
}

// find is the calculation that is asked for.
func (c *reckonCommand) find(catalogue *calc.Catalogue) (*sheet.Sheet, error) {
	if catalogue.Faulty(c.Calculation) {
		return nil, fault{fmt.Sprintf("the calculation %q has an error, and cannot be worked", c.Calculation),
			"correct it first, as the messages above say"}
	}
	s := catalogue.Find(c.Calculation)
	if s == nil {
		note := `type "acreleaf reckon" to list them`
		if near, ok := message.Nearest(c.Calculation, catalogue.Names()); ok {
			note = "did you mean " + near + "?"
		}
		return nil, fault{fmt.Sprintf("there is no calculation %q", c.Calculation), note}
	}
	return s, nil
}

func (c *reckonCommand) work(s *sheet.Sheet) (sheet.Outcome, map[string]sheet.Entry, error) {
	r := &givenReader{sheet: s, entries: map[string]sheet.Entry{}, tried: map[string]bool{}}
	for _, word := range c.Givens {
		r.read(word)
	}
	r.checkMissing()
	if r.faults != nil {
		return sheet.Outcome{}, nil, r.faults
	}
	outcome, err := sheet.NewBench(s).Work(r.entries)
	return outcome, r.entries, err
}

// A givenReader reads what was typed for the givens of a sheet, and gathers what is wrong.
type givenReader struct {
	sheet   *sheet.Sheet
	entries map[string]sheet.Entry
	tried   map[string]bool // the givens that were typed, or most likely meant
	faults  faults
}

// read reads one word, such as "nitrate=12 ppm NO3-N".
func (r *givenReader) read(word string) {
	name, text, found := strings.Cut(word, "=")
	given := r.sheet.FindGiven(name)
	switch {
	case !found:
		r.fault(fmt.Sprintf("%q has no = in it", word), r.meant(word))
		return
	case given == nil:
		r.fault(fmt.Sprintf("%s has no given %q", r.sheet.Name, name), r.meant(name))
		return
	case r.tried[name]:
		r.fault(name+" is given twice", "leave one out")
		return
	}
	r.tried[name] = true
	entry, err := given.Read(text)
	if err != nil {
		sentence, advice := unit.Advice(err)
		r.fault(name+": "+sentence, cmp.Or(advice, "for example: "+typed(given)))
		return
	}
	r.entries[name] = entry
}

func (r *givenReader) fault(text, note string) { r.faults = append(r.faults, fault{text, note}) }

// meant is a note with the given whose name is nearest, as it may be typed, or with all of them.
func (r *givenReader) meant(name string) string {
	var names, all []string
	for _, g := range r.sheet.Givens {
		names, all = append(names, g.Name), append(all, typed(g))
	}
	if near, ok := message.Nearest(name, names); ok {
		r.tried[near] = true // so that it is not said to be missing too
		return "write " + typed(r.sheet.FindGiven(near))
	}
	return "write one of: " + strings.Join(all, ", ")
}

func (r *givenReader) checkMissing() {
	for _, g := range r.sheet.Givens {
		if meant, usual := g.Unsaid(); usual && !r.tried[g.Name] {
			r.entries[g.Name] = meant
		} else if !g.Optional && !r.tried[g.Name] {
			r.fault(g.Name+" is missing", "write "+typed(g))
		}
	}
}

// typed is a given with its typical value, as it may be typed in a shell.
func typed(g *sheet.Given) string { return fmt.Sprintf("%s='%s'", g.Name, g.Example()) }

func listCalculations(t *terminal, catalogue *calc.Catalogue) {
	for _, s := range catalogue.All() {
		fmt.Fprintf(t.out, "%s\n    %s\n    acreleaf reckon %s", s.Name, s.Summary, s.Name)
		for _, g := range s.Givens {
			if g.MayBeLeftOut() {
				fmt.Fprintf(t.out, " [%s]", typed(g))
			} else {
				fmt.Fprintf(t.out, " %s", typed(g))
			}
		}
		fmt.Fprintln(t.out)
	}
}

func printOutcome(t *terminal, o sheet.Outcome, entries map[string]sheet.Entry) {
	for _, r := range o.Answers() {
		if r.Twin != "" {
			continue
		}
		fmt.Fprintf(t.out, "%s: %s\n", r.Label, o.Text(r.Name))
	}
	for _, sentence := range o.Words() {
		fmt.Fprintf(t.out, "%s\n", sentence)
	}
	for _, said := range o.Said() {
		if said.Signal != sheet.Note {
			fmt.Fprintf(t.out, "%s: %s\n", said.Signal, said.Text)
		}
	}
	for _, line := range work(o, entries) {
		fmt.Fprintf(t.out, "  %s\n", line)
	}
	for _, sentence := range treated(o.Use.Sheet, entries) {
		fmt.Fprintf(t.out, "Note: %s\n", sentence)
	}
	for _, said := range o.Said() {
		if said.Signal == sheet.Note {
			fmt.Fprintf(t.out, "Note: %s\n", said.Text)
		}
	}
}

// work is the printed work, after what became of the givens that were typed in another unit.
func work(o sheet.Outcome, entries map[string]sheet.Entry) []string {
	var lines []string
	for _, g := range o.Use.Sheet.Givens {
		if e, typed := entries[g.Name]; typed {
			if line := g.Converted(e); line != "" {
				lines = append(lines, line)
			}
		}
	}
	return append(lines, o.Work()...)
}

// treated says, in the order of the sheet, how the givens are treated that are not taken as they stand.
func treated(s *sheet.Sheet, entries map[string]sheet.Entry) []string {
	sentences := []string{}
	for _, g := range s.Givens {
		if sentence := g.Treated(entries[g.Name]); sentence != "" {
			sentences = append(sentences, sentence)
		}
	}
	return sentences
}
