package config

import (
	"testing"
	"testing/fstest"
)

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
