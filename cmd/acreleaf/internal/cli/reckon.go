package cli

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/message"
)

type reckonCommand struct {
	Calculation string   `arg:"" optional:"" help:"Which calculation. Leave it out to list them."`
	Givens      []string `arg:"" optional:"" help:"What is given, such as: nitrate='12 ppm NO3-N' depth='12 in'"`
	JSON        bool     `name:"json" help:"Print one JSON object."`
}

// Run works one calculation.
func (c *reckonCommand) Run(t *terminal) error {
	catalogue := calc.Standard()
	if c.Calculation == "" {
		listCalculations(t, catalogue)
		return nil
	}
	outcome, entries, err := c.work(catalogue)
	if c.JSON {
		return printJSON(t, c.Calculation, outcome, entries, err)
	}
	if err != nil {
		return err
	}
	printOutcome(t, outcome)
	return nil
}

func (c *reckonCommand) work(catalogue *calc.Catalogue) (sheet.Outcome, map[string]sheet.Entry, error) {
	s := catalogue.Find(c.Calculation)
	if s == nil {
		note := "type \"acreleaf reckon\" to list them"
		if near, ok := message.Nearest(c.Calculation, catalogue.Names()); ok {
			note = "did you mean " + near + "?"
		}
		return sheet.Outcome{}, nil, fmt.Errorf("there is no calculation %q\n   note: %s", c.Calculation, note)
	}
	entries, err := readGivens(s, c.Givens)
	if err != nil {
		return sheet.Outcome{}, nil, err
	}
	values := map[string]float64{}
	for name, entry := range entries {
		values[name] = entry.Value
	}
	outcome, err := s.Evaluate(values)
	return outcome, entries, err
}

// readGivens reads "nitrate=12 ppm NO3-N" and the like, and reports every fault at once.
func readGivens(s *sheet.Sheet, words []string) (map[string]sheet.Entry, error) {
	entries := map[string]sheet.Entry{}
	var faults []error
	for _, word := range words {
		name, text, found := strings.Cut(word, "=")
		given := s.FindGiven(name)
		switch {
		case !found:
			faults = append(faults, fmt.Errorf("%q has no =; write it as %s", word, exampleGiven(s, word)))
			continue
		case given == nil:
			faults = append(faults, fmt.Errorf("%s has no given %q; write %s", s.Name, name, exampleGiven(s, name)))
			continue
		}
		if _, twice := entries[name]; twice {
			faults = append(faults, fmt.Errorf("%s is given twice; leave one out", name))
			continue
		}
		entry, err := given.Read(text)
		if err != nil {
			faults = append(faults, fmt.Errorf("%s: %w", name, err))
			continue
		}
		entries[name] = entry
	}
	return entries, errors.Join(faults...)
}

// exampleGiven is the given whose name is nearest, as it may be typed.
func exampleGiven(s *sheet.Sheet, name string) string {
	var names []string
	for _, g := range s.Givens {
		names = append(names, g.Name)
	}
	near, ok := message.Nearest(name, names)
	if !ok {
		near = names[0]
	}
	return fmt.Sprintf("%s='%s'", near, s.FindGiven(near).Example())
}

func listCalculations(t *terminal, catalogue *calc.Catalogue) {
	for _, s := range catalogue.All() {
		fmt.Fprintf(t.out, "%s\n    %s\n    acreleaf reckon %s", s.Name, s.Summary, s.Name)
		for _, g := range s.Givens {
			if g.Optional {
				fmt.Fprintf(t.out, " [%s='%s']", g.Name, g.Example())
			} else {
				fmt.Fprintf(t.out, " %s='%s'", g.Name, g.Example())
			}
		}
		fmt.Fprintln(t.out)
	}
}

func printOutcome(t *terminal, o sheet.Outcome) {
	for _, r := range o.Use.Sheet.Answers() {
		fmt.Fprintf(t.out, "%s: %s\n", r.Label, o.Value(r.Name))
	}
	for _, line := range o.Work() {
		fmt.Fprintf(t.out, "  %s\n", line)
	}
	for _, said := range o.Said() {
		if said.Signal == sheet.Note {
			fmt.Fprintf(t.out, "Note: %s\n", said.Text)
		} else {
			fmt.Fprintf(t.out, "%s: %s\n", said.Signal, said.Text)
		}
	}
}

// An answer in JSON is a value with all its digits, and its unit.
type jsonQuantity struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

type jsonOutcome struct {
	Calculation string         `json:"calculation"`
	Given       map[string]any `json:"given"`
	Answers     map[string]any `json:"answers"`
	Work        []string       `json:"work"`
	Notes       []string       `json:"notes"`
	Cautions    []string       `json:"cautions"`
}

func printJSON(t *terminal, name string, o sheet.Outcome, entries map[string]sheet.Entry, err error) error {
	encoder := json.NewEncoder(t.out)
	encoder.SetEscapeHTML(false)
	if err != nil {
		if encodeErr := encoder.Encode(map[string]string{"error": err.Error()}); encodeErr != nil {
			return encodeErr
		}
		return errFaults
	}
	out := jsonOutcome{
		Calculation: name, Given: map[string]any{}, Answers: map[string]any{},
		Work: o.Work(), Notes: []string{}, Cautions: []string{},
	}
	for given, entry := range entries {
		if g := o.Use.Sheet.FindGiven(given); len(g.Choices) > 0 {
			out.Given[given] = g.Choices[int(entry.Value)].Name
			continue
		}
		out.Given[given] = jsonQuantity{entry.Typed, entry.Unit.String()}
	}
	for _, r := range o.Use.Sheet.Answers() {
		out.Answers[r.Name] = asJSON(o.Value(r.Name))
	}
	for _, said := range o.Said() {
		if said.Signal == sheet.Note {
			out.Notes = append(out.Notes, said.Text)
		} else {
			out.Cautions = append(out.Cautions, said.Signal.String()+": "+said.Text)
		}
	}
	return encoder.Encode(out)
}

func asJSON(q unit.Quantity) jsonQuantity { return jsonQuantity{q.Value, q.Unit.String()} }
