package message

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"
)

// FuzzPrint prints messages with any text in any place, in each form: no control of a terminal comes out, and what is
// for programs can be read by one.
func FuzzPrint(f *testing.F) {
	for _, text := range []string{"", "a\r\nb", "\uFEFFa", "窒素\te\u0301🌱\xff\x80", "\x1b[31m", "{0} 50 %",
		"\u202ea\u2066b"} {
		f.Add(text, text, "content/a b%é.md", 0, 3)
		f.Add("a line\nand one", text, text, 2, 1)
	}
	f.Fuzz(func(t *testing.T, text, said, name string, start, end int) {
		src := &Source{Name: name, Text: []byte(text)}
		list := List{{ID: "an-id", Source: src, Span: Span{start, end}, Text: said, Note: said},
			{Level: Advice, Text: said}, {ID: "x", Source: src, Span: Span{end, start}, Text: text, Note: text}}
		Sort(list)
		var plain bytes.Buffer
		Printer{}.Print(&plain, list)
		if !utf8.Valid(plain.Bytes()) {
			t.Errorf("%q is printed", plain.String())
		}
		for _, r := range plain.String() {
			if r != '\n' && visible(r) != r {
				t.Errorf("%U is printed in\n%q", r, plain.String())
			}
		}
		for form, write := range map[string]func(*bytes.Buffer) error{
			"JSON":  func(w *bytes.Buffer) error { return JSON(w, list, Counts{}) },
			"SARIF": func(w *bytes.Buffer) error { return SARIF(w, list) },
		} {
			var w bytes.Buffer
			if err := write(&w); err != nil || !json.Valid(w.Bytes()) || strings.Contains(w.String(), "\x1b") {
				t.Errorf("%s: %v\n%s", form, err, &w)
			}
		}
	})
}
