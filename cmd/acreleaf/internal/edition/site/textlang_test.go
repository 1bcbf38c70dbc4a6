package site

import (
	"strings"
	"testing"
)

// A calculation that somebody wrote in English is used on pages in both languages: its texts are marked where they are
// not in the language of the page, and a title that the page gives is not.
func TestTextsInAnotherLanguageAreMarked(t *testing.T) {
	own := "```calculation sprayer\ntitle: Spray on an acre\nsummary: Turns a flow into a rate.\n" +
		"givens:\n  flow: {label: Nozzle flow, example: 4 gal/ac, range: 1 to 9 gal/ac}\n" +
		"work:\n  - rate = flow * 2\nanswers:\n  rate: {label: Spray rate, unit: gal/ac}\n" +
		"sentence: The rate is {rate}.\nnotes: [Check the nozzles.]\n```\n\n"
	const sheet = "```worksheet rate\ncalculation: sprayer\nflow: 4 gal/ac\n```\n"
	files := twoTongues(map[string]string{"spray": guide("Spray", 1, own+sheet)})
	files["guides/rocio.md"] = spanish("title: El rocío")
	files["guides/rocio.md"].Data = append(files["guides/rocio.md"].Data, sheet...)
	titled := spanish("title: Otro")
	titled.Data = append(titled.Data, strings.Replace(sheet, "\nflow", "\ntitle: Mi bloque\nflow", 1)...)
	files["guides/otro.md"] = titled
	made := mustMake(t, files)
	marked := []string{
		`<span lang="en">Spray on an acre</span>`, `<p lang="en">Turns a flow into a rate.</p>`,
		` lang="en">Nozzle flow`, `<dt lang="en">Spray rate</dt>`, ` lang="en">The rate is`, ` lang="en">Check the nozzles.`,
	}
	for _, want := range marked {
		if text := made["es/guides/rocio/index.html"]; !strings.Contains(text, want) {
			t.Errorf("the Spanish page has no %q:\n%s", want, text)
		}
	}
	if text := made["guides/spray/index.html"]; strings.Count(text, `lang="en"`) != 1 { // of the page
		t.Errorf("the English page marks English:\n%s", text)
	}
	if text := made["es/guides/otro/index.html"]; !strings.Contains(text, "</small> Mi bloque</h2>") {
		t.Errorf("a title in the language of the page is marked:\n%s", text)
	}
}

// A calculation that somebody wrote on a Spanish page is Spanish, also where an English page uses it.
func TestASpanishCalculationIsMarkedOnAnEnglishPage(t *testing.T) {
	own := "```calculation rocio\ntitle: Caldo por acre\nsummary: Pasa de caudal a dosis.\n" +
		"givens:\n  flow: {label: Caudal, example: 4 gal/ac, range: 1 to 9 gal/ac}\n" +
		"work:\n  - rate = flow * 2\nanswers:\n  rate: {label: Dosis, unit: gal/ac}\n```\n\n"
	const sheet = "```worksheet rate\ncalculation: rocio\nflow: 4 gal/ac\n```\n"
	files := twoTongues(map[string]string{"spray": guide("Spray", 1, sheet)})
	files["guides/rocio.md"] = spanish("title: El rocío")
	files["guides/rocio.md"].Data = append(files["guides/rocio.md"].Data, own+sheet...)
	made := mustMake(t, files)
	if text := made["guides/spray/index.html"]; !strings.Contains(text, `<dt lang="es">Dosis</dt>`) {
		t.Errorf("the English page does not mark Spanish:\n%s", text)
	}
	if text := made["es/guides/rocio/index.html"]; !strings.Contains(text, "<dt>Dosis</dt>") {
		t.Errorf("the Spanish page marks its own language:\n%s", text)
	}
}
