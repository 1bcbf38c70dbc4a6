package proof

import (
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

const soil = "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n"

const grid = "```reckoner\ncalculation: water-nitrogen\ndown: water = 1, 6 in\nacross: nitrate = 3, 5 ppm NO3-N\n" +
	"show: nitrogen\n```\n"

const carried = "```worksheet put\ncalculation: material-nitrogen\namount: 20 lb/ac\nmaterial: UAN-32\n" +
	"trees: 110 trees/ac\n```\n"

const inWell = "```worksheet well\ncalculation: water-nitrogen\nnitrate: 7 ppm NO3-N\nwater: 6 in\n```\n"

const drawnWell = inWell + "\n```drawing\nof: well\n```\n"

// A translation is compared with its original, in whatever order the two come.
func TestTranslations(t *testing.T) {
	for _, c := range []struct{ name, original, translation, want string }{
		{"the same", soil, soil, ""},
		{"another text of the same numbers", soil,
			"```worksheet soil\ntitle: Suelo\ndepth: 1 ft\nnitrate: 12.0 ppm NO3-N\ncalculation: soil-nitrogen\n```\n", ""},
		{"another number", soil,
			strings.Replace(soil, "12 ppm", "12.1 ppm", 1), "translation-differs"},
		{"another range", strings.Replace(soil, "12 ppm", "12 to 14 ppm", 1),
			strings.Replace(soil, "12 ppm", "12 to 15 ppm", 1), "translation-differs"},
		{"another kind of quantity", carried, strings.Replace(carried, "20 lb/ac", "20 gal/ac", 1), "translation-differs"},
		{"another name", soil,
			strings.Replace(soil, "worksheet soil", "worksheet suelo", 1), "translation-lacks"},
		{"a grid with another end",
			grid,
			strings.Replace(grid, "1, 6", "1, 8", 1),
			"translation-differs"},
		{"the same source", "It has [6 in](source:book).", "Tiene [6 in](source:book).", ""},
		{"the same source in other units", "It has [12 in](source:book).", "Tiene [1 ft](source:book).", ""},
		{"the same figures in another order", "From [6 in](source:book) to [12 in](source:book).",
			"[12 in](source:book) a [6 in](source:book).", ""},
		{"another figure of the source", "It has [6 in](source:book).", "Tiene [12 in](source:book).", "translation-differs"},
		{"a figure less", "It has [6 in](source:book).", "Tiene.", "translation-lacks"},
		{"a figure more", "It has.", "Tiene [6 in](source:book).", ""},
		{"the same record", "It took [23.4 lb](record:2026-09-01 \"a ticket\").",
			"Llevó [23.4 libras](record:2026-09-01 \"una nota\").", ""},
		{"another number of a record", "It took [23.4 lb](record:2026-09-01 \"a ticket\").",
			"Llevó [24.3 libras](record:2026-09-01 \"una nota\").", "translation-differs"},
		{"a record less", "It took [23.4 lb](record:2026-09-01 \"a ticket\").", "Nada.", "translation-lacks"},
		{"the same size", "Keep [12 in](size:) away.", "Deje [30 cm](size:) y no más.", ""},
		{"another size", "Keep [12 in](size:) away.", "Deje [21 pulgadas](size:).", "translation-differs"},
		{"a size in words", "Keep [6 in](size:) away.", "Deje [seis pulgadas](size:).", ""},
		{"a source in words", "It has [6 in](source:book).", "Tiene [seis pulgadas](source:book).", ""},
		{"a rate in words", "Put [2 lb/ac](source:book).", "Ponga [dos libras por acre](source:book).", ""},
		{"both in words", "Put [six inches](source:book).", "Ponga [seis pulgadas](source:book).", ""},
		{"another number in words", "It has [6 in](source:book).", "Tiene [siete pulgadas](source:book).",
			"translation-differs"},
		{"a number in words less", "It has [six inches](source:book).", "Tiene.", "translation-lacks"},
		{"a part still to write", "It has [6 in](source:book).\n\n## A", "TO TRANSLATE It has them.", ""},
		{"the same pictures", "![Rows](rows.svg) and ![A bud](bud.svg)", "![Yema](yema.svg) y ![Filas](rows.svg)", ""},
		{"a picture less", "![Rows](rows.svg) and ![A bud](bud.svg)", "![Yema](yema.svg)", "translation-lacks"},
		{"a picture more", "![A bud](bud.svg)", "![Yema](yema.svg) y ![Filas](rows.svg)", "translation-lacks"},
		{"the same drawing", drawnWell, drawnWell, ""},
		{"a drawing less", drawnWell, inWell, "translation-lacks"},
		{"a drawing more", inWell, drawnWell, "translation-lacks"},
		{"a heading less", "## A\n\n## B", "## A", "translation-lacks"},
		{"a heading more", "## A", "## A\n\n## B", ""},
	} {
		pages := []*Page{read(t, "guides/a.md", c.original), read(t, "guides/es-a.md", c.translation)}
		for range 2 {
			slices.Reverse(pages)
			if got := ids(together(pages, twoLanguages, thorough)); got != c.want {
				t.Errorf("%s: %q and not %q", c.name, got, c.want)
			}
		}
	}
}

func TestTranslationsNeedAnOriginalOfTheirDay(t *testing.T) {
	on := func(day string) string { return "---\ntitle: A\nsummary: B.\nreviewed: " + day + "\n---\n\nText." }
	original := read(t, "guides/a.md", on("2026-09-14"))
	for _, c := range []struct {
		pages []*Page
		want  string
	}{
		{[]*Page{original, read(t, "guides/es-a.md", on("2026-09-14"))}, ""},
		{[]*Page{original, read(t, "guides/es-a.md", on("2026-09-13"))}, "translation-old"},
		{[]*Page{original, read(t, "guides/b.md", on("2026-09-14\nlanguage: es"))}, "translation-alone"},
		{[]*Page{original, read(t, "manual/es-a.md", on("2026-09-13"))}, ""}, // site says that there is no such original
	} {
		if got := ids(together(c.pages, twoLanguages, thorough)); got != c.want {
			t.Errorf("%s: %q and not %q", c.pages[1].Name, got, c.want)
		}
	}
}

func TestTranslationsTellOfTheChangesOfTheirOriginal(t *testing.T) {
	with := func(changes string) string {
		return "---\ntitle: A\nsummary: B.\nreviewed: 2026-09-14\n" + changes + "---\n\nText."
	}
	const both = "changes:\n  2026-09-14: B.\n  2025-03-02: A.\n"
	for _, c := range []struct{ name, theirs, ours, want string }{
		{"the same days", both, "changes:\n  2026-09-14: Dos.\n  2025-03-02: Uno.\n", ""},
		{"a day less", both, "changes:\n  2025-03-02: Uno.\n", "translation-changes"},
		{"a day more", "changes:\n  2025-03-02: A.\n", both, "translation-changes"},
		{"none of two", both, "", "translation-changes translation-changes"},
		{"another day", "changes:\n  2026-09-14: B.\n", "changes:\n  2026-09-13: Dos.\n",
			"translation-changes translation-changes"},
	} {
		pages := []*Page{read(t, "guides/a.md", with(c.theirs)), read(t, "guides/es-a.md", with(c.ours))}
		if got := ids(together(pages, twoLanguages, thorough)); got != c.want {
			t.Errorf("%s: %q and not %q", c.name, got, c.want)
		}
	}
}

// own is a source that is in sources.yaml.
func own(s fact.Source) config.Reference { return config.Reference{Source: s, Listed: true} }

func TestSources(t *testing.T) {
	file := &message.Source{Name: "content/sources.yaml"}
	s := &Site{SourcesFile: file, Sources: config.Sources{
		"a-whole":     own(fact.Source{ID: "a-whole", Kind: fact.Handbook, Title: "A", Address: "https://www.example.org/"}),
		"a-number":    own(fact.Source{ID: "a-number", Kind: fact.Handbook, Title: "A", Number: "EM 8786"}),
		"bare":        own(fact.Source{ID: "bare", Kind: fact.Standard, Title: "A"}),
		"of-memory":   own(fact.Source{ID: "of-memory", Kind: fact.Memory, Title: "A"}),
		"of-practice": own(fact.Source{ID: "of-practice", Kind: fact.CommonPractice, Title: "A"}),
		"built-in":    {Source: fact.Source{ID: "built-in", Kind: fact.Standard, Title: "A"}},
	}}
	if got := ids(together(nil, s, thorough)); got != "source-incomplete" {
		t.Error(got, "while it is not known what is cited")
	}
	s.Cited = map[string]bool{"a-whole": true, "bare": true, "of-memory": true}
	found := together(nil, s, thorough)
	if got := ids(found); got != "source-incomplete source-uncited source-uncited" {
		t.Error(got)
	}
	if got := ids(together(nil, s, Rules{})); got != "source-incomplete" {
		t.Error(got, "without advice")
	}
}

// Lengths of time are no figures, but two pages that tell the same tell the same times.
func TestTimesOfTranslations(t *testing.T) {
	for _, c := range []struct{ original, translation, want string }{
		{"Wait for a month.", "Espere tres meses.", "translation-time"},
		{"Wait one month.", "Espere tres meses.", "translation-time"},
		{"Wait three months.", "Espere un mes.", "translation-time"},
		{"Wait 10 days.", "Espere 19 días.", "translation-time"},
		{"Run it for 24 hours.", "Riegue 42 horas.", "translation-time"},
		{"Run it for an hour.", "Riegue dos horas.", "translation-time"},
		{"Two weeks before harvest.", "Tres semanas antes de la cosecha.", "translation-time"},
		{"A 30-minute run.", "Un riego de 13 minutos.", "translation-time"},
		// the same, or nothing to compare
		{"Wait for a month, then two weeks.", "Espere un mes y luego dos semanas.", ""},
		{"Wait two weeks.", "Espere 14 días.", ""},
		{"Run it for 48 hours.", "Riegue dos días.", ""},
		{"A two-hour run.", "Un riego de dos horas.", ""},
		{"Look twice a week for three months.", "Revise dos veces por semana durante tres meses.", ""},
		{"It runs twice a day.", "Riega dos veces al día, en tres días.", ""},
		{"Wait 10 days.\n\n## A\n\nThen go.", "Espere.\n\n## A\n\nY luego en 5 días.", ""},
		{"Water every 10 to 14 days.", "Riegue cada 10 a 14 días.", ""},
		{"It is of that one day. A month of rain can move it.", "Es de ese día. Un mes de lluvia se lo lleva.", ""},
		{"In one of the days.", "En uno de los 3 días.", ""},
	} {
		pages := []*Page{read(t, "guides/a.md", c.original), read(t, "guides/es-a.md", c.translation)}
		if got := ids(together(pages, twoLanguages, thorough)); got != c.want {
			t.Errorf("%s | %s: %q and not %q", c.original, c.translation, got, c.want)
		}
	}
}

// together checks each translation among some pages, and what they quote of sources.
func together(pages []*Page, s *Site, r Rules) message.List {
	var said message.List
	var quotes []Quote
	for _, p := range pages {
		quotes = append(quotes, Quotes(p, s, r)...)
		if slices.Index(s.Config.Languages, p.Address.Language) < 1 {
			continue
		}
		var original *Page
		for _, o := range pages {
			if o.Name == page.Original(p.Name, p.Metadata) {
				original = o
			}
		}
		said = append(said, Translation(p, original, s, r)...)
	}
	return append(said, Together(quotes, s, r)...)
}
