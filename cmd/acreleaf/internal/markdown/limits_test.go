package markdown

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"acreleaf/cmd/acreleaf/internal/cputime"
	"acreleaf/cmd/acreleaf/internal/message"
)

// hostileLimit is how many times as long a hostile page may take as a plain one of hostileSize bytes. What grows with
// the square of the length takes thousands of times as long.
const hostileLimit = 100

// hostilePages are texts that once took, or could take, time that grows with the square of their length. Most are one
// piece of text without an end.
func hostilePages() map[string]string {
	return map[string]string{
		"emphasis, mixed":      fill("*a_b ", hostileSize),
		"emphasis, pairs":      fill("*a _b* c_ ", hostileSize),
		"emphasis, runs":       fill("a**b _c", hostileSize),
		"emphasis, one run":    fill("*", hostileSize),
		"brackets open":        fill("[", hostileSize),
		"brackets nested":      fill("[", hostileSize/2) + fill("]", hostileSize/2),
		"images open":          fill("![", hostileSize),
		"images nested":        fill("![", hostileSize/3) + fill("](b)", hostileSize/3*2),
		"links without end":    fill("[a](", hostileSize),
		"links, open <":        fill("[a](<b", hostileSize),
		"links, open title":    fill(`[a](b "`, hostileSize),
		"links":                fill("[a](b) ", hostileSize),
		"definitions of links": count("[a%d]: b%d\n", hostileSize/2) + count("[a%d] %d ", hostileSize/2),
		"backticks":            growing("`", hostileSize),
		"HTML, open tags":      fill("<a ", hostileSize),
		"HTML, comments":       fill("<!--", hostileSize),
		"HTML, attributes":     fill("<a b='", hostileSize),
		"quotations nested":    fill(">", hostileSize),
		"quotations with tabs": fill(">\t", hostileSize),
		"quotations, lazy":     fill("> > > a\nb\n", hostileSize),
		"lists nested":         fill("+ ", hostileSize),
		"ordered lists nested": fill("1. ", hostileSize),
		"table, wide": fill("|a", hostileSize/4) + "\n" + fill("|-", hostileSize/4) + "\n" +
			fill("a\n", hostileSize/2),
		"table, escaped pipes": "a|b\n-|-\n" + fill("`a\\|b`|c\n", hostileSize),
		"table, one cell":      "a|b\n-|-\n" + fill("`\\|", hostileSize),
		"footnotes":            count("[^%d]: a%d\n\n", hostileSize/2) + count("[^%d] %d ", hostileSize/2),
		"footnotes, short":     count("[^%d]:%d\n", hostileSize),
		"footnotes nested":     fill("[^a]: ", hostileSize),
		"footnote, many marks": "[^1]: a\n\n" + fill("[^1] ", hostileSize),
		"marks of no footnote": "[^a]: a\n\n" + fill("[^1] ", hostileSize),
		"headings, one id":     fill("# a {#a}\n", hostileSize),
		"headings with bars":   fill("a\n=\n", hostileSize),
		"worksheets":           fill("```worksheet a\na: 1\n```\n", hostileSize),
		"worksheet, long":      "```worksheet a\n" + count("a%d: %d\n", hostileSize) + "```\n",
		"worksheet, nested":    "```worksheet a\na: " + fill("[", bodyLimit-100) + "\n```\n",
		"worksheet, unlike":    "```worksheet a\n" + fill("? ", bodyLimit-100) + "\n```\n",
		"worksheet, bad lines": "```worksheet a\n" + count("a%d: [%d\n", bodyLimit-100) + "```\n",
		"worksheet, twice":     "```worksheet a\n" + fill("a: \"1\"\n", bodyLimit-100) + "```\n",
		"listings":             count("```go\na%d := %d\n```\n", hostileSize),
		"listings, unknown":    fill("```x\n```\n", hostileSize),
		"listing":              "```go\n" + fill("func a() { return \"\" }\n", hostileSize) + "```\n",
		"listing, one line":    "```yaml\n" + fill("-", hostileSize) + "\n```\n",
		"signals":              fill("> **CAUTION** a\n\n", hostileSize),
		"references":           fill("&amp", hostileSize),
		"addresses":            fill("<http://a> ", hostileSize),
		"paragraph":            fill("a\r\n", hostileSize),
	}
}

