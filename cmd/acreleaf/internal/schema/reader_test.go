package schema

import (
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"acreleaf/calc"
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// readers are those who read the files that the schemas describe.
var readers = map[string]func(text string) message.List{
	"page.json": func(text string) message.List {
		_, _, said := page.Split(&message.Source{Name: "soil.md", Text: []byte("---\n" + text + "---\n")})
		return said
	},
	"site.json": func(text string) message.List {
		_, _, said := config.Load(fstest.MapFS{"site.yaml": {Data: []byte(text)}}, "site.yaml")
		return said
	},
	"sources.json": func(text string) message.List {
		_, _, said := config.LoadSources(fstest.MapFS{"sources.yaml": {Data: []byte(text)}}, "sources.yaml")
		return said
	},
	"calculation.json": func(text string) message.List {
		_, said := define(text)
		return said
	},
	"worksheet.json": func(text string) message.List { return bind("worksheet example", text) },
	"reckoner.json":  func(text string) message.List { return bind("reckoner example", text) },
	"drawing.json":   func(text string) message.List { return bind("drawing", text) },
	"reference.json": func(text string) message.List { return bind("reference", text) },
	"exercise.json":  func(text string) message.List { return bind("exercise example", text) },
	"passage.json":   func(text string) message.List { return bind("passage", text) },
}

var books = config.Sources{
	"row-book": {Source: fact.Source{ID: "row-book", Title: "The book of rows", Kind: fact.Handbook}, Listed: true},
	"memory":   {Source: fact.Source{ID: "memory", Title: "From memory", Kind: fact.Memory}},
}

func define(text string) (*sheet.Sheet, message.List) {
	d := &worksheet.Definition{Name: "spray", Source: &message.Source{Name: "spray.yaml", Text: []byte(text)},
		Body: message.Span{End: len(text)}}
	said := worksheet.Define(d, books, nil)
	return d.Sheet, said
}

// catalogue is that of a site with a calculation of its own, named spray.
var catalogue = sync.OnceValue(func() *calc.Catalogue {
	own, said := define(spray)
	if own == nil {
		panic(said[0].Text)
	}
	return calc.Standard().With([]*sheet.Sheet{own}, nil)
})

// bind reads a block in a page that has worksheets named soil and well, too.
func bind(construct, text string) message.List {
	before := "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n" +
		"```worksheet well\ncalculation: water-nitrogen\nnitrate: 5 ppm NO3-N\nwater: 12 in\n```\n\n"
	doc, said := markdown.Parse(&message.Source{Name: "soil.md",
		Text: []byte(before + "```" + construct + "\n" + text + "```\n")}, 0)
	_, bound := worksheet.Bind(doc, catalogue(), "en")
	return append(said, bound...)
}

// refused gives the ids of the faults that a reader finds, "" for none.
func refused(name, text string) string {
	var ids []string
	for _, m := range readers[name](text) {
		if m.Level == message.Fault {
			ids = append(ids, m.ID)
		}
	}
	return strings.Join(ids, " ")
}

// spray is a calculation with every key.
const spray = `title: Spray
summary: A test.
givens:
  flow: {label: Flow, example: 0.4 gal/min, range: 0.1 to 5, hint: Catch it., units: [L/min]}
  ground-speed: {label: Speed, example: 5 mi/h, range: 0.5 to 20, hint: Of the ground., units: [km/h]}
constants:
  width: {label: Width, value: 20 in, source: row-book, note: Of a boom.}
  overlap: {label: Overlap, value: 0.9, source: memory}
work:
  - strip = ground_speed * width * overlap
  - rate = flow / strip
answers:
  rate: {label: Rate, unit: gal/ac, also: L/ha}
steps:
  strip: {label: Strip, unit: ac/h, also: ha/h}
notes: [At this speed., On flat ground.]
sentence: Put that on.
cases:
  slow: {when: ground_speed < "1 mi/h", say: You walk.}
checks:
  fast: {when: ground_speed > "6 mi/h", say: Slow down., signal: warning}
  full: {when: ground_speed > "9 mi/h", say: It spills., hazard: acid}
`

// files are examples of the other files, each with every key.
var files = map[string]string{
	"page.json": `title: Soil
summary: What is there.
language: en
reviewed: 2026-09-14
review-every: 24 months
changes: {2026-09-14: Another figure., 2025-03-02: Written.}
crop: young walnuts
order: 2
season: before bud break
translates: soil.md
outcomes: [find the nitrate line]
minutes: 20
after: [../../guides/soil.md]
glance: [soil.nitrogen]
terms: {top: [ppm, "nitrate, in a well"], read: NO3}
questions:
  guides/soil.md: What is there?
`,
	"site.json": `office: Test Row Orchard Office
crop: young walnuts
tagline: Guides
language: [en, es]
address: https://rows.example.org/a/
licence: CC BY 4.0
contact: {name: The desk, email: desk@rows.example.org, phone: 555 0100}
local-rule: {en: Your own rules come first., es: Sus reglas van primero.}
invented: true
notice: {en: It is made up., es: Es inventado.}
reading: {en: 9, es: 55}
hazards:
  blades: {name: wind machines, signal: danger, says: {en: Keep clear., es: Lejos.}, words: [fan], sources: [row-book]}
see: {en: {NO3: [nitrate, ppm]}, es: {quemado: quemaduras}}
`,
	"sources.json": `row-book:
  authors: Test Row
  year: 2020
  title: The book of rows
  publisher: Test Row
  address: https://rows.example.org/book?page=2#top
  number: Bulletin 12
  kind: handbook
  note: On rows.
  language: en
  figures: {2 lb N/ac: removed}
epa-nitrate:
  note: {en: On water., es: Del agua.}
  language: en
  figures: {10 mg/L NO3-N: {en: the most, es: lo más}}
`,
	"calculation.json": spray,
	"drawing.json": `of: well
title: The water
`,
	"reference.json": `table: material
show: grade, nitrogen, forms
title: Materials
`,
}

// The examples are whole: the readers take them, and each key is in them.
func TestExamplesAreWhole(t *testing.T) {
	keys, tables := worksheet.DefinitionKeys()
	all := map[string][]string{
		"page.json": page.Keys(), "site.json": append(config.SiteKeys(), config.ContactKeys()...),
		"sources.json": config.ReferenceKeys(), "calculation.json": keys, "reference.json": worksheet.ReferenceKeys(),
		"drawing.json": worksheet.DrawingKeys(),
	}
	for part, inside := range tables {
		for _, key := range inside {
			all["calculation.json"] = append(all["calculation.json"], part+" "+key)
		}
	}
	for name, text := range files {
		if ids := refused(name, text); ids != "" {
			t.Errorf("%s: the reader finds %s in\n%s", name, ids, text)
		}
		written := ""
		for _, at := range places(t, text) {
			last := at[len(at)-1]
			written += "\n" + last + "\n" + at[0] + " " + last + "\n"
		}
		for _, key := range all[name] {
			if !strings.Contains(written, "\n"+key+"\n") {
				t.Errorf("the example for %s lacks %q", name, key)
			}
		}
	}
}
