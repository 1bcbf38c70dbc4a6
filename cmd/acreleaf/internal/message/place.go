package message

import (
	"strings"
	"unicode/utf8"
)

// Placed is a message with its place worked out, as plain text for a screen. Nothing in it can steer a terminal; it
// is not escaped for HTML.
type Placed struct {
	Level        Level
	ID           string
	File         string // empty when the message has no place; what follows of places is then empty too
	Line, Column int    // from 1; the column counts characters

	// EndLine and EndColumn are the place of the first character after the marked part. They are the place of the
	// message itself when it marks nothing but the place before a character.
	EndLine, EndColumn int

	Excerpt Excerpt
	Text    string
	Note    []string // lines; none when there is no note
}

// Place works out the place of each message, in the order given. It reads each source once.
func Place(l List) []Placed {
	placed := make([]Placed, len(l))
	known := map[*Source]*lines{}
	for i, m := range l {
		p := Placed{Level: m.Level, ID: m.ID, Text: shortened(oneLine(m.Text))}
		for note := range strings.Lines(m.Note) {
			p.Note = append(p.Note, shortened(oneLine(note)))
		}
		if m.Source != nil {
			index := known[m.Source]
			if index == nil {
				index = newLines(m.Source)
				known[m.Source] = index
			}
			p.File = oneLine(m.Source.Name)
			p.Line, p.Column = index.position(m.Span.Start)
			p.EndLine, p.EndColumn = index.end(m.Span)
			p.Line += m.Source.Above
			p.EndLine += m.Source.Above
			p.Excerpt = index.excerpt(m.Span)
		}
		placed[i] = p
	}
	return placed
}

// oneLine makes words safe to print on one line: they may quote a hostile file.
func oneLine(text string) string {
	text = strings.ReplaceAll(strings.Trim(text, "\r\n"), "\r\n", "\n")
	var b strings.Builder
	for _, r := range text {
		if r == '\n' || r == '\t' {
			r = ' '
		}
		b.WriteRune(visible(r))
	}
	return b.String()
}

// What is left of a text that is longer than the two together: it quotes more of a file than anybody reads.
const (
	startBytes = 400
	endBytes   = 100
)

// shortened cuts the middle out of a long text. What is wrong is at its ends, the quotation between them.
func shortened(text string) string {
	if len(text) <= startBytes+endBytes {
		return text
	}
	start, end := startBytes, len(text)-endBytes
	for !utf8.RuneStart(text[start]) {
		start--
	}
	for !utf8.RuneStart(text[end]) {
		end++
	}
	return text[:start] + "…" + text[end:]
}
