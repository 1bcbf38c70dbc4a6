package site

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
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

// everyText is a calculation with all of the texts that an author can write, each with a word of its own.
const everyText = "```calculation boom\ntitle: Zza boom\nsummary: Zzb it works.\ngivens:\n" +
	"  flow: {label: Zzc flow, hint: Zzd jar, example: 4 gal/ac, range: 1 to 90 gal/ac}\n" +
	"  passes: {label: Zzm passes, example: 1, range: 1 to 3}\n" +
	"constants:\n  more: {label: Zze more, value: 2, source: common-practice, note: Zzf note}\n" +
	"work:\n  - between = flow * more\n  - rate = between * passes\n" +
	"steps:\n  between: {label: Zzg between, unit: gal/ac}\n" +
	"answers:\n  rate: {label: Zzh rate, unit: gal/ac, also: L/ha}\nsentence: Zzi is {rate}.\n" +
	"cases:\n  little: {when: 'rate < \"2 gal/ac\"', say: Zzj is little.}\nnotes: [\"Zzk nozzles at {rate}.\"]\n" +
	"checks:\n  much: {when: 'rate > \"9 gal/ac\"', say: Zzl is much., signal: notice}\n```\n\n"

const usesEveryText = "```worksheet rate\ncalculation: boom\nflow: 4 gal/ac\npasses: 2\n```\n\n" +
	"```worksheet next\ncalculation: boom\nflow: from rate.rate\npasses: from rate.passes\n```\n\n" +
	"[16 gal/ac](worked:rate.rate)\n\n" +
	"```passage\n- when: rate.rate > \"9 gal/ac\"\n" +
	"  say: Son [16 gal/ac](worked:rate.rate).\n- otherwise: Poco.\n```\n\n" +
	"```reckoner\ncalculation: boom\ndown: flow = 6, 12 gal/ac\nacross: passes = 1, 2\nshow: rate\n```\n\n" +
	exercisesEveryText

const exercisesEveryText = "```exercise flow\ncalculation: boom\nflow: 4 to 80 gal/ac, every 1\npasses: 2\n" +
	"story: Salen {flow}, {passes} veces.\nask: rate\n```\n\n"

var markup = regexp.MustCompile(`(?s)<script.*?</script>|<head>.*?</head>|<(/?)([a-zA-Z0-9]+)([^>]*)>|[^<]+`)
var ownLanguage = regexp.MustCompile(` lang="([^"]*)"`)

// languages gives the language in which each word of the calculation is marked, wherever the body of a page has it. An
// attribute that names a control has words of the page around it, and cannot be marked.
func languages(page string) map[string][]string {
	found := map[string][]string{}
	type open struct{ tag, language string }
	stack := []open{{}}
	empty := []string{"meta", "link", "input", "br", "img", "hr", "col", "wbr", "path"}
	note := func(text, language string) {
		for _, word := range regexp.MustCompile(`Zz[a-z]`).FindAllString(text, -1) {
			found[word] = append(found[word], language)
		}
	}
	for _, m := range markup.FindAllStringSubmatch(page, -1) {
		now := stack[len(stack)-1]
		switch {
		case m[2] == "":
			if !strings.HasPrefix(m[0], "<") {
				note(m[0], now.language)
			}
		case m[1] == "/":
			for len(stack) > 1 && stack[len(stack)-1].tag != m[2] {
				stack = stack[:len(stack)-1] // its end was left out
			}
			stack = stack[:len(stack)-1]
		default:
			language := now.language
			if own := ownLanguage.FindStringSubmatch(m[3]); own != nil {
				language = own[1]
			}
			if !slices.Contains(empty, m[2]) && !strings.HasSuffix(m[3], "/") {
				stack = append(stack, open{m[2], language})
			}
		}
	}
	return found
}

// Every text of an English calculation is marked on every page of a Spanish site that shows it, and none on an English
// page.
func TestEveryTextOfACalculationIsMarked(t *testing.T) {
	files := twoTongues(map[string]string{"boom": guide("Boom", 1, everyText+usesEveryText)})
	page := func(name, more, body string) {
		one := spanish("title: Página\n" + more)
		files[name] = &fstest.MapFile{Data: append(one.Data, body...)}
	}
	page("guides/rocio.md", "order: 2\nglance: [rate.rate]\nseason: antes", usesEveryText)
	page("workshops/taller.md", "order: 1", exercisesEveryText)
	page("courses/uno/a.md", "order: 1", usesEveryText)
	page("manual/rocio.md", "order: 1", usesEveryText)
	page("inicio.md", "translates: home.md", usesEveryText)
	made := mustMake(t, files)
	seen := map[string]bool{}
	for name, text := range made {
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		for word, in := range languages(text) {
			for _, language := range in {
				if language != "en" {
					t.Errorf("%s has %s in %q", name, word, language)
				}
			}
			if strings.HasPrefix(name, "es/") {
				seen[word] = true
			}
		}
	}
	if len(seen) < len("abcdefghijklm") {
		t.Errorf("the Spanish pages have the words %v alone", seen)
	}
}
