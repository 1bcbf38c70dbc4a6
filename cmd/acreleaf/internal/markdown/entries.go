package markdown

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/yamltext"
)

// bodyText is the body of a block without what comes before its lines: the indent of the fence, and the marks of lists
// and quotations.
func (r *reading) bodyText(lines *text.Segments) *yamltext.Text {
	size := 0
	for i := range lines.Len() {
		s := lines.At(i)
		size += s.Padding + s.Stop - s.Start + len("\n")
	}
	body := yamltext.New(r.source, lines.Len(), size)
	body.Example = "depth: 12 in"
	for i := range lines.Len() {
		s := lines.At(i)
		body.AddLine(bytes.TrimRight(r.doc.text[s.Start:s.Stop], "\n"), r.offset(s.Start), s.Padding)
	}
	return body
}

// entries reads the body of a block.
func (r *reading) entries(f *fence) []Entry {
	body, before := r.bodyText(f.node.Lines()), len(r.messages)
	if body.Len() > bodyLimit {
		r.fault("block-too-long", f.block.Span, fmt.Sprintf("this %s is longer than %d bytes", f.block.Construct, bodyLimit),
			"look for its closing fence, or split it")
		f.block.Unread = true
		return nil
	}
	var found []Entry
	if f.closed {
		found = r.readEntries(f.block, body)
	} else { // the rest of the page is in it, which would fill the screen with messages
		found = r.tableEntries(f.block, "", body.PlainStart())
	}
	f.block.Unread = len(r.messages) > before
	return r.checkEntries(f.block, found)
}

func (r *reading) readEntries(b *Block, body *yamltext.Text) []Entry {
	root, refused, err := body.Parse()
	switch {
	case yamltext.TooDeep(err):
		r.messages = append(r.messages, body.Slip(err))
		return nil
	case err != nil:
		return r.lineEntries(b, body)
	}
	r.messages = append(r.messages, refused...)
	switch {
	case root == nil:
		return nil
	case root.Kind != yamltext.Table:
		r.messages = append(r.messages, body.Slip(nil))
		return nil
	}
	return r.tableEntries(b, "", root.Entries)
}

// lineEntries reads a body that cannot be read as a whole, line by line, so that every line at fault is named and the
// others are kept.
func (r *reading) lineEntries(b *Block, body *yamltext.Text) []Entry {
	var found []Entry
	inTable := false
	for i := range body.Lines() {
		line := bytes.TrimRight(body.Line(i), " \t\r")
		indent := len(line) - len(bytes.TrimLeft(line, " \t"))
		if indent == len(line) || line[indent] == '#' {
			continue
		}
		if indent > 0 && inTable {
			if _, _, err := body.Only(i).Parse(); err != nil {
				r.messages = append(r.messages, body.Only(i).Slip(nil))
			}
			continue
		}
		if indent > 0 {
			r.fault("yaml", body.LineSpan(i, indent, len(line)),
				fmt.Sprintf("this line is indented, and the lines of %s begin at the left", b.Construct.One()),
				"take out what is before it")
			continue
		}
		one := body.Only(i)
		root, refused, err := one.Parse()
		if err != nil || root == nil || root.Kind != yamltext.Table || len(root.Entries) == 0 { // such as {}
			r.messages = append(r.messages, one.Slip(nil))
			if bytes.HasPrefix(line, []byte("```")) || bytes.HasPrefix(line, []byte("~~~")) {
				break // the other lines are of the block that begins here
			}
			continue
		}
		r.messages = append(r.messages, refused...)
		first := root.Entries[0]
		if inTable = b.Construct.HasTable(first.Key.Value) && first.Value.Empty(); !inTable {
			found = append(found, r.tableEntries(b, "", root.Entries)...)
		}
	}
	return found
}

// tableEntries gives the entries of a table that are a key and a text each. Those of a table in it have the key of that
// before their own: "report.ph".
func (r *reading) tableEntries(b *Block, before string, table []yamltext.Entry) []Entry {
	found := make([]Entry, 0, len(table))
	for _, t := range table {
		key, value := t.Key, t.Value
		switch {
		case key.Refused || value.Refused: // it has its message
		case key.Kind != yamltext.Scalar || key.Value == "":
			r.fault("key-kind", key.Line(), "this is not a key", "begin the line with a word and a colon")
		case value.Kind == yamltext.Table && b.Construct.HasTable(before+key.Value):
			found = append(found, r.tableEntries(b, before+key.Value+".", value.Entries)...)
		case value.Kind != yamltext.Scalar:
			r.fault("value-kind", value.Line(), fmt.Sprintf("%q needs a text, and this is a list or a table", key.Value),
				"write several values on one line with commas between them, without brackets")
		default:
			e := Entry{Key: before + key.Value, KeySpan: key.Inside(), Value: value.Value, ValueSpan: value.Inside()}
			if value.Value == "" && !value.Quoted {
				e.ValueSpan = message.Span{Start: e.KeySpan.End, End: e.KeySpan.End}
			}
			found = append(found, e)
		}
	}
	return found
}

// checkEntries refuses what no block can use.
func (r *reading) checkEntries(b *Block, found []Entry) []Entry {
	kept, first := found[:0], make(map[string]int, len(found))
	for _, e := range found {
		if at, twice := first[e.Key]; twice {
			r.fault("key-twice", e.KeySpan, fmt.Sprintf("%q is written twice in this %s", e.Key, b.Construct),
				fmt.Sprintf("take one of the two out; the first is on line %d", r.source.Line(at)))
			continue
		}
		first[e.Key] = e.KeySpan.Start
		if strings.TrimSpace(e.Value) == "" {
			r.fault("value-empty", e.KeySpan, fmt.Sprintf("%q has no value", e.Key),
				"write it after the colon and a space, or take the line out")
		}
		kept = append(kept, e)
	}
	return kept
}