func fill(s string, size int) string { return strings.Repeat(s, size/len(s)+1) }

// count repeats a format with two places for a number that grows.
func count(format string, size int) string {
	var b strings.Builder
	for i := 1; b.Len() < size; i++ {
		fmt.Fprintf(&b, format, i, i)
	}
	return b.String()
}

// growing gives runs that are each one longer than the last.
func growing(s string, size int) string {
	var b strings.Builder
	for i := 1; b.Len() < size; i++ {
		b.WriteString(strings.Repeat(s, i) + " ")
	}
	return b.String()
}

// readAndPrint gives the processor time that a page takes.
func readAndPrint(t *testing.T, page string) time.Duration {
	start := cputime.Used()
	doc, _ := Parse(&message.Source{Name: "page.md", Text: []byte(page)}, 0)
	var w bytes.Buffer
	if err := doc.HTML(&w, &plainFragments{}, &testWords); err != nil {
		t.Fatal(err)
	}
	return cputime.Used() - start
}

// plainTime gives how long a page of the same size takes that has nothing but words. It is measured beside each hostile
// page, so that both meet the same machine.
func plainTime(t *testing.T) time.Duration {
	return readAndPrint(t, fill("some words in a line\n", hostileSize))
}

// TestTimeIsBounded reads and prints hostile pages. Each gets three tries, since caches are shared with other programs.
func TestTimeIsBounded(t *testing.T) {
	for name, page := range hostilePages() {
		t.Run(name, func(t *testing.T) {
			var spent, plain time.Duration
			for range 3 {
				plain = plainTime(t)
				if spent = readAndPrint(t, page); spent < hostileLimit*plain {
					return
				}
			}
			t.Errorf("%d bytes took %v, more than %d times the %v of a plain page", len(page), spent, hostileLimit, plain)
		})
	}
}

// TestLimitsAreNamed wants one message, with the line, for each limit that a page passes.
func TestLimitsAreNamed(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"emphasis, mixed", "this piece of text has more than 200 runs of * and _"},
		{"links", "this piece of text has more than 500 brackets"},
		{"brackets nested", "more than 40 brackets are inside each other here"},
		{"links without end", "too many links and texts in backticks of this page have no end"},
		{"backticks", "too many links and texts in backticks of this page have no end"},
		{"quotations nested", "more than 40 lists and quotations are inside each other here"},
		{"lists nested", "more than 40 lists and quotations are inside each other here"},
		{"footnotes nested", "more than 40 lists and quotations are inside each other here"},
		{"footnotes, short", "this page has more than 300 footnotes"},
		{"table, wide", "this table would have more than 100000 cells"},
		{"worksheet, long", "this worksheet is longer than 20000 bytes"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := &message.Source{Name: "page.md", Text: []byte("\n\n" + hostilePages()[c.name])}
			_, messages := Parse(src, 0)
			found := 0
			for _, m := range messages {
				if m.Text == c.want && m.Level == message.Fault && src.Line(m.Span.Start) >= 3 {
					found++
				}
			}
			if found != 1 {
				t.Errorf("%d messages %q among %d", found, c.want, len(messages))
			}
		})
	}
}

// TestLimitsLeaveTextAlone wants the text past a limit to be in the page.
func TestLimitsLeaveTextAlone(t *testing.T) {
	for _, page := range []string{
		fill("*a_b ", 60_000) + "END", fill("[", 60_000) + "END", fill("> ", 1000) + "END", fill("1. ", 1000) + "END",
		count("[^%d]:%d\n\n", 40_000) + "[^end]: no definition of a link END",
	} {
		doc, _ := Parse(&message.Source{Text: []byte(page)}, 0)
		var w bytes.Buffer
		if err := doc.HTML(&w, &plainFragments{}, &testWords); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(w.String(), "END") {
			t.Errorf("the end of %.20q is not in the page", page)
		}
	}
}
