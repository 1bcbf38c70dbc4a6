package markdown

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// FuzzPage holds what is true of every page: spans lie in the source and cut out what they say, the HTML is well
// formed, safe and has no id twice, and our parsers change nothing in goldmark's CommonMark.
func FuzzPage(f *testing.F) {
	for _, name := range caseFiles(f) {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(caseInput(f, archive))
	}
	for _, e := range examples(f) {
		f.Add([]byte(e.Markdown))
	}
	f.Add(guide(f, "guide-blocks.md"))
	f.Fuzz(func(t *testing.T, page []byte) {
		before := "---\ntitle: É\n---\n"
		src := &message.Source{Name: "page.md", Text: append([]byte(before), page...)}
		doc, messages := Parse(src, len(before))
		for _, m := range messages {
			slice(t, src, m.Span)
			if m.ID == "" || m.Text == "" || m.Note == "" || m.Source != src {
				t.Errorf("message %+v", m)
			}
		}
		checkSpans(t, doc)
		checkHTML(t, doc, messages)
		if !slices.ContainsFunc(messages, func(m message.Message) bool { return m.ID == "too-many" }) {
			checkSameTree(t, page)
		}
	})
}

func checkSpans(t *testing.T, d *Document) {
	var discard bytes.Buffer
	writeFinds(t, &discard, d)
	for _, f := range d.Figures {
		whole := cutSpan(d, f.Span)
		if whole[0] != '[' || !strings.ContainsAny(whole[len(whole)-1:], ")]") {
			t.Errorf("figure at %q", whole)
		}
		if !strings.HasPrefix(whole[1:], cutSpan(d, f.TextSpan)+"]") {
			t.Errorf("figure %q with the text %q", whole, cutSpan(d, f.TextSpan))
		}
		if got := unescape([]byte(cutSpan(d, f.TargetSpan))); got != f.Target && f.TargetSpan != f.Span {
			t.Errorf("figure %q with the target %q, want %q", whole, got, f.Target)
		}
	}
	for _, l := range d.Links {
		whole := cutSpan(d, l.Span)
		if l.Image != strings.HasPrefix(whole, "![") || !strings.ContainsAny(whole[len(whole)-1:], ")]>") {
			t.Errorf("link at %q", whole)
		}
		got := strings.TrimPrefix(l.Destination, "mailto:")
		written := cutSpan(d, l.DestinationSpan)
		if l.DestinationSpan != l.Span && got != unescape([]byte(written)) && got != written &&
			l.Destination != unescape([]byte(written)) {
			t.Errorf("link %q with the destination %q, want %q", whole, written, l.Destination)
		}
	}
	for _, b := range d.Blocks {
		for _, e := range b.Entries {
			if written := cutSpan(d, e.KeySpan); foldID(e.Key) == e.Key && !strings.Contains(written, e.Key) {
				if !strings.Contains(written, `\`) { // a quoted key may be written in another way
					t.Errorf("entry %q at %q", e.Key, written)
				}
			}
		}
	}
}

func cutSpan(d *Document, s message.Span) string { return string(d.Source.Text[s.Start:s.End]) }

// tags are all the elements and attributes that a page may have.
var tags = map[string]string{
	"a": "aria-label class href id role title", "aside": "aria-label class role", "b": "class", "blockquote": "",
	"br": "", "caption": "", "code": "", "dd": "", "div": "aria-label class role tabindex", "dl": "", "dt": "",
	"em": "", "h1": "id", "h2": "id", "h3": "id", "h4": "id", "h5": "id", "h6": "id", "hr": "",
	"img": "alt height loading src title width", "li": "id", "ol": "start", "p": "aria-hidden class title", "pre": "class",
	"section": "aria-label class role", "small": "", "span": "class", "strong": "", "sup": "id", "table": "",
	"tbody": "", "td": "class", "th": "class scope", "thead": "", "tr": "", "ul": "",
}

var voids = regexp.MustCompile(`<(br|hr|img)([^<>]*)>`)

var controls = regexp.MustCompile(`[\x00-\x08\x0b\x0c\x0e-\x1f\x{fffe}\x{ffff}]`)

func checkHTML(t *testing.T, d *Document, messages message.List) {
	var w bytes.Buffer
	if err := d.HTML(&w, &plainFragments{}, &testWords); err != nil {
		t.Fatal(err)
	}
	page := controls.ReplaceAllString(strings.ToValidUTF8(w.String(), "?"), "?") // XML cannot hold them, HTML can
	closed := voids.ReplaceAllString(page, "<$1$2/>")
	decoder := xml.NewDecoder(strings.NewReader("<main>" + closed + "</main>"))
	ids := map[string]bool{}
	var targets []string
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, page)
		}
		element, ok := token.(xml.StartElement)
		if !ok || element.Name.Local == "main" {
			continue
		}
		allowed, known := tags[element.Name.Local]
		if !known {
			t.Errorf("element %s in\n%s", element.Name.Local, page)
		}
		for _, a := range element.Attr {
			if !slices.Contains(strings.Fields(allowed), a.Name.Local) {
				t.Errorf("attribute %s of %s in\n%s", a.Name.Local, element.Name.Local, page)
			}
			switch a.Name.Local {
			case "id":
				if ids[a.Value] || a.Value == "" || strings.ContainsAny(a.Value, " \t\n") {
					t.Errorf("id %q in\n%s", a.Value, page)
				}
				ids[a.Value] = true
			case "href", "src":
				checkAddress(t, a.Value)
				if class := classOf(element); class == "self" || class == "note" || class == "back" {
					targets = append(targets, a.Value)
				}
			}
		}
	}
	if message.HasFault(messages) { // a footnote's mark may be where it is not printed
		return
	}
	for _, target := range targets {
		if !ids[strings.TrimPrefix(target, "#")] {
			t.Errorf("nothing has the id of %s in\n%s", target, page)
		}
	}
}

func classOf(e xml.StartElement) string {
	for _, a := range e.Attr {
		if a.Name.Local == "class" {
			return a.Value
		}
	}
	return ""
}

// checkAddress parses an address in another way than the package does.
func checkAddress(t *testing.T, address string) {
	address = strings.Map(func(r rune) rune {
		if r <= ' ' {
			return -1
		}
		return r
	}, address)
	scheme, _, _ := strings.Cut(address, ":")
	if u, err := url.Parse(address); err == nil {
		scheme = u.Scheme
	}
	if slices.Contains([]string{"javascript", "vbscript", "data", "file", "blob"}, strings.ToLower(scheme)) {
		t.Errorf("address %q", address)
	}
}

// checkSameTree compares our CommonMark with goldmark's on pages that use nothing of what ours has on top: ids of
// headings, signals, blocks. It is for pages within the limits, which goldmark does not have.
func checkSameTree(t *testing.T, page []byte) {
	for _, own := range append([]string{"{#", "\r"}, signalWords...) {
		if bytes.Contains(page, []byte(own)) || len(page) > 2000 {
			return
		}
	}
	ours := parseWith(newParser(), string(page))
	if len(ours.Blocks) > 0 || len(ours.Passages) > 0 {
		return
	}
	bare := parser.NewParser(
		parser.WithBlockParsers(parser.DefaultBlockParsers()...),
		parser.WithInlineParsers(parser.DefaultInlineParsers()...),
		parser.WithParagraphTransformers(parser.DefaultParagraphTransformers()...),
	).Parse(text.NewReader(page))
	r := specRenderer()
	if diff := cmp.Diff(printed(t, r, bare, string(page)), printed(t, r, ours.root, string(page))); diff != "" {
		t.Errorf("%q (-goldmark +ours):\n%s", page, diff)
	}
}
