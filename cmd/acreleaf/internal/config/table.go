package config

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/yamltext"
)

// Table is a YAML mapping whose keys and values know their places. Reading a value of the wrong kind makes a message
// and gives the zero value, so that a caller reads on and all faults are reported at once.
type Table struct {
	r      *reader
	what   string       // "the metadata of a page", for messages
	place  message.Span // where a missing key is reported
	fields []field      // in the order of the file
	index  map[string]int
}

type field struct {
	key     string
	keySpan message.Span
	value   *yamltext.Node
}

// Value is one text with its place.
type Value struct {
	Text string
	Span message.Span
}

// ReadTable reads the YAML in a span of a source. Keys that are not in known are faults; nil allows any key.
// What names the table in messages: "the site file".
func ReadTable(src *message.Source, span message.Span, what string, known []string) *Table {
	text := yamltext.Cut(src, span)
	text.Example = "title: Nitrogen in your soil"
	r := &reader{src: src}
	t := &Table{r: r, what: what, place: text.FirstLine()}
	root, refused, err := text.Parse()
	r.messages = refused
	switch {
	case err != nil || root != nil && root.Kind != yamltext.Table:
		r.broken = true
		r.messages = append(r.messages, text.Slip(err))
	case root != nil:
		t.fill(root, known)
	}
	return t
}

// reader is what the tables of one text share.
type reader struct {
	src      *message.Source
	messages message.List
	broken   bool // the text is no table, so nothing can be said to be missing from it
}

// Messages gives what was found wrong so far, by this table and those inside it.
func (t *Table) Messages() message.List { return t.r.messages }

// PlaceMissing sets where a missing key is reported, in place of the first line of the table.
func (t *Table) PlaceMissing(s message.Span) { t.place = s }

func (t *Table) fill(root *yamltext.Node, known []string) {
	t.index = make(map[string]int, len(root.Entries))
	for _, e := range root.Entries {
		key, span := e.Key, e.Key.Span()
		first, seen := t.find(key.Value)
		switch {
		case key.Refused: // it has its message
		case key.Kind != yamltext.Scalar:
			t.FaultAt(span, "key-kind", "this is not a key", "begin the line with a word and a colon")
		case seen:
			t.FaultAt(span, "key-twice", fmt.Sprintf("%q is written twice in %s", key.Value, t.what), t.once(first))
		case known != nil && !slices.Contains(known, key.Value):
			t.FaultAt(span, "key-unknown", fmt.Sprintf("%s has no key %q", t.what, key.Value), meant(key.Value, known))
		default:
			t.index[key.Value] = len(t.fields)
			t.fields = append(t.fields, field{key.Value, span, e.Value})
		}
	}
}

// once says what to do about a key that is twice. A work may give one figure for two things.
func (t *Table) once(first field) string {
	if t.what == figuresOfSource {
		return writeOnce
	}
	return fmt.Sprintf("take one of the two out; the first is on line %d", t.r.src.Line(first.keySpan.Start))
}

// meant suggests the nearest known name, or lists them.
func meant(name string, known []string) string {
	if nearest, ok := message.Nearest(name, known); ok {
		return fmt.Sprintf("write %q", nearest)
	}
	return "use one of: " + strings.Join(known, ", ")
}

func (t *Table) find(key string) (field, bool) {
	i, ok := t.index[key]
	if !ok {
		return field{}, false
	}
	return t.fields[i], true
}

// Keys gives the keys in the order of the file.
func (t *Table) Keys() []string {
	keys := make([]string, len(t.fields))
	for i, f := range t.fields {
		keys[i] = f.key
	}
	return keys
}

// KeySpan is the place of a key, or of the table when the key is missing.
func (t *Table) KeySpan(key string) message.Span {
	if f, ok := t.find(key); ok {
		return f.keySpan
	}
	return t.place
}

// Span is the place of a key's value, of the key when the value is empty, of the table when the key is missing.
func (t *Table) Span(key string) message.Span {
	f, ok := t.find(key)
	switch {
	case !ok:
		return t.place
	case f.value.Empty():
		return f.keySpan
	}
	return f.value.Span()
}

// Fault adds a fault at the value of a key.
func (t *Table) Fault(key, id, text, note string) { t.FaultAt(t.Span(key), id, text, note) }

// FaultAt adds a fault at a place.
func (t *Table) FaultAt(s message.Span, id, text, note string) {
	t.r.messages = append(t.r.messages, message.Message{ID: id, Source: t.r.src, Span: s, Text: text, Note: note})
}

// IsTable says whether there is a table under a key.
func (t *Table) IsTable(key string) bool {
	f, ok := t.find(key)
	return ok && f.value.Kind == yamltext.Table
}

// Table gives the table under a key, or nil when there is none.
func (t *Table) Table(key, what string, known []string) *Table {
	f, ok := t.find(key)
	if !ok {
		return nil
	}
	inside := &Table{r: t.r, what: what, place: f.keySpan}
	switch f.value.Kind {
	case yamltext.Table:
		inside.fill(f.value, known)
	case yamltext.List:
		t.Fault(key, "value-kind", fmt.Sprintf("%q is a list with dashes here, and its parts need names", key),
			"write a name and a colon in place of each dash, as in \"  first:\", and its lines below that, "+
				"indented by four spaces")
		return nil
	default:
		t.Fault(key, "value-kind", fmt.Sprintf("%q needs lines of its own", key),
			fmt.Sprintf("type the lines below it, each indented by two spaces, as in %q", "  "+example(known)+": ..."))
		return nil
	}
	return inside
}

func example(known []string) string {
	if len(known) == 0 {
		return "title"
	}
	return known[0]
}
