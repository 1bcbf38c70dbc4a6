package config

import (
	"cmp"
	"fmt"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/yamltext"
)

// SourceFigure is one figure that a source gives: "136 lb N: removed with a ton of kernels".
type SourceFigure struct {
	Text    string            // the figure as it is written
	For     string            // what it is the figure of
	Others  map[string]string // the same in languages, where the file says it in more than one
	Range   unit.Range        // what the text says; a single number has both ends the same
	Span    message.Span
	ForSpan message.Span
}

const (
	figuresOfSource = "the figures of a source"
	writeOnce       = "write it once, and say after its colon all that it is the figure of, with a semicolon between"
)

const figureExample = "136 lb N: removed with a ton of kernels"

// readFigures reads the figures of a source, in the order of the file.
func readFigures(entry *Table) []SourceFigure {
	if f, ok := entry.find("figures"); ok && f.value.Kind != yamltext.Table && !f.value.Refused {
		entry.Fault("figures", "value-kind", "\"figures\" needs lines of its own",
			"type the lines below it, each indented by two spaces, as in \"  "+figureExample+"\"")
		return nil
	}
	t := entry.Table("figures", figuresOfSource, nil)
	if t == nil {
		return nil
	}
	var figures []SourceFigure
	language := figureLanguage(entry)
	for _, text := range t.Keys() {
		r, err := language.ReadRange(text)
		if err != nil {
			sentence, advice := unit.Advice(err)
			t.FaultAt(t.KeySpan(text), "source-figure-unreadable", "this is not a figure: "+sentence,
				cmp.Or(advice, "write a number and its unit, a colon and what it is the figure of, as in \""+figureExample+"\""))
			continue
		}
		if other := sameFigure(figures, r); other != "" {
			t.FaultAt(t.KeySpan(text), "source-figure-twice", fmt.Sprintf("%q is the same figure as %q", text, other),
				writeOnce)
			continue
		}
		f := SourceFigure{Text: text, Range: r, Span: t.KeySpan(text), ForSpan: t.Span(text)}
		const advice = "type after the colon what it is the figure of, as in \"" + figureExample + "\""
		if t.IsTable(text) {
			f.For, f.Others = t.inLanguages(text, advice)
		} else {
			f.For = t.Need(text, advice)
		}
		figures = append(figures, f)
	}
	return figures
}

// Says is what it is the figure of in a language, "" where the file does not say it in that language by name.
func (f SourceFigure) Says(language string) string { return f.Others[language] }

// figureLanguage is the language in which the figures of a source are written down.
func figureLanguage(entry *Table) *prose.Language {
	code := cmp.Or(entry.Text("language"), defaultLanguage)
	if !IsLanguage(code) {
		entry.Fault("language", "language-code", fmt.Sprintf("%q is not a language code", code),
			"type two small letters, as in \"language: es\"")
	}
	return prose.For(code)
}

// sameFigure gives the text of the figure that says the same, "" when none does.
func sameFigure(figures []SourceFigure, r unit.Range) string {
	for _, f := range figures {
		if f.Range.Low == r.Low && f.Range.High == r.High && f.Range.Unit.Same(r.Unit) {
			return f.Text
		}
	}
	return ""
}
