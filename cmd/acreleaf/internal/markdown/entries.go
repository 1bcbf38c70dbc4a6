package markdown

import (
	"strconv"
	"strings"

	"github.com/yuin/goldmark/text"
	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/message"
)

// entryExample is what to type, for the messages about a block's body.
const entryExample = "write a name, a colon, a space and a value on one line, like “depth: 12 in”"

// entries reads the body of a block. The body is YAML; nearly every line of it is a plain “key: value”, which is read
// without YAML's reader because that takes longer than goldmark does for the rest of the page.
func (r *reading) entries(lines *text.Segments, block message.Span) []Entry {
	b := newBody(r, lines)
	if found, ok := b.plainEntries(); ok {
		return r.checkEntries(found)
	}
	return r.checkEntries(r.yamlEntries(b, block))
}

// yamlEntries reads a body with YAML's reader. When the whole cannot be read it gives the lines that can.
func (r *reading) yamlEntries(b *body, block message.Span) []Entry {
	if at, ok := b.marker(); ok {
		r.fault("block-line", at, "this line does not belong in a block", "take it out")
		return b.readableEntries()
	}
	var document yaml.Node
	if err := yaml.Unmarshal(b.text, &document); err != nil {
		r.unreadable(b, block)
		return b.readableEntries()
	}
	if document.Kind == 0 {
		return nil
	}
	root := document.Content[0]
	if root.Kind != yaml.MappingNode {
		r.fault("block-line", b.lineSpan(root), "this is no line of the kind “name: value”", entryExample)
		return nil
	}
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
			r.fault("entry-form", b.lineSpan(n), "marks with “&”, “*” or “!” are not read here",
				"put the value between quotes")
			return Entry{}, false
		case n.Kind != yaml.ScalarNode:
			r.fault("entry-form", b.lineSpan(n), "a list or a group cannot stand here",
				entryExample+"; several values stand on one line with commas between them")
			return Entry{}, false
		}
	}
	e := Entry{Key: key.Value, Value: value.Value, KeySpan: b.scalarSpan(key)}
	if value.Value == "" && value.Style == 0 {
		end := b.colon(e.KeySpan)
		e.ValueSpan = message.Span{Start: end, End: end}
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
			r.fault("entry-form", e.KeySpan, "a name is missing before this colon", entryExample)
			continue
		}
		if first := entryOf(kept, e.Key); first != nil {
			line, _ := r.source.Position(first.KeySpan.Start)
			r.fault("entry-twice", e.KeySpan, "“"+e.Key+"” stands twice in this block",
				"take one of them out; the first is on line "+strconv.Itoa(line))
			continue
		}
		if strings.TrimSpace(e.Value) == "" {
			r.fault("entry-empty", e.KeySpan, "“"+e.Key+"” has no value", "write it after the colon, or take the line out")
		}
		kept = append(kept, e)
	}
	return kept
}

func entryOf(list []Entry, key string) *Entry {
	for i := range list {
		if list[i].Key == key {
			return &list[i]
		}
	}
	return nil
}
