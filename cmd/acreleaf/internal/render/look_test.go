package render_test

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/theme"
)

var look = flag.String("look", "", "write the fixture's pages to this folder, to look at them in a browser")

// TestLook writes the fixture as a small site. Every link between its pages and to its style must lead to a file.
func TestLook(t *testing.T) {
	folder := *look
	if folder == "" {
		folder = t.TempDir()
	}
	pages := pages(t)
	for name, text := range pages {
		save(t, filepath.Join(folder, name), text)
	}
	save(t, filepath.Join(folder, "assets", "style.css"), []byte(style(t)))
	if !bytes.Contains(pages["guides/soil/index.html"], []byte(`href="../../assets/style.css"`)) {
		t.Error("the guide does not lead to its style sheet")
	}
}

func save(t *testing.T, name string, text []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, text, 0o644); err != nil {
		t.Fatal(err)
	}
}

// pages renders every kind of page of the fixture, by file name.
func pages(t testing.TB) map[string][]byte {
	r := renderer(t, site())
	var soil, home, sources, calculation, index, missing bytes.Buffer
	r.Index(&index, indexPage())
	r.Guide(&soil, guide(body(r)))
	r.Home(&home, homePage())
	r.Sources(&sources, sourcesPage())
	r.Calculation(&calculation, calculationPage())
	r.Missing(&missing, missingPage())
	return map[string][]byte{
		"guides/soil/index.html": soil.Bytes(),
		"index.html":             home.Bytes(),
		"manual/index.html":      index.Bytes(),
		"sources/index.html":     sources.Bytes(),
		"404.html":               missing.Bytes(),

		"calculations/soil-nitrogen/index.html": calculation.Bytes(),
	}
}

func homePage() *render.Home {
	return &render.Home{
		Page: render.Page{
			Home: "./", Sources: "sources/", Title: "Guides for young walnut blocks",
			Summary: "What the soil and the well already give, and what is left to buy.",
		},
		Intro:     "<p>Start with the reports in your hand. Put your own numbers in any worksheet.</p>",
		Questions: []render.Question{{Text: "What does my report say?", Href: "guides/soil/", Summary: "The nitrate line."}},
		Seasons:   seasons(),
		More:      []render.Link{{Href: "manual/", Text: "Manual"}, {Href: "calculations/", Text: "Calculations"}},
	}
}

func indexPage() *render.Index {
	return &render.Index{
		Page: render.Page{Root: "../", Home: "../", Sources: "../sources/", Address: "manual/", Title: "The manual",
			Summary: "How pages are written.", Up: &render.Link{Href: "./", Text: "The manual"}},
		Of: kind.Manual,
		Entries: []render.Entry{
			{Number: 1, Title: "Begin", Summary: "Start a site.", Href: "begin/"},
			{Title: "Words", Summary: "What they mean.", Href: "words/"},
		},
	}
}

func seasons() []render.Season {
	return []render.Season{
		{Name: "before bud break", Guides: []render.Entry{
			{
				Number: 1, Title: "Nitrogen already in your soil", Href: "guides/soil/",
				Example: render.Example{Label: "Nitrogen in this layer", Answer: "48 lb N/ac", From: "12 ppm NO3-N, 12 in"},
				Summary: "Turn the nitrate line of a soil report into pounds an acre that you need not buy.",
			},
			{
				Number: 2, Title: "Nitrogen in your well water", Href: "guides/water/",
				Example: render.Example{Label: "Nitrogen in an inch", Answer: "10.9 lb N/ac"},
				Summary: "What the well brings with each inch of water.",
			},
		}},
		{Name: "while you plan the feeds", Guides: []render.Entry{{
			Number: 3, Title: "From ounces a tree to pounds an acre", Href: "guides/ounces/",
			Summary: "Count the trees on an acre, then move between a rate for one tree and a rate for the block.",
		}}},
		{Guides: []render.Entry{{
			Title: "How to read these guides", Href: "guides/how/", Summary: "Signs and words.",
		}}},
	}
}

func sourcesPage() *render.Sources {
	return &render.Sources{
		Page: render.Page{Root: "../", Home: "../", Sources: "./", Address: "sources/"},
		Entries: []render.Source{
			{
				ID: "montana-soil", Authors: "Montana State University", Title: "Soil Scoop: questions to ask about soil tests",
				Publisher: "Montana State University", Kind: "handbook", Address: "https://example.org/soil-scoop",
				Note: "Pounds of N an acre are ppm times 2 times depth in inches divided by 6.",
				Figures: []render.Figured{
					{Text: "2 lb N/ac", For: "for each ppm NO3-N in 6 in"}, {Text: "6 in", For: "the layer of the rule"},
				},
				Cited: []render.Link{{Href: "../guides/soil/", Text: "Nitrogen already in your soil"}},
			},
			{ID: "common-practice", Authors: "Orchard advisors", Title: "Rules of thumb in common use", Kind: "common-practice"},
		},
	}
}

func missingPage() *render.Missing {
	return &render.Missing{
		Page: render.Page{Root: "/", Home: "/", Sources: "/sources/", Unlisted: true, Astray: true},
		Ways: []render.Link{{Href: "/", Text: "Guides"}, {Href: "/manual/", Text: "Manual"}},
	}
}

// style joins the parts of the style sheet in the order of their imports.
func style(t testing.TB) string {
	t.Helper()
	entry, err := fs.ReadFile(theme.Files, "style/acreleaf.css")
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, line := range strings.Split(string(entry), "\n") {
		name, found := strings.CutPrefix(line, `@import "`)
		if !found {
			continue
		}
		part, err := fs.ReadFile(theme.Files, "style/"+strings.TrimSuffix(name, `";`))
		if err != nil {
			t.Fatal(err)
		}
		all.Write(part)
	}
	return all.String()
}
