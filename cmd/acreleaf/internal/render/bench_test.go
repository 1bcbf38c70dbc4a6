package render_test

import (
	"bytes"
	"html/template"
	"testing"

	"acreleaf/cmd/acreleaf/internal/render"
)

// BenchmarkGuide makes the whole page of a guide with one worksheet, worksheet included.
func BenchmarkGuide(b *testing.B) {
	r := renderer(b, site())
	view, sheet := guide(""), soil()
	var body, page bytes.Buffer
	b.ReportAllocs()
	for b.Loop() {
		body.Reset()
		page.Reset()
		r.Worksheet(&body, sheet)
		view.Body = template.HTML(body.String())
		r.Guide(&page, view)
	}
}

// BenchmarkReckoner makes a table of 15 cells.
func BenchmarkReckoner(b *testing.B) {
	r := renderer(b, site())
	table := reckoner()
	var out bytes.Buffer
	b.ReportAllocs()
	for b.Loop() {
		out.Reset()
		r.Reckoner(&out, table)
	}
}

// BenchmarkNew reads the words and the frame.
func BenchmarkNew(b *testing.B) {
	for b.Loop() {
		renderer(b, render.Site{Language: "en"})
	}
}
