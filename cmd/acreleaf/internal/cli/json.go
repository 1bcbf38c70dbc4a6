package cli

import (
	"encoding/json"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// An answer in JSON is a value with all its digits, and its unit.
type jsonQuantity struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

// A given in JSON is a quantity as it was typed, or the name of a choice.
type jsonGiven struct {
	quantity jsonQuantity
	choice   string
}

func (g jsonGiven) MarshalJSON() ([]byte, error) {
	if g.choice != "" {
		return json.Marshal(g.choice)
	}
	return json.Marshal(g.quantity)
}

type jsonOutcome struct {
	Calculation string                  `json:"calculation"`
	Given       map[string]jsonGiven    `json:"given"`
	Answers     map[string]jsonQuantity `json:"answers"`
	Work        []string                `json:"work"`
	Notes       []string                `json:"notes"`
	Cautions    []string                `json:"cautions"`
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
		Calculation: name, Given: map[string]jsonGiven{}, Answers: map[string]jsonQuantity{},
		Work: o.Work(), Notes: []string{}, Cautions: []string{},
	}
	for given, entry := range entries {
		if g := o.Use.Sheet.FindGiven(given); len(g.Choices) > 0 {
			out.Given[given] = jsonGiven{choice: g.Choices[int(entry.Value)].Name}
			continue
		}
		out.Given[given] = jsonGiven{quantity: jsonQuantity{entry.Typed, entry.Unit.String()}}
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
