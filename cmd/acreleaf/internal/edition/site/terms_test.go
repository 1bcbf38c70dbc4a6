package site

import (
	"fmt"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

var (
	termLink = regexp.MustCompile(`<a href="([^"#]*)(#[^"]*)?">`)
	indexed  = regexp.MustCompile(`(?s)<div class="terms".*</main>`)
)

// indexOf is the index of words of a pressed site, without what is around it.
func indexOf(t *testing.T, files map[string]string, name string) string {
	t.Helper()
	found := indexed.FindString(files[name])
	if found == "" {
		t.Fatalf("there is no index %s", name)
	}
	return found
}

// Each page for growers has an entry in the index of its language, and each way of it leads to a part that is there.
func TestEveryPageIsInItsIndex(t *testing.T) {
	files := mustMake(t, os.DirFS("../../../../../content"))
	for index, top := range map[string]string{"terms/index.html": "", "es/terminos/index.html": "es/"} {
		text := indexOf(t, files, index)
		leads := map[string]bool{}
		for _, m := range termLink.FindAllStringSubmatch(text, -1) {
			name := path.Join(path.Dir(index), m[1], "index.html")
			if m[1] == "" {
				name = index
			}
			page, there := files[name]
			if !there {
				t.Errorf("%s leads to %s, which is not there", index, m[1])
			}
			if part := strings.TrimPrefix(m[2], "#"); part != "" && !strings.Contains(page, fmt.Sprintf("id=%q", part)) {
				t.Errorf("%s leads to %s%s, and no such part is there", index, m[1], m[2])
			}
			leads[name] = true
		}
		count := 0
		for name := range files {
			inside, ok := strings.CutPrefix(name, top)
			kind, _, _ := strings.Cut(inside, "/")
			listed := strings.Count(inside, "/") < 2 || strings.HasSuffix(name, "/leader/index.html")
			if !ok || listed || kind != "guides" && kind != "workshops" && kind != "courses" {
				continue
			}
			count++
			if !leads[name] {
				t.Errorf("%s does not lead to %s", index, name)
			}
		}
		if count < 15 {
			t.Errorf("only %d pages were looked for in %s", count, index)
		}
	}
	if en, es := strings.Count(indexOf(t, files, "terms/index.html"), "<li"),
		strings.Count(indexOf(t, files, "es/terminos/index.html"), "<li"); en*10 < es*9 || es*10 < en*9 {
		t.Errorf("the index in English has %d lines, that in Spanish %d", en, es)
	}
}

// What an index has of a page that nobody wrote terms for; how it shows a word by its own name, more than one place,
// what is more narrow, and what leads on.
func TestIndexOfASmallSite(t *testing.T) {
	soil := "---\ntitle: Soil\nsummary: What is there.\n" +
		"terms: {top: [dirt], read-it: [ppm, \"nitrate, on a report\"]}\n---\n\n" +
		"## Read it\n\n```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n"
	files := fstest.MapFS{}
	for name, text := range map[string]string{
		"site.yaml":       "office: A\nsee: {en: {earth: [dirt, ppm], dirt: ppm}}\n",
		"home.md":         "---\ntitle: A\nsummary: B.\n---\n",
		"guides/soil.md":  soil,
		"guides/water.md": "---\ntitle: Water\nsummary: C.\nterms: [PPM]\n---\n\nRead.\n",
		"manual/start.md": "---\ntitle: Start\nsummary: D.\nterms: [folder]\n---\n\nRead.\n",
	} {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	text := indexOf(t, mustMake(t, files), "terms/index.html")
	for _, want := range []string{
		`<li id="term_2"><b>dirt</b>` + "\n<ul>\n" + `<li><a href="../guides/soil/">Soil</a></li>` + "\n" +
			`</ul> <i>see also</i> <a href="#term_1">ppm</a></li>`,
		`<li><b>earth</b> <i>see</i> <a href="#term_2">dirt</a>, <a href="#term_1">ppm</a></li>`,
		`<li id="term_1"><b>ppm</b>` + "\n<ul>\n" + `<li><a href="../guides/soil/#read-it">Soil: Read it</a></li>` + "\n" +
			`<li><a href="../guides/water/">Water</a></li>` + "\n</ul></li>",
		`<li><b>nitrate</b>` + "\n<ul>\n" + `<li><b>on a report</b>` + "\n<ul>\n" +
			`<li><a href="../guides/soil/#read-it">Soil: Read it</a></li>`,
		`<b><a href="../guides/water/">Water</a></b></li>`,
		`<b>depth of the sample</b>` + "\n<ul>\n" + `<li><a href="../guides/soil/#worksheet-soil">Soil</a></li>`,
		`<b>folder</b>` + "\n<ul>\n" + `<li><a href="../manual/start/">Start</a></li>`,
		`<h2 id="letter_D">D</h2>`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the index has no\n%s", want)
		}
	}
	if strings.Contains(text, ">Start</a></b>") || strings.Contains(text, ">A</a>") {
		t.Error("a page for authors, or the home page, is in the index by its title")
	}
	if t.Failed() {
		t.Log(text)
	}
}
