package render

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// A Sentence is a text with named blanks, "Reviewed {date}".
type Sentence struct{ parts []part }

// A part is a stretch of plain text, or the name of a blank.
type part struct {
	text  string
	blank bool
}

// UnmarshalYAML reads a sentence from its text.
func (s *Sentence) UnmarshalYAML(node *yaml.Node) error {
	var text string
	if err := node.Decode(&text); err != nil {
		return err
	}
	for text != "" {
		before, rest, found := strings.Cut(text, "{")
		if before != "" {
			s.parts = append(s.parts, part{text: before})
		}
		if !found {
			return nil
		}
		name, after, closed := strings.Cut(rest, "}")
		if !closed {
			return fmt.Errorf("line %d: a brace is not closed", node.Line)
		}
		s.parts = append(s.parts, part{text: name, blank: true})
		text = after
	}
	return nil
}

// check says whether the sentence has exactly the blanks of the list, which commas separate, each once.
func (s Sentence) check(key, list string) error {
	if len(s.parts) == 0 {
		return fmt.Errorf("the key %s is missing or empty", key)
	}
	var got []string
	for _, p := range s.parts {
		if p.blank {
			got = append(got, p.text)
		}
	}
	want := strings.Split(list, ",")
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		return fmt.Errorf("the key %s must have the blanks {%s}, each once; it has {%s}",
			key, strings.Join(want, "}, {"), strings.Join(got, "}, {"))
	}
	return nil
}

// write writes the sentence, escaped, and calls fill where a blank stands.
func (s Sentence) write(w *bytes.Buffer, fill func(blank string)) {
	for _, p := range s.parts {
		if p.blank {
			fill(p.text)
		} else {
			text(w, p.text)
		}
	}
}

// with gives the text of a sentence of one blank.
func (s Sentence) with(value string) string {
	var b strings.Builder
	for _, p := range s.parts {
		if p.blank {
			b.WriteString(value)
		} else {
			b.WriteString(p.text)
		}
	}
	return b.String()
}

// pattern gives the sentence with its blanks in braces, as it was written.
func (s Sentence) pattern() string {
	var b strings.Builder
	for _, p := range s.parts {
		if p.blank {
			b.WriteString("{" + p.text + "}")
		} else {
			b.WriteString(p.text)
		}
	}
	return b.String()
}
