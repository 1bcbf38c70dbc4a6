package markdown

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// FuzzEntries compares the two ways that the body of a block is read. Whatever the plain way takes, YAML's reader takes
// too, with the same texts at the same places.
func FuzzEntries(f *testing.F) {
	for _, seed := range []string{
		"calculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n",
		"down: water = 1, 6, 12, 24 in\nmark: 25 to 35 lb N/ac\n",
		"price: $0.62/lb\nshare: 70 %\nrate: 3–4 oz N/tree\n",
		"# a comment\n\na: b # and one here\n  # and here\nc: d   \n",
		"a: 'b'\nc: \"d\"\ne: [f]\ng: {h: i}\nj: |\n  k\n  l\nm: >\n n\n",
		"a: b\n  c\nd: e:\nf: g: h\ni:j\nk\n", "a: yes\nb: ~\nc: null\nd: 0x1F\ne: 1_000\nf: 2026-09-14\ng: =\nh: <<\n",
		"---\na: b\n...\n", "a: &b c\nd: *b\ne: !f g\n", "?: a\n? b\n",
		"\ta: b\na:\tb\n", "é: ñ\na: \u00a0\nb: \u2028c\n",
		"a: b\r\nc: d\r\n", "a: b\rc: d\n", "\ufeffa: b\n", "<<: a\n", "a: b,\nc: d]\ne: f}\ng: h`\ni: j@\n",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, body string) {
		if strings.Contains(body, "`") || strings.Contains(body, "~~~") { // it would end the block
			return
		}
		page := "> 1. ```worksheet a\n>    " + strings.ReplaceAll(body, "\n", "\n>    ") + "\n>    ```\n"
		src := &message.Source{Name: "page.md", Text: []byte(page)}
		doc, messages := Parse(src, 0)
		for _, m := range messages {
			slice(t, src, m.Span)
		}
		if len(doc.Blocks) == 0 || len(body) > 1000 {
			return
		}
		comparePlain(t, src, doc)
	})
}

func comparePlain(t *testing.T, src *message.Source, doc *Document) {
	r := newReading(src, 0)
	r.doc = doc
	b := newBody(r, blockLines(t, doc))
	plain, ok := b.plainEntries()
	if !ok {
		return
	}
	read := r.yamlEntries(b)
	if len(plain) == 0 && len(read) == 0 {
		return
	}
	if diff := cmp.Diff(plain, read); diff != "" || len(r.messages) > 0 {
		t.Errorf("%q (-plain +yaml), %v:\n%s", b.text, r.messages, diff)
	}
	for _, e := range plain {
		if cutSpan(doc, e.KeySpan) != e.Key || cutSpan(doc, e.ValueSpan) != e.Value {
			t.Errorf("%+v is at %q, %q", e, cutSpan(doc, e.KeySpan), cutSpan(doc, e.ValueSpan))
		}
	}
}

// blockLines gives the lines of the body of the only block in a page's only list.
func blockLines(t *testing.T, doc *Document) *text.Segments {
	for n := doc.root.FirstChild(); n != nil; n = n.FirstChild() {
		if b, ok := n.(*blockNode); ok {
			return b.Lines()
		}
	}
	t.Fatal("no block")
	return nil
}
