package yamltext

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"

	"acreleaf/cmd/acreleaf/internal/message"
)

// What is inside each other is counted however it is written, and what only looks like it is not.
func TestDepth(t *testing.T) {
	for name, text := range map[string]func(n int) string{
		"brackets":         func(n int) string { return "a: " + many("[", n-1) + many("]", n-1) },
		"brackets, lines":  func(n int) string { return "a: " + many("[\n", n-1) + many("]", n-1) },
		"braces":           func(n int) string { return many("{a: ", n) + "1" + many("}", n) },
		"names of values":  func(n int) string { return "a: " + many("&b [", n-1) + many("]", n-1) },
		"dashes":           func(n int) string { return many("- ", n) + "a" },
		"question marks":   func(n int) string { return many("? ", n) + "a" },
		"tables":           func(n int) string { return stairs(n-1, "") + many(" ", n-1) + "a: 1" },
		"tables in a list": func(n int) string { return many("- ", n-1) + "a: 1" },
		"after a text":     func(n int) string { return "a: |\n  b\nc: '[['\nd: " + many("[", n-1) + many("]", n-1) },
		"after a list": func(n int) string {
			return "a:\n- b: >\n    c\n  d: " + many("[", n-3) + many("]", n-3)
		},
	} {
		t.Run(name, func(t *testing.T) {
			if _, _, err := cut(text(depthLimit)).parse(); err != nil {
				t.Errorf("%d are refused: %v", depthLimit, err)
			}
			deep := cut(text(depthLimit + 1))
			_, _, err := deep.parse()
			if !TooDeep(err) || deep.Slip(err).Text != "more than 20 lists and tables are inside each other here" {
				t.Errorf("of %d it is said %v", depthLimit+1, err)
			}
		})
	}
	for _, text := range []string{
		"a: |\n" + stairs(50, "  "), "a: \"" + many("[", 50) + "\"", "a: '" + many("- ", 50) + "'", "a: b" + many("[", 50),
		many("- a: 1\n", 50), many("- [a, {b: 1}]\n", 50), "a: 1 # " + many("[", 50), "# " + many("[", 50) + "\na: '1'",
		"a:\n- b: |\n    " + many("[ ", 50) + "\n  c: 1",
	} {
		if _, _, err := cut(text).parse(); err != nil {
			t.Errorf("%.40q: %v", text, err)
		}
	}
}

// What is deep is found below whatever YAML reads as a scalar: a quote or a bracket in one opens nothing, and closes
// nothing.
func TestDepthBelowScalars(t *testing.T) {
	for _, before := range []string{
		"a: b\n  \"c", "a: b\n  'c", "a: b\n\n\n   \"c", "- a\n  \"b", "- a:\n    b\n    'c", "- - b\n   \"c\n- c: d\n  ",
		"a: | # b\n  \"c", "a: &b |\n  \"c", "a: !b >-\n  \"c", "- |\n \"c", "- a: b\n- >2\n  \"c", "? |\n \"c\n: d",
		"a: |2\n  b\n   \"c", "a: |\n\n  b\n\n  \"c", "a: b # \"c", "a: b#\"c", "a: 'b' # \"c", "a: b\"c", "a: b'c",
		"\"a\": b\n  \"c", "a: \"b\\\"\"", "a: \"b\\\\\"", "a: 'b'''", "a: 'b\n  c'", "a: \"b\n  c\"", "a: [b\n  'c]",
		"a: [b, c\n  \"d]", "a: {b: c\n  'd}", "? a\n  \"b\n: c", "a: \"]]]]\"", "a: b ]]]]", "a: '}'", "a: b\r  \"c",
		"a: b\u2028  \"c", "\ufeffa: b\n  \"c", "a:\n- b\n  \"c", "a:\n- b: |\n    \"c\n  d: e", "%TAG ! !\n---\na: b\n  \"c",
	} {
		before = strings.TrimPrefix(before, "\ufeff") // as Cut does
		below := "\ne: "
		if before[0] == '-' {
			below = "\n- "
		}
		deep := before + below + many("[", depthLimit)
		if _, _, err := cut(deep).parse(); !TooDeep(err) {
			t.Errorf("%q is not too deep: %v", deep, err)
		}
		if _, _, err := cut(before + below + "f").parse(); err != nil {
			t.Errorf("%q: %v", before, err)
		}
	}
}

// deepest gives how many lists and tables are inside each other in what YAML's reader has read, and how many of them
// may be missing from the count: a table of one key in a list needs no braces, [a: b], and that a list is a key is
// known only behind it, [a]: b.
func deepest(n *yaml.Node) (most, missing int) {
	for i, c := range n.Content {
		inside, less := deepest(c)
		isKey := n.Kind == yaml.MappingNode && i%2 == 0
		isBare := n.Kind == yaml.SequenceNode && c.Kind == yaml.MappingNode && len(c.Content) == 2
		if isKey && c.Style&yaml.FlowStyle != 0 || isBare && n.Style&yaml.FlowStyle != 0 {
			less++
		}
		most, missing = max(most, inside), max(missing, less)
	}
	if n.Kind == yaml.MappingNode || n.Kind == yaml.SequenceNode {
		most++
	}
	return most, missing
}

// countDepth gives how many lists and tables are open at once, at the most.
func countDepth(text []byte) int {
	most := 0
	for d := newDepth(text); d.next(); {
		most = max(most, d.count())
	}
	return most
}

// checkCount compares how deep a text is counted with what YAML's reader makes of it, if it can read it.
func checkCount(t *testing.T, text []byte) {
	counted, most, missing := countDepth(text), 0, 0
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	for {
		var document yaml.Node
		if err := decoder.Decode(&document); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return
		}
		inside, less := deepest(&document)
		most, missing = max(most, inside), max(missing, less)
	}
	if counted > most || counted < most-missing {
		t.Errorf("%q: %d lists and tables are counted inside each other, and it has %d", text, counted, most)
	}
}

func many(s string, n int) string { return strings.Repeat(s, n) }

// stairs are lines that are each set in further than the last.
func stairs(n int, before string) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(before + many(" ", i) + "a:\n")
	}
	return b.String()
}

func cut(text string) *Text {
	return Cut(&message.Source{Name: "page.md", Text: []byte(text)}, message.Span{End: len(text)})
}
