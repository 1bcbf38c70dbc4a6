package yamltext

import (
	"bytes"
	"errors"
	"io"

	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Kind is what sort of value a node is.
type Kind int

// The kinds of nodes.
const (
	Scalar Kind = iota
	Table
	List
)

// Node is a value or a key with its place.
type Node struct {
	Kind    Kind
	Value   string // of a scalar, without quotes and signs of YAML
	Null    bool   // nothing is written, or a word that YAML takes for nothing
	Refused bool   // it has its message already
	Quoted  bool
	Comment string // what comes after it on its line, from the # on
	Entries []Entry
	Items   []*Node // of a list

	text         *Text
	at           int // offset in the text; what YAML's reader gave has a line and a column in its place
	line, column int
}

// start is the offset of a node in the text. It is counted when it is asked for: most nodes are right.
func (n *Node) start() int {
	if n.line == 0 {
		return n.at
	}
	return n.text.offset(n.line, n.column)
}

// Entry is a key of a table with its value.
type Entry struct{ Key, Value *Node }

// Empty says whether a node is nothing, or a text without a character.
func (n *Node) Empty() bool { return n.Kind == Scalar && (n.Null || n.Value == "") }

// Parse reads the text. The root is nil when there is nothing but comments. An error says that the text is no YAML, and
// Slip has the message for it. The list has what was refused in a text that is YAML.
func (t *Text) Parse() (root *Node, refused message.List, err error) {
	if root, ok := t.plain(); ok {
		return root, nil, nil
	}
	return t.parse()
}

// parse reads the text with YAML's reader.
func (t *Text) parse() (root *Node, refused message.List, err error) {
	if err := t.checkDepth(); err != nil {
		return nil, nil, err
	}
	decoder := yaml.NewDecoder(bytes.NewReader(t.bytes))
	var document, next yaml.Node
	if err := decoder.Decode(&document); errors.Is(err, io.EOF) {
		return nil, nil, nil
	} else if err != nil {
		return nil, nil, err
	}
	if err := decoder.Decode(&next); err == nil {
		second := t.restSpan(t.offset(next.Line, next.Column))
		refused = append(refused, t.fault(second, "a second table begins here", `delete the line "---"`))
	} else if !errors.Is(err, io.EOF) {
		return nil, nil, err
	}
	root = t.node(document.Content[0], &refused)
	if root.Kind == Scalar && root.Null {
		return nil, refused, nil
	}
	return root, refused, nil
}

// node makes a node of what YAML read. YAML's ways to write a value once and use it twice are refused: they are no help
// in texts this small, and values hidden behind them have no place of their own.
func (t *Text) node(read *yaml.Node, refused *message.List) *Node {
	n := &Node{text: t, line: read.Line, column: read.Column, Value: read.Value}
	if read.Kind == yaml.AliasNode || read.Anchor != "" || read.Style&yaml.TaggedStyle != 0 {
		n.Refused, n.Value = true, ""
		span := n.Line()
		span.End = min(span.End, span.Start+1)
		*refused = append(*refused, t.fault(span, unfitSign, "put the text in quotes, or write the value itself"))
		return n
	}
	switch read.Kind {
	case yaml.MappingNode:
		n.Kind = Table
		for i := 0; i+1 < len(read.Content); i += 2 {
			n.Entries = append(n.Entries, Entry{t.node(read.Content[i], refused), t.node(read.Content[i+1], refused)})
		}
	case yaml.SequenceNode:
		n.Kind = List
		for _, item := range read.Content {
			n.Items = append(n.Items, t.node(item, refused))
		}
	default:
		n.Null = read.Tag == "!!null"
		n.Comment = read.LineComment
		n.Quoted = read.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0
	}
	return n
}

// fault is a message about the text as YAML.
func (t *Text) fault(span message.Span, text, note string) message.Message {
	return message.Message{ID: "yaml", Source: t.src, Span: span, Text: text, Note: note}
}

// Span is the place of a node as it is written: all of a scalar that is in quotes or on one line, else the rest of its
// first line.
func (n *Node) Span() message.Span {
	at := n.start()
	rest := n.text.bytes[at:]
	switch {
	case n.Kind != Scalar:
	case n.Quoted:
		return n.text.span(at, at+quotedSize(rest))
	case n.Value != "" && bytes.HasPrefix(rest, []byte(n.Value)):
		return n.text.span(at, at+len(n.Value))
	}
	return n.text.restSpan(at)
}

// Inside is the place of a node without the quotes around it.
func (n *Node) Inside() message.Span {
	if !n.Quoted {
		return n.Span()
	}
	at := n.start()
	return n.text.span(at+1, at+max(1, quotedSize(n.text.bytes[at:])-1))
}

// Line is the place of a node and of what follows on its line.
func (n *Node) Line() message.Span { return n.text.restSpan(n.start()) }

// quotedSize is the length of the text in quotes that a text begins with.
func quotedSize(text []byte) int {
	quote := text[0]
	for i := 1; i < len(text); i++ {
		switch {
		case quote == '"' && text[i] == '\\':
			i++
		case text[i] == quote && quote == '\'' && i+1 < len(text) && text[i+1] == quote:
			i++
		case text[i] == quote:
			return i + 1
		}
	}
	return len(text)
}

// Lines is the place of the lines of an entry of a table: from that of its key to the last of its value. A comment or
// an empty line after them is no part of it.
func (root *Node) Lines(i int) message.Span {
	t := root.text
	start, end := t.lineOf(root.Entries[i].Key.start()), len(t.bytes)
	if i+1 < len(root.Entries) {
		end = t.lineOf(root.Entries[i+1].Key.start())
	}
	for last := t.lineOf(end - 1); last > start; last = t.lineOf(end - 1) {
		if line := bytes.TrimSpace(t.bytes[last:end]); len(line) > 0 && t.bytes[last] != '#' {
			break
		}
		end = last
	}
	return t.span(start, end)
}

// lineOf is where the line begins that an offset is on.
func (t *Text) lineOf(at int) int { return bytes.LastIndexByte(t.bytes[:at], '\n') + 1 }
