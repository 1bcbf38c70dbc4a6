package markdown

import (
	"bytes"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/message"
)

// entryExample is what to type, for the messages about a block's body.
const entryExample = "write a name, a colon, a space and a value on one line, like “depth: 12 in”"

// entries reads the body of a block. The body is YAML; nearly every line of it is a plain “key: value”, which is read
// without YAML's reader because that takes longer than goldmark does for the rest of the page.
func (r *reading) entries(f *fence) []Entry {
	b, before := newBody(r, f.node.Lines()), len(r.messages)
	if len(b.text) > bodyLimit {
		r.fault("block-too-long", f.block.Span, "this "+f.block.Construct+" is too long to be one",
			"look for its closing fence, or split it")
		f.block.Unread = true
		return nil
	}
	found, ok := b.plainEntries()
	switch {
	case ok:
	case f.closed:
		found = r.yamlEntries(b)
	default: // the rest of the page is in it, which would fill the screen with messages
		found = b.entriesBeforeProse()
	}
	f.block.Unread = len(r.messages) > before
	return r.checkEntries(found)
}

// yamlEntries reads a body with YAML's reader.
func (r *reading) yamlEntries(b *body) []Entry {
	var document yaml.Node
	if b.hasMarker() || yaml.Unmarshal(b.text, &document) != nil {
		return r.lineEntries(b)
	}
	if document.Kind == 0 { // nothing but comments
		return nil
	}
	root := document.Content[0]
	if root.Kind != yaml.MappingNode {
		r.fault("block-line", b.lineSpan(root), "this is no line of the kind “name: value”", entryExample)
		return nil
	}
	return r.mappingEntries(b, root)
}

// lineEntries reads a body that cannot be read as a whole, line by line, so that every line at fault is named and the
// others are kept. YAML's own message is not used: it names a line that is often one of the next, in words that are
// not for growers.
func (r *reading) lineEntries(b *body) []Entry {
	var found []Entry
	for i := range b.lines {
		if line := bytes.TrimLeft(b.line(i), " \t"); len(line) == 0 || line[0] == '#' {
			continue
		}
		if e, ok := b.plainEntry(i); ok {
			found = append(found, e)
			continue
		}
		one := b.only(i)
		var document yaml.Node
		if one.text[0] != ' ' && !one.hasMarker() && yaml.Unmarshal(one.text, &document) == nil &&
			document.Kind != 0 && document.Content[0].Kind == yaml.MappingNode {
			found = append(found, r.mappingEntries(one, document.Content[0])...)
			continue
		}
		line := one.line(0)
		indent := len(line) - len(bytes.TrimLeft(line, " \t"))
		r.fault("block-line", one.span(indent, len(bytes.TrimRight(line, " \t\r"))),
			"this line cannot be read as “name: value”", hintFor(line))
	}
	return found
}

// hintFor guesses from its look what to change in a line.
func hintFor(line []byte) string {
	indent := line[:len(line)-len(bytes.TrimLeft(line, " \t"))]
	key, value, found := bytes.Cut(bytes.TrimSpace(line), []byte(":"))
	value = bytes.TrimSpace(value)
	switch {
	case bytes.IndexByte(indent, '\t') >= 0:
		return "put spaces in place of the tab at its start"
	case !found || len(key) == 0 || len(value) == 0:
		return entryExample
	case len(indent) > 0:
		return "take out the spaces before it"
	case value[0] == '"' || value[0] == '\'':
		return "close the quote, and write nothing behind it"
	case plainKey(key):
		return "put the value between quotes: " + string(key) + ": \"" + string(value) + "\""
	}
	return entryExample
}

func (r *reading) mappingEntries(b *body, root *yaml.Node) []Entry {
	var found []Entry
	for i := 0; i+1 < len(root.Content); i += 2 {
		if e, ok := r.yamlEntry(b, root.Content[i], root.Content[i+1]); ok {
			found = append(found, e)
		}
	}
	return found
}

func (r *reading) yamlEntry(b *body, key, value *yaml.Node) (Entry, bool) {
	for _, n := range []*yaml.Node{key, value} {
		switch {
		case n.Kind == yaml.AliasNode || n.Anchor != "" || n.Style&yaml.TaggedStyle != 0:
			r.fault("entry-form", b.lineSpan(n), "a mark with “&”, “*” or “!” is not read here",
				"put the value between quotes")
			return Entry{}, false
		case n.Kind != yaml.ScalarNode:
			r.fault("entry-form", b.lineSpan(n), "a list or a group cannot stand here",
				"write several values on one line with commas between them, without brackets")
			return Entry{}, false
		}
	}
	e := Entry{Key: key.Value, Value: value.Value, KeySpan: b.scalarSpan(key)}
	if value.Value == "" && value.Style == 0 {
		e.ValueSpan = message.Span{Start: e.KeySpan.End, End: e.KeySpan.End}
	} else {
		e.ValueSpan = b.scalarSpan(value)
	}
	return e, true
}

// checkEntries refuses what no block can use, whichever way it was read.
func (r *reading) checkEntries(found []Entry) []Entry {
	kept := found[:0]
	for _, e := range found {
		if e.Key == "" {
			r.fault("entry-form", e.KeySpan, "a name is missing here", entryExample)
			continue
		}
		if i := slices.IndexFunc(kept, func(k Entry) bool { return k.Key == e.Key }); i >= 0 {
			r.fault("entry-twice", e.KeySpan, "“"+e.Key+"” stands twice in this block",
				"take one of them out; the first is on line "+r.line(kept[i].KeySpan.Start))
			continue
		}
		if strings.TrimSpace(e.Value) == "" {
			r.fault("entry-empty", e.KeySpan, "“"+e.Key+"” has no value",
				"write it after the colon and a space, or take the line out")
		}
		kept = append(kept, e)
	}
	return kept
}
