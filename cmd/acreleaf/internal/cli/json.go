package cli

import (
	"encoding/json"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// A number in JSON has all its digits, and its unit. One number has a value, a range its two ends.
type jsonNumber struct {
	Value *float64 `json:"value,omitempty"`
	Low   *float64 `json:"low,omitempty"`
	High  *float64 `json:"high,omitempty"`
	Unit  string   `json:"unit"`
}

// A day in JSON is a date as ISO 8601 has it. One day has a date, a range its first and its last day.
type jsonDate struct {
	Date string `json:"date,omitempty"`
	Low  string `json:"low,omitempty"`
	High string `json:"high,omitempty"`
}

// What is given and answered holds a jsonNumber, a jsonDate or the name of an option.
type jsonOutcome struct {
	Calculation string            `json:"calculation"`
	Given       map[string]any    `json:"given"`
	Answers     map[string]any    `json:"answers"`
	Same        map[string]string `json:"same,omitempty"` // answers that always equal another, with its name
	Cautions    []string          `json:"cautions"`
	Says        []string          `json:"says"`
	Work        []string          `json:"work"`
	Notes       []string          `json:"notes"`
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
		Calculation: name, Given: map[string]any{}, Answers: map[string]any{}, Same: map[string]string{},
		Says: o.Words(), Work: work(o, entries), Notes: treated(o.Use.Sheet, entries), Cautions: []string{},
	}
	for given, entry := range entries {
		g := o.Use.Sheet.FindGiven(given)
		if len(g.Choices) > 0 {
			out.Given[given] = g.Text(entry)
			continue
		}
		typed := unit.Range{Low: entry.Typed, High: entry.TypedHigh, Unit: entry.Unit}
		out.Given[given] = asJSON(typed, g.Date)
	}
	for _, r := range o.Answers() {
		out.Answers[r.Name] = asJSON(o.Range(r.Name), r.Date)
		if r.Twin != "" {
			out.Same[r.Name] = r.Twin
		}
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

func asJSON(r unit.Range, date bool) any {
	switch {
	case date && r.Low == r.High:
		return jsonDate{Date: sheet.ISODate(r.Low)}
	case date:
		return jsonDate{Low: sheet.ISODate(r.Low), High: sheet.ISODate(r.High)}
	case r.Low == r.High:
		return jsonNumber{Value: &r.Low, Unit: r.Unit.String()}
	}
	return jsonNumber{Low: &r.Low, High: &r.High, Unit: r.Unit.String()}
}
