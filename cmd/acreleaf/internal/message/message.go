// Package message holds what Acreleaf has to say about a file: a sentence, a place and what to type next.
//
// It owns source texts, byte spans, their order, their printing and "did you mean". A span becomes a line and a column
// only when it is shown, so that parsers carry plain offsets. The package must not know of pages, YAML or Markdown,
// and it never decides what is wrong: that belongs to the packages above it.
package message

import (
	"cmp"
	"slices"
)

// Level says whether a message stops the work.
type Level int

// The levels. The zero value is Fault, so that a forgotten level stops a press and never lets it pass.
const (
	Fault  Level = iota // printed "error": nothing is written
	Advice              // printed "advice": worth a look, the work goes on
)

// String gives the word that is printed.
func (l Level) String() string {
	if l == Advice {
		return "advice"
	}
	return "error"
}

// Span is a range of byte offsets in a source's text, End not included. An empty span marks the place before Start.
type Span struct{ Start, End int }

// Message is one thing to say.
type Message struct {
	Level  Level
	ID     string  // short and fixed, words joined by hyphens: "figure-differs"
	Source *Source // nil when the message has no place
	Span   Span
	Text   string // what is wrong, without a full stop
	Note   string // what to type or do next; may be several lines
}

// List is a run of messages in no certain order until Sort.
type List = []Message

// Sort puts messages in the order they are read: by file, place, level, then words. Those without a place come last,
// next to the summary. The order depends on nothing else, so it is the same whatever ran first.
func Sort(l List) {
	slices.SortStableFunc(l, func(a, b Message) int {
		return cmp.Or(
			compareSources(a.Source, b.Source),
			cmp.Compare(a.Span.Start, b.Span.Start),
			cmp.Compare(a.Span.End, b.Span.End),
			cmp.Compare(a.Level, b.Level),
			cmp.Compare(a.ID, b.ID),
			cmp.Compare(a.Text, b.Text),
			cmp.Compare(a.Note, b.Note),
		)
	})
}

func compareSources(a, b *Source) int {
	switch {
	case a == b:
		return 0
	case a == nil:
		return 1
	case b == nil:
		return -1
	}
	return cmp.Compare(a.Name, b.Name)
}

// HasFault says whether any message stops the work.
func HasFault(l List) bool {
	return slices.ContainsFunc(l, func(m Message) bool { return m.Level == Fault })
}
