package page

import (
	"bytes"
	"fmt"
	"regexp"

	"acreleaf/cmd/acreleaf/internal/message"
)

const fence = "---"

const typeMetadata = "begin the file with these lines:\n---\ntitle: The title of the page\n" +
	"summary: One sentence that says what a reader gets from it.\n---"

// Split reads the metadata at the top of a page and gives the offset where its Markdown begins. After a fault the
// offset is the best guess, so that the rest of the page can be looked through at the same time.
func Split(src *message.Source) (Metadata, int, message.List) {
	start := 0
	if bytes.HasPrefix(src.Text, []byte(message.ByteOrderMark)) {
		start = len(message.ByteOrderMark)
	}
	first := lineAt(src.Text, start)
	opening := message.Span{Start: start, End: start + len(first.words)}
	if string(first.words) != fence {
		return Metadata{Faulty: true}, start, missingFence(src, opening)
	}
	end, guessed := closing(src.Text, first.next)
	metadata, faults := readMetadata(src, opening, message.Span{Start: first.next, End: end})
	metadata.Faulty = message.HasFault(faults)
	if guessed {
		faults = append(faults, unclosed(src, opening, end))
		return metadata, end, faults
	}
	return metadata, lineAt(src.Text, end).next, faults
}

func missingFence(src *message.Source, opening message.Span) message.List {
	m := message.Message{ID: "metadata-missing", Source: src, Span: opening,
		Text: "the page does not begin with its metadata", Note: typeMetadata}
	trimmed := bytes.TrimSpace(src.Text[opening.Start:])
	switch {
	case len(trimmed) == 0:
		m.Text = "the page is empty"
	case bytes.HasPrefix(trimmed, []byte(fence+"\n")) || bytes.HasPrefix(trimmed, []byte(fence+"\r\n")):
		m.Text, m.Note = "there is something before the opening \"---\"",
			"delete it: \"---\" must be the very first line, with nothing before it"
	case fenceSlip.Match(trimmed):
		m.Text, m.Note = "the first line must be \"---\" and nothing else", "type three hyphens"
	}
	return message.List{m}
}

// fenceSlip is a first line that was meant as the opening: any number of hyphens, long ones among them.
var fenceSlip = regexp.MustCompile(`^[-–—]+[ \t]*\r?\n`)

func unclosed(src *message.Source, opening message.Span, end int) message.Message {
	last, _ := src.Position(max(0, end-1))
	return message.Message{ID: "metadata-unclosed", Source: src, Span: opening,
		Text: "the metadata that begins here has no end",
		Note: fmt.Sprintf("type \"---\" on a line of its own after line %d", last)}
}

// line is one line of a text, without its end and without spaces before that.
type line struct {
	words []byte
	next  int // offset of the line after it, the length of the text when it is the last
}

func lineAt(text []byte, at int) line {
	words, next := text[at:], len(text)
	if end := bytes.IndexByte(words, '\n'); end >= 0 {
		words, next = words[:end], at+end+1
	}
	return line{bytes.TrimRight(words, " \t\r"), next}
}

// metadataLine is a line that may be in metadata: a key, a list item, a remark, or one that is set in.
var metadataLine = regexp.MustCompile(`^([A-Za-z][A-Za-z_-]*:( |$)|- |#[^#]|[ \t]+\S)`)

// closing finds the offset of the line "---" that ends the metadata. When there is none, it gives the end of the
// lines that look like metadata, and true.
func closing(text []byte, from int) (end int, guessed bool) {
	guess := -1
	for at := from; at < len(text); {
		l := lineAt(text, at)
		if string(l.words) == fence {
			// A rule of Markdown further down is no end: blank lines and text came before it.
			if guess < 0 || !looksLikeBody(text[guess:at]) {
				return at, false
			}
			return guess, true
		}
		if guess < 0 && !metadataLine.Match(l.words) {
			guess = at
		}
		at = l.next
	}
	if guess < 0 {
		guess = len(text)
	}
	return guess, true
}

var keyLine = regexp.MustCompile(`(?m)^[A-Za-z][A-Za-z_-]*:( |\r?$)`)

// looksLikeBody says whether lines that are no metadata are the page's text: they come after a blank line and have no
// key among them.
func looksLikeBody(lines []byte) bool {
	return len(lineAt(lines, 0).words) == 0 && len(bytes.TrimSpace(lines)) > 0 && !keyLine.Match(lines)
}
