package config

import (
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/yamltext"
)

// Text gives a value as one line of plain text; empty when the key is missing.
func (t *Table) Text(key string) string {
	f, ok := t.find(key)
	if !ok {
		return ""
	}
	if f.value.Kind != yamltext.Scalar {
		t.Fault(key, "value-kind", fmt.Sprintf("%q needs a text", key),
			fmt.Sprintf("type the text on the same line; put it in quotes when it has signs in it: %s: \"...\"", key))
		return ""
	}
	if c := f.value.Comment; len(c) > 1 && c[1] != ' ' {
		span := f.value.Span()
		t.r.messages = append(t.r.messages, message.Message{Level: message.Advice, ID: "comment", Source: t.r.src,
			Span: message.Span{Start: span.End, End: span.End},
			Text: fmt.Sprintf("the text ends here: %q is taken as a comment", c),
			Note: "put the whole text in quotes if this is part of it, or a space after the #"})
	}
	return t.line(f.value)
}

// line makes one line of a scalar and refuses characters that are no text.
func (t *Table) line(n *yamltext.Node) string {
	if n.Empty() {
		return ""
	}
	text := onOneLine(n.Value)
	if strings.ContainsFunc(text, func(r rune) bool { return unicode.In(r, unicode.Cc, unicode.Co) || isSteering(r) }) {
		t.FaultAt(n.Span(), "control-character", "this text has a character in it that cannot be seen",
			"delete the text and type it again by hand")
		return ""
	}
	return text
}

// onOneLine puts one space in the place of white space within a text, and none around it.
func onOneLine(text string) string {
	afterSpace := true // as a text is at its start
	for _, r := range text {
		space := unicode.IsSpace(r)
		if space && (afterSpace || r != ' ') {
			return strings.Join(strings.Fields(text), " ")
		}
		afterSpace = space
	}
	return strings.TrimSuffix(text, " ") // nearly all are on one line as they are written
}

// isSteering knows the marks that turn the order of a text around.
func isSteering(r rune) bool {
	return r >= '\u202A' && r <= '\u202E' || r >= '\u2066' && r <= '\u2069' || string(r) == message.ByteOrderMark
}

// Empty says whether a key is there with nothing after it, or with spaces alone.
func (t *Table) Empty(key string) bool {
	f, ok := t.find(key)
	return ok && (f.value.Empty() || f.value.Kind == yamltext.Scalar && strings.TrimSpace(f.value.Value) == "")
}

// Need is Text for a key that must be there and not be empty; note says what to type.
func (t *Table) Need(key, note string) string {
	f, ok := t.find(key)
	switch {
	case t.r.broken, ok && f.value.Refused:
		return ""
	case !ok:
		t.FaultAt(t.place, "key-missing", fmt.Sprintf("%s has no %q", t.what, key), note)
	case f.value.Empty() || strings.TrimSpace(f.value.Value) == "" && f.value.Kind == yamltext.Scalar:
		t.Fault(key, "value-empty", fmt.Sprintf("%q has no value", key), note)
	}
	return t.Text(key)
}

// List gives the texts under a key, be they a YAML list or a single text.
func (t *Table) List(key string) []Value {
	f, ok := t.find(key)
	if !ok || f.value.Empty() {
		return nil
	}
	nodes := []*yamltext.Node{f.value}
	if f.value.Kind == yamltext.List {
		nodes = f.value.Items
	}
	var values []Value
	for _, n := range nodes {
		if n.Kind != yamltext.Scalar {
			t.FaultAt(n.Span(), "value-kind", fmt.Sprintf("%q needs plain texts", key),
				fmt.Sprintf("type them in one line, as in \"%s: [one, two]\"", key))
			continue
		}
		if text := t.line(n); text != "" {
			values = append(values, Value{text, n.Span()})
		}
	}
	return values
}

// Bool gives a yes or a no; no when the key is missing.
func (t *Table) Bool(key string) bool {
	switch text := t.Text(key); strings.ToLower(text) {
	case "true", "yes":
		return true
	case "", "false", "no":
		return false
	default:
		t.Fault(key, "value-kind", fmt.Sprintf("%q needs yes or no, and this is %q", key, text), "type true or false")
		return false
	}
}

// Number gives a plain decimal number, and false when the key is missing or holds none.
func (t *Table) Number(key string) (float64, bool) {
	text := t.Text(key)
	if text == "" {
		return 0, false
	}
	number, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.Trim(text, "0123456789.-+") != "" {
		t.Fault(key, "value-kind", fmt.Sprintf("%q needs a number, and this is %q", key, text),
			fmt.Sprintf("type digits, as in \"%s: 3\"", key))
		return 0, false
	}
	return number, true
}

// Date gives a day of the calendar at midnight UTC, and the zero time when the key is missing or holds none.
func (t *Table) Date(key string) time.Time {
	text := t.Text(key)
	if text == "" {
		return time.Time{}
	}
	return t.day(text, t.Span(key), fmt.Sprintf("%q needs a date as year-month-day, and this is %q", key, text),
		fmt.Sprintf("type four, two and two digits, as in \"%s: 2026-09-14\"", key))
}

// KeyDate gives the day that a key is, and the zero time when it is none.
func (t *Table) KeyDate(key string) time.Time {
	return t.day(key, t.KeySpan(key), fmt.Sprintf("each line of %s begins with a date as year-month-day, and this is %q",
		t.what, key), `type four, two and two digits before the colon, as in "2026-09-14: ..."`)
}

func (t *Table) day(text string, at message.Span, problem, note string) time.Time {
	day, err := time.Parse(time.DateOnly, text)
	if err == nil {
		return day
	}
	if len(text) == len(time.DateOnly) && strings.Trim(text, "0123456789-") == "" {
		problem = fmt.Sprintf("there is no day %s in the calendar", text)
	}
	t.FaultAt(at, "date", problem, note)
	return time.Time{}
}
