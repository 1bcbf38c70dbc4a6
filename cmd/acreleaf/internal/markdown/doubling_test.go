//go:build !race

package markdown

import (
	"strings"
	"testing"

	"github.com/yuin/goldmark/ast"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/cputime"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A shape is what a page may be made of. The most is its limit, in the unit of the limit, and where it has none a size
// in bytes.
type shape struct {
	most int
	text func(n int) string
}

const long = 16_000 // bytes of a page whose shape has no limit

func manyOf(s string, n int) string { return strings.Repeat(s, n) }

func repeated(s string) shape { return shape{long, func(n int) string { return fill(s, n) }} }

// TestDoublingHasEverything wants each construct that a page can have to be in a shape.
var shapes = map[string]shape{
	"words":            repeated("some words in a line\n"),
	"one paragraph":    repeated("a\r\n"),
	"emphasis":         repeated("*a* **b** _c_ *d __e__ f*\n\n"),
	"links":            repeated("[a](b.md \"c\") ![c](d.png) <http://e.org>\n\n"),
	"reference links":  {long, func(n int) string { return "[b]: c\n\n" + fill("[a][b] [b]\n\n", n) }},
	"definitions":      {long, func(n int) string { return count("[a%d]: b%d\n", n/2) + count("[a%d] %d\n\n", n/2) }},
	"brackets":         repeated("[a] [b][c] ](d) ![\n\n"),
	"lists":            repeated("- a\n  - b\n    1. c\n"),
	"one list":         repeated("- a\n"),
	"quotes":           repeated("> a\n> > b\n> c\n\n"),
	"signals":          repeated("> **CAUTION** a\n\n"),
	"tables":           repeated("Caption:\na|b\n-|-\nc|d\n\n"),
	"one table":        {long, func(n int) string { return "a|b|c|d\n-|-|-|-\n" + fill("e|f|g|`h\\|`\n", n) }},
	"headings":         {long, func(n int) string { return count("# a%d\n\nb%d\n===\n\n", n) }},
	"headings alike":   repeated("# a\n"),
	"definition lists": repeated("a\n: b\n\n"),
	"rules":            repeated("***\n\n"),
	"listings":         repeated("```\na\n```\n\n    b\n\n"),
	"containers":       repeated("````example\n*a*\n````\n\n"),
	"escapes":          repeated(`\* &amp; `),
	"backticks":        repeated("`a` ``b`` ` c\n\n"),
	"HTML":             repeated("<b>a</b> <!-- c -->\n\n<div>\n</div>\n\n<!-- d -->\n\n"),
	"open HTML":        repeated("a <b c='d <!--\n"),
	"figures":          repeated("[48 lb/ac](worked:a.b) [2 ft](size:)\n\n"),
	"marks of one":     {long, func(n int) string { return "[^1]: a\n\n" + fill("[^1] b\n\n", n) }},

	"blocks calculation": repeated("```calculation a\ntitle: b\n```\n\n"),
	"blocks drawing":     repeated("```drawing\nof: b\n```\n\n"),
	"blocks exercise":    repeated("```exercise a\nstory: b\n```\n\n"),
	"blocks passage":     repeated("```passage\n- when: a.b > \"2 lb\"\n  say: *c*\n- otherwise: d\n```\n\n"),
	"blocks reckoner":    repeated("```reckoner a\ndown: b\n```\n\n"),
	"blocks reference":   repeated("```reference\ntable: b\n```\n\n"),
	"blocks worksheet":   repeated("```worksheet a\nb: 2 ft\n```\n\n"),

	"emphasis without end":   {emphasisLimit, func(n int) string { return manyOf("*a_b ", n/2) }},
	"emphasis, crossed":      {emphasisLimit, func(n int) string { return manyOf("*a _b* c_ ", n/4) }},
	"emphasis, no beginning": {emphasisLimit, func(n int) string { return manyOf("*a ", n/2) + manyOf("b_ ", n/2) }},
	"brackets without end":   {openLimit, func(n int) string { return manyOf("[", n) }},
	"brackets nested":        {openLimit, func(n int) string { return manyOf("[", n) + manyOf("]", n) }},
	"images nested":          {openLimit, func(n int) string { return manyOf("![", n) + manyOf("](b)", n) }},
	"links in a paragraph":   {bracketLimit, func(n int) string { return manyOf("[a](b) ", n) }},
	"links around emphasis": {bracketLimit, func(n int) string {
		return manyOf("[a](b) ", n/2) + "*c " + manyOf("[a](b) ", n/2)
	}},
	"brackets over brackets": {bracketLimit, func(n int) string {
		links := n * (bracketLimit - openLimit) / bracketLimit // twice as many each time
		return manyOf("[", openLimit/2) + manyOf("[a](b) ", links) + manyOf("]", openLimit/2)
	}},
	"links without end":     wasted("[a]("),
	"links, <":              wasted("[a](<b "),
	"links, title":          wasted("[a](b \"\n"),
	"backticks without end": {wasteLimit / 32, func(n int) string { return growing("`", n) }},
	"quotes nested":         nested(">"),
	"quotes nested, tabs":   nested(">\t"),
	"lists nested":          nested("+ "),
	"numbered lists nested": nested("1. "),
	"footnotes": {footnoteLimit, func(n int) string {
		return strings.Join(strings.SplitAfter(count("[^%d]: a%d\n\n", n*16), "\n\n")[:n], "") + count("b[^%d] %d ", n*8)
	}},
	"table, wide": {tableLimit, func(n int) string {
		return manyOf("|a", 100) + "\n" + manyOf("|-", 100) + "\n" + manyOf("a\n", n/101-1)
	}},
	"block, keys":       inBlock(func(n int) string { return count("a%d: %d\n", n) }),
	"block, keys twice": inBlock(func(n int) string { return fill("a: \"1\"\n", n) }),
	"block, aliases":    inBlock(func(n int) string { return count("a%d: &b%d 1\nc: *b\n", n) }),
	"block, no YAML":    inBlock(func(n int) string { return count("a%d: [%d\n", n) }),
	"block, comments":   inBlock(func(n int) string { return "a: \"1\"\n" + fill("# b\n", n) }),
	"block, one list":   inBlock(func(n int) string { return "a: [" + fill("b, ", n) + "]\n" }),
	"block, too deep":   inBlock(func(n int) string { return "a:\n  " + fill("- ", n) + "\n" }),
	"block, text":       inBlock(func(n int) string { return "a: >\n" + fill("  b: [\n", n) }),
	"listing": {listingLimit, func(n int) string {
		return "```go\n" + fill("func a() { return 1 }\n", n-50) + "```\n"
	}},
}

func nested(mark string) shape {
	return shape{nestingLimit, func(n int) string { return manyOf(mark, n) + "a\n" }}
}

// wasted repeats a link without an end, each of which is looked through to the end of the page.
func wasted(link string) shape {
	n := 1
	for (n+1)*(n+2)*len(link)/2 <= wasteLimit {
		n++
	}
	return shape{n, func(n int) string { return manyOf(link, n) }}
}

func inBlock(body func(n int) string) shape {
	return shape{bodyLimit, func(n int) string { return "```worksheet a\n" + body(n-60) + "```\n" }}
}

// TestDoubling reads and prints pages of each shape, up to its limit.
func TestDoubling(t *testing.T) {
	for name, shape := range shapes {
		t.Run(name, func(t *testing.T) {
			growth := cputime.Doubling(shape.most, func(size int) func() {
				page := shape.text(size)
				for _, m := range parse(page).messages {
					if m.ID == "too-many" || m.ID == "block-too-long" {
						t.Fatalf("the page is not within its limit: %s", m.Text)
					}
				}
				return func() { readAndPrint(t, page) }
			})
			if t.Log(growth); growth.TooFast() {
				t.Error("twice as much takes too much")
			}
		})
	}
}

func parse(page string) (parsed struct {
	*Document
	messages message.List
}) {
	parsed.Document, parsed.messages = Parse(&message.Source{Name: "page.md", Text: []byte(page)}, 0)
	return parsed
}

// TestDoublingHasEverything wants each block of ours, and each kind of node that is printed, to be in a shape.
func TestDoublingHasEverything(t *testing.T) {
	for k := range construct.All() {
		if _, has := shapes["blocks "+k.String()]; !has {
			t.Errorf("no shape has %s", k.One())
		}
	}
	met := map[ast.NodeKind]bool{}
	var walk func(n ast.Node)
	walk = func(n ast.Node) {
		met[n.Kind()] = true
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			walk(c)
		}
	}
	for _, shape := range shapes {
		walk(parse(shape.text(shape.most / 4)).root)
	}
	for kind, print := range printFuncs() {
		if print != nil && !met[ast.NodeKind(kind)] {
			t.Errorf("no shape has a %s", ast.NodeKind(kind))
		}
	}
}
