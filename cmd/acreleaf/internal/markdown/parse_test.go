package markdown

import (
	"bytes"
	"sync"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

// TestParallel reads and prints pages in several goroutines, which share the parser, the highlighter's cache and one
// document. The race detector watches; the bytes must be the same.
func TestParallel(t *testing.T) {
	page := append(guide(t, "guide-blocks.md"), "\n```go\nfunc f() {}\n```\n\n    indented\n\n```yaml\na: 1\n```\n"...)
	src := &message.Source{Name: "page.md", Text: page}
	shared, _ := Parse(src, 0)
	var want bytes.Buffer
	if err := shared.HTML(&want, &plainFragments{}, &testWords); err != nil {
		t.Fatal(err)
	}
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			own, _ := Parse(src, 0)
			for _, doc := range []*Document{shared, own} {
				var w bytes.Buffer
				if err := doc.HTML(&w, &plainFragments{}, &testWords); err != nil {
					t.Error(err)
				}
				if !bytes.Equal(w.Bytes(), want.Bytes()) {
					t.Errorf("another page:\n%s", w.Bytes())
				}
			}
		})
	}
	group.Wait()
}

// TestByteOrderMark wants the mark before the text to be no part of it, and the spans to count it.
func TestByteOrderMark(t *testing.T) {
	src := &message.Source{Name: "page.md", Text: []byte("\uFEFF# Soil\n\n[a](b.md)\n")}
	doc, messages := Parse(src, 0)
	if len(messages) > 0 || len(doc.Headings) != 1 || doc.Headings[0].Text != "Soil" || len(doc.Links) != 1 {
		t.Fatalf("%v, %+v, %+v", messages, doc.Headings, doc.Links)
	}
	if got := cutSpan(doc, doc.Links[0].Span); got != "[a](b.md)" {
		t.Errorf("the link is at %q", got)
	}
}
