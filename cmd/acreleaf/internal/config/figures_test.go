package config

import (
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/message"
)

// What a source says can be written once for each language; a reader of another language gets the first.
func TestTextsOfASourceInLanguages(t *testing.T) {
	const head = "almond:\n  title: A\n  kind: handbook\n"
	read := func(text string) (Sources, message.List) {
		sources, _, l := LoadSources(fstest.MapFS{"sources.yaml": {Data: []byte(head + text)}}, "sources.yaml")
		return sources, l
	}
	sources, l := read("  note: {es: Del agua., en: On water.}\n" +
		"  figures:\n    136 lb N: {en: removed, es: que sale}\n    2 lb N: each\n")
	if len(l) > 0 {
		t.Fatal(printed(l))
	}
	r := sources["almond"]
	if r.Note != "On water." || r.Notes["es"] != "Del agua." {
		t.Errorf("the note is %q, %v", r.Note, r.Notes)
	}
	both, one := r.Figures[0], r.Figures[1]
	if both.For != "removed" || both.Says("es") != "que sale" || one.For != "each" || one.Says("es") != "" {
		t.Errorf("the figures are of %+v and %+v", both, one)
	}
	for _, text := range []string{
		"  note: {}\n", "  note: {spanish: Del agua.}\n", "  figures: {2 lb N: {es: }}\n", "  figures: {2 lb N: {}}\n",
	} {
		if _, l := read(text); len(l) != 1 {
			t.Errorf("%d messages, not one, for %s%s", len(l), text, printed(l))
		}
	}
}

func TestFiguresKeepTheirPlacesAndOrder(t *testing.T) {
	const text = "almond:\n  title: A\n  kind: handbook\n  figures:\n    136 lb N: removed with a ton\n" +
		"    \"102 to 174 lb N\": \"the range: of the trials\"\n    5940: times the flow\n    $420/ton: asked\n"
	sources, src, l := LoadSources(fstest.MapFS{"sources.yaml": {Data: []byte(text)}}, "sources.yaml")
	if len(l) > 0 {
		t.Fatal(printed(l))
	}
	want := []struct {
		text, whatFor, written, writtenFor, read string
	}{
		{"136 lb N", "removed with a ton", "136 lb N", "removed with a ton", "136 lb N"},
		{"102 to 174 lb N", "the range: of the trials", `"102 to 174 lb N"`, `"the range: of the trials"`, "102 to 174 lb N"},
		{"5940", "times the flow", "5940", "times the flow", "5,940"},
		{"$420/ton", "asked", "$420/ton", "asked", "$420/ton"},
	}
	figures := sources["almond"].Figures
	if len(figures) != len(want) {
		t.Fatalf("%d figures were read: %v", len(figures), figures)
	}
	for i, w := range want {
		f := figures[i]
		written, writtenFor := string(src.Text[f.Span.Start:f.Span.End]), string(src.Text[f.ForSpan.Start:f.ForSpan.End])
		if f.Text != w.text || f.For != w.whatFor || f.Range.String() != w.read ||
			written != w.written || writtenFor != w.writtenFor {
			t.Errorf("figure %d: %q, %q, %q at %q and %q", i, f.Text, f.For, f.Range, written, writtenFor)
		}
	}
}
