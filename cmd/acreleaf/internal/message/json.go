package message

import (
	"encoding/json"
	"io"
)

// Counts are what was looked through to find messages: how many pages, how many figures tied to a worksheet and to a
// source, and the cards of each exercise.
type Counts struct {
	Pages, Worked, Sourced int
	Exercises              []Cards
}

// Cards are those of an exercise: how many different ones there are, how many are asked for, and how many of these do
// not tell some slips apart.
type Cards struct {
	File      string `json:"file"`
	Name      string `json:"name"`
	Distinct  int    `json:"distinct"`
	Cards     int    `json:"cards"`
	Ambiguous int    `json:"ambiguous"`
	Unsure    []Pair `json:"unsure"`
}

// A Pair is a slip and what it cannot be told from on some cards.
type Pair struct {
	Slip  string `json:"slip"`
	Other string `json:"other"` // another slip; empty for the right answer
	Cards int    `json:"cards"`
}

// report is the object that JSON prints. Every key is always there, so that a program that reads it needs no ifs.
type report struct {
	Pages     int           `json:"pages"`
	Worked    int           `json:"worked"`
	Sourced   int           `json:"sourced"`
	Exercises []Cards       `json:"exercises"`
	Errors    int           `json:"errors"`
	Advice    int           `json:"advice"`
	Messages  []reportEntry `json:"messages"`
}

type reportEntry struct {
	Level     string   `json:"level"` // "error" or "advice"
	ID        string   `json:"id"`
	File      string   `json:"file"` // empty when the message has no place; the numbers are then 0
	Line      int      `json:"line"`
	Column    int      `json:"column"`
	EndLine   int      `json:"endLine"`
	EndColumn int      `json:"endColumn"`
	Text      string   `json:"text"`
	Notes     []string `json:"notes"`
}

// JSON writes the messages as one object, in the order given.
func JSON(w io.Writer, l List, c Counts) error {
	faults, advice := Count(l)
	r := report{Pages: c.Pages, Worked: c.Worked, Sourced: c.Sourced, Exercises: append([]Cards{}, c.Exercises...),
		Errors: faults, Advice: advice, Messages: make([]reportEntry, len(l))}
	for i, p := range Place(l) {
		level := "error"
		if p.Level == Advice {
			level = "advice"
		}
		r.Messages[i] = reportEntry{Level: level, ID: p.ID, File: p.File, Line: p.Line, Column: p.Column,
			EndLine: p.EndLine, EndColumn: p.EndColumn, Text: p.Text, Notes: append([]string{}, p.Note...)}
	}
	return encode(w, r)
}

func encode(w io.Writer, value any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(value)
}
