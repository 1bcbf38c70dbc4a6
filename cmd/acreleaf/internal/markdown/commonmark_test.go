package markdown

import (
	"bytes"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"

	"acreleaf/cmd/acreleaf/internal/message"
)

// example is one of the 652 examples of the CommonMark specification 0.31.2; see testdata/commonmark/README.md.
type example struct {
	Number                  int
	Section, Markdown, HTML string
}

func examples(tb testing.TB) []example {
	b, err := os.ReadFile("testdata/commonmark/examples.json")
	if err != nil {
		tb.Fatal(err)
	}
	var list []example
	if err := json.Unmarshal(b, &list); err != nil {
		tb.Fatal(err)
	}
	if len(list) != 652 {
		tb.Fatalf("%d examples, want 652", len(list))
	}
	return list
}

// parseWith reads a page with a parser of ours, as Parse does with the page's.
func parseWith(p parser.Parser, page string) *Document {
	r := newReading(&message.Source{Name: "page.md", Text: []byte(page)}, 0)
	r.parse(p)
	return r.doc
}

// specRenderer prints a tree as the specification's own program does, with goldmark's renderer.
func specRenderer(more ...util.PrioritizedValue) renderer.Renderer {
	xhtml := html.NewRenderer(html.WithXHTML(), html.WithUnsafe())
	return renderer.NewRenderer(renderer.WithNodeRenderers(append(more, util.Prioritized(xhtml, 1000))...))
}

func printed(tb testing.TB, r renderer.Renderer, root ast.Node, page string) string {
	var w bytes.Buffer
	if err := r.Render(&w, []byte(page), root); err != nil {
		tb.Fatal(err)
	}
	return w.String()
}

// TestCommonMark reads every example of the specification and wants exactly its HTML: once with the parsers that pages
// are read with less what pages have on top of CommonMark, and once as pages are read. Tables, footnotes and
// definition lists change none of the examples.
func TestCommonMark(t *testing.T) {
	r := specRenderer(
		util.Prioritized(extension.NewTableHTMLRenderer(), 500),
		util.Prioritized(extension.NewFootnoteHTMLRenderer(), 500),
		util.Prioritized(extension.NewDefinitionListHTMLRenderer(), 500),
	)
	for name, p := range map[string]parser.Parser{"CommonMark": newParser(), "page": pageParser()} {
		passed := 0
		for _, e := range examples(t) {
			got := printed(t, r, parseWith(p, e.Markdown).root, e.Markdown)
			if got != e.HTML {
				t.Errorf("%s, example %d, %s:\n%s\n%s", name, e.Number, e.Section, e.Markdown, cmp.Diff(e.HTML, got))
				continue
			}
			passed++
		}
		t.Logf("%s: %d of 652 examples", name, passed)
	}
}

// TestCommonMarkPrinted prints the examples as pages are printed, undoes by plain replacement what pages have more
// (ids, self links, scroll boxes), and wants the HTML of the specification. Left out are examples with raw HTML and
// with links whose scheme is refused: they are shown as text on purpose.
func TestCommonMarkPrinted(t *testing.T) {
	p := newParser()
	undo := strings.NewReplacer(
		`<div class="heading">`, "", "§</a></div>", "", `<div class="scroll" tabindex="0" role="region"`, "",
		"</code></pre>\n</div>", "</code></pre>", `<pre class="code">`, "<pre>",
		"<br>", "<br />", "<hr>", "<hr />", "</span>", "",
	)
	compared, left := 0, map[string]int{}
	for _, e := range examples(t) {
		doc := parseWith(p, e.Markdown)
		if reason := unlikeSpec(doc); reason != "" {
			left[reason]++
			continue
		}
		compared++
		var w bytes.Buffer
		if err := doc.HTML(&w, &plainFragments{}, &testWords); err != nil {
			t.Fatal(err)
		}
		got := undo.Replace(w.String())
		got = cutAll(got, ` id="`, `"`)
		got = cutAll(got, `<a class="self"`, ">")
		got = cutAll(got, ` aria-label="`, `">`)
		got = cutAll(got, `<span class="`, ">")
		want := cutAll(e.HTML, ` class="language-`, `"`)
		want = strings.ReplaceAll(want, `" />`, `">`) // of images
		if got != want {
			t.Errorf("example %d, %s:\n%s\n%s", e.Number, e.Section, e.Markdown, cmp.Diff(want, got))
		}
	}
	t.Logf("%d of 652 examples compared, left out: %v", compared, left)
	if compared < 560 {
		t.Errorf("only %d examples compared", compared)
	}
}

func unlikeSpec(d *Document) (reason string) {
	_ = ast.Walk(d.root, func(n ast.Node, _ bool) (ast.WalkStatus, error) {
		if n.Kind() == ast.KindHTMLBlock || n.Kind() == ast.KindRawHTML {
			reason = "raw HTML"
			return ast.WalkStop, nil
		}
		return ast.WalkContinue, nil
	})
	if slices.ContainsFunc(d.anchors, func(a anchor) bool { return a.link != nil && !a.safe }) {
		reason = "scheme"
	}
	return reason
}

// cutAll takes out every run from start to end, both included.
func cutAll(s, start, end string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(s, start)
		b.WriteString(before)
		if !found {
			return b.String()
		}
		_, s, _ = strings.Cut(rest, end)
	}
}
