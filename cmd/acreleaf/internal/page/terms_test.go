package page_test

import (
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

func TestTerms(t *testing.T) {
	for text, want := range map[string]string{
		"":                                       "",
		"terms:\n":                               "",
		"terms: ppm\n":                           "(ppm)",
		"terms: [ppm, \"nitrate, in a well\"]\n": "(ppm|nitrate, in a well)",
		"terms: {top: [ppm, NO3], read-it: ND}\n": "(ppm|NO3) read-it(ND)",
		"terms: {worksheet-soil: [12]}\n":         "worksheet-soil(12)",
	} {
		source := &message.Source{Name: "soil.md",
			Text: []byte("---\ntitle: Soil\nsummary: What is there.\n" + text + "---\n")}
		m, _, said := page.Split(source)
		var got []string
		for _, of := range m.Terms {
			var words []string
			for _, word := range of.Words {
				words = append(words, word.Text)
			}
			got = append(got, of.Part.Text+"("+strings.Join(words, "|")+")")
		}
		if strings.Join(got, " ") != want || len(said) > 0 {
			t.Errorf("%q gives %q and %v, want %q", text, got, said, want)
		}
	}
}
