package yamltext

import (
	"bytes"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"acreleaf/cmd/acreleaf/internal/message"
)

// written is what a reader can see of a node.
type written struct {
	Kind                 Kind
	Value                string
	Null, Quoted         bool
	Span, Inside, ToLine message.Span
}

// seen lists the keys and values of a table, and the items of its lists.
func seen(root *Node) []written {
	var list []written
	if root == nil {
		return nil
	}
	for _, e := range root.Entries {
		for _, n := range append([]*Node{e.Key, e.Value}, e.Value.Items...) {
			list = append(list, written{n.Kind, n.Value, n.Null, n.Quoted, n.Span(), n.Inside(), n.Line()})
		}
		list = append(list, seen(e.Value)...)
	}
	return list
}

// FuzzParse compares the two ways that a text is read. Whatever the plain way takes, YAML's reader takes too, with the
// same texts at the same places. The text is in lines with other things before them, as in a list of a page. And how
// deep it is, is what YAML's reader finds.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"calculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n",
		"down: water = 1, 6, 12, 24 in\nmark: 25 to 35 lb N/ac\n",
		"price: $0.62/lb\nshare: 70 %\nrate: 3–4 oz N/tree\n",
		"# a comment\n\na: b # and one here\n  # and here\nc: d   \n",
		"a: 'b'\nc: \"d\"\ne: [f]\ng: {h: i}\nj: |\n  k\n  l\nm: >\n n\n",
		"a: b\n  c\nd: e:\nf: g: h\ni:j\nk\n", "a: yes\nb: ~\nc: null\nd: 0x1F\ne: 1_000\nf: 2026-09-14\ng: =\nh: <<\n",
		"---\na: b\n...\n", "a: &b c\nd: *b\ne: !f g\n", "?: a\n? b\n",
		"\ta: b\na:\tb\n", "é: ñ\na: \u00a0\nb: \u2028c\n", "a: 'b\n  c'\nd: 'it''s'\ne: \"\\\"\"\n",
		"a: [b, c.d-e,f ]\ng: [ h]  \n", "a: [null]\n", "a: [b,]\n", "a: [b\nc: d]\n", "a: [] \nb: [c] d\n", "a: [b- , c.]\n",
		"terms:\n  top: [\"nitrate, in the soil\", soil nitrogen]\n  of-it: [ñu , \"\" ]\nb: c\n", "a:\nb: c\n", "a:\n",
		"a:  \n b: c\n  d: e\n", "a:\n  b: c\n # d\n\n  e: f\n", "a:\n  b: c\n d: e\n", "a:\n  b:\n    c: d\n",
		"a: b\n  c: d\n", "a: [\"b\"c, d]\n", "a: [\"b\" \"c\"]\n", "a: [\"b]\n", "a: [b c, \"d\\n\"]\n", "a: [,]\n",
		"a: []\n", "a: [b, ]\n", "a: [yes, no]\n", "a:\n  b: [c: d]\n", "a: [b-, c d\"e]\n", "null: a\n",
		"a: b\r\nc: d\r\n", "a: b\rc: d\n", "\ufeffa: b\n", "<<: a\n", "a: b,\nc: d]\ne: f}\ng: h`\ni: j@\n",
		"a: b\n  \"c\nd: [[e], {f: g}]\n", "- a: | # b\n    'c\n  d:\n  - - e\n", "? [a]\n: >2-\n\n  b\n...\n---\n!c |\n d\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, body []byte) {
		if len(body) > 1000 || !utf8.Valid(body) { // a file that is no UTF-8 is refused before
			return
		}
		page := append([]byte("> "), bytes.ReplaceAll(body, []byte("\n"), []byte("\n> "))...)
		src := &message.Source{Name: "page.md", Text: page}
		text, at := New(src, 0, 0), len("> ")
		for _, line := range bytes.Split(body, []byte("\n")) {
			text.AddLine(line, at, 0)
			at += len(line) + len("\n> ")
		}
		checkCount(t, text.bytes)
		whole, refused, err := text.Parse()
		for _, n := range seen(whole) {
			for _, s := range []message.Span{n.Span, n.Inside, n.ToLine} {
				if s.Start < 0 || s.End < s.Start || s.End > len(page) {
					t.Fatalf("%q: a place is %v", body, s)
				}
			}
		}
		if err != nil {
			text.Slip(err)
		}
		plain, ok := text.plain()
		if !ok {
			return
		}
		root, _, err := text.parse()
		if err != nil || len(refused) > 0 {
			t.Fatalf("%q: %v %v", body, err, refused)
		}
		if diff := cmp.Diff(seen(plain), seen(root)); diff != "" {
			t.Errorf("%q (-plain +yaml):\n%s", body, diff)
		}
		for _, n := range seen(plain) {
			if got := string(page[n.Inside.Start:n.Inside.End]); got != n.Value && n.Kind == Scalar {
				t.Errorf("%q: %q is at %q", body, n.Value, got)
			}
		}
	})
}
