package yamltext

import (
	"strings"
	"testing"

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
