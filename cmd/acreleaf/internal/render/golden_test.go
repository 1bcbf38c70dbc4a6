package render_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"acreleaf/cmd/acreleaf/internal/render"
)

var update = flag.Bool("update", false, "write the golden files anew; look at the difference before you keep it")

// TestGolden keeps the HTML that the page's script and other packages rest on.
func TestGolden(t *testing.T) {
	r := renderer(t, site())
	withBase := site()
	withBase.Base, withBase.Script = "https://sorrelflat.example.org/guides/", "assets/page.js"
	spoken := guide(`<p>The text.</p><input data-cell="1">`)
	spoken.Page.Languages = []render.Language{
		{Code: "en", Name: "English", Href: "./", Address: "guides/soil/", Current: true},
		{Code: "es", Name: "Español", Href: "../../es/guides/soil/", Address: "es/guides/soil/"},
	}
	cases := map[string]func(w *bytes.Buffer){
		"worksheet":      func(w *bytes.Buffer) { r.Worksheet(w, soil()) },
		"worksheet-kind": func(w *bytes.Buffer) { r.Worksheet(w, season()) },
		"reckoner":       func(w *bytes.Buffer) { r.Reckoner(w, reckoner()) },
		"reference":      func(w *bytes.Buffer) { r.ReferenceTable(w, materials()) },
		"ties":           func(w *bytes.Buffer) { ties(r, w) },
		"guide":          func(w *bytes.Buffer) { renderer(t, withBase).Guide(w, spoken) },
		"home":           func(w *bytes.Buffer) { r.Home(w, homePage()) },
		"sources":        func(w *bytes.Buffer) { r.Sources(w, sourcesPage()) },
		"calculation":    func(w *bytes.Buffer) { r.Calculation(w, calculationPage()) },
		"index":          func(w *bytes.Buffer) { r.Index(w, indexPage()) },
		"missing":        func(w *bytes.Buffer) { r.Missing(w, missingPage()) },
	}
	for name, write := range cases {
		t.Run(name, func(t *testing.T) {
			var got bytes.Buffer
			write(&got)
			golden(t, name+".html", got.String())
		})
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("%s differs (-want +got); go test -update writes it anew:\n%s", file, diff)
	}
}
