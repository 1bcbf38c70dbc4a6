package render_test

import (
	"bytes"
	"fmt"
	"html/template"
	"math"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/theme"
)

// The fixture is a made-up guide of a made-up office, with every kind of part a guide can have.
func site() render.Site {
	return render.Site{
		Language: "en", Office: "Sorrel Flat Orchard Office", Crop: "young walnuts",
		Tagline:  "Guides for young walnut blocks, with the arithmetic shown",
		Invented: true, Notice: "Sorrel Flat is made up. Its office, blocks, well and reports are invented.",
		Licence:     "CC BY 4.0",
		Contact:     "Young-tree desk, Sorrel Flat Orchard Office",
		ContactHref: "mailto:young-trees@sorrelflat.example.org",
		LocalRule:   "The label and the rules of your own county, district or state come before anything in these guides.",
		Style:       "assets/style.css",
		Icon:        "assets/icon.svg",
		Offline:     "assets/offline.js",
	}
}

func renderer(t testing.TB, s render.Site) *render.Renderer {
	t.Helper()
	r, err := render.New(theme.Files, s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func page() render.Page {
	return render.Page{
		Root: "../../", Home: "../../", Sources: "../../sources/", Address: "guides/soil/",
		Title:   "Nitrogen already in your soil",
		Summary: "Turn the nitrate line of a soil report into pounds an acre that you need not buy.",
	}
}

func guide(body string) *render.Guide {
	return &render.Guide{
		Kind: kind.Guide,
		Page: page(), Season: "before bud break", Number: 1, Reviewed: "2026-09-14", Changed: "2026-08-03",
		ReviewBy: "2028-09-14",
		Changes:  []render.Change{{Day: "2026-08-03", Text: "The limit is <1 oz."}, {Day: "2025-03-02", Text: "Written."}},
		Glance: []render.Glance{
			glance(0, 5, "48", "in the top 12 in at 12 ppm NO3-N"),
			glance(1, 12, "58.9", "in soil and water together"),
			glance(1, 15, "0", "left to buy for a first-leaf year"),
		},
		Body:     template.HTML(body),
		Module:   []byte(`{"m":"AGFzbQEAAAA=","cells":24,"sheets":[{"name":"soil","after":[],"refusals":[]}]}`),
		Previous: &render.Link{Href: "../sampling/", Text: "Take a soil sample"},
		Cited:    references(),
		Next:     &render.Link{Href: "../water/", Text: "Nitrogen in your well water"},
	}
}

// references are the sources of the fixture's guide. The body has the places that they lead back to.
func references() []render.Reference {
	sources := sourcesPage().Entries
	return []render.Reference{
		{
			Entry: sources[0], Href: "../../sources/#montana-soil",
			Uses: []render.Use{{Cite: 1, Text: "two million pounds"}, {Cite: 2, Text: "2,000,000 lb soil/ac per 6 in"},
				{Cite: 9, Text: "2 lb/ac per ppm"}, {Cite: 10, Text: "6 in"}},
		},
		{
			Entry: render.Source{Authors: "IUPAC", Year: "2021", Title: "Weights", Kind: "standard"},
			Uses:  []render.Use{{Cite: 3, Text: "0.2259"}},
		},
		{
			Entry: sources[1], Href: "../../sources/#common-practice",
			Uses: []render.Use{{Cite: 4, Text: "25 to 35 lb/ac"}},
		},
		{Entry: render.Source{Title: "40 CFR 141", Number: "40 CFR 141", Kind: "standard"}, Uses: []render.Use{
			{Cite: 5, Text: "10 mg/L"}, {Cite: 6, Text: "10 ppm"}, {Cite: 7, Text: "10 mg/L"}, {Cite: 8, Text: "10 mg/L"},
		}},
	}
}

func glance(sheet, cell int, text, label string) render.Glance {
	return render.Glance{Sheet: sheet, Href: "#worksheet-soil", Label: label, Shown: poundsAcre(cell, text, "53.8")}
}

// poundsAcre is a value that has a second, metric unit.
func poundsAcre(cell int, text, metric string) render.Shown {
	return render.Shown{
		Cell: cell, Text: text, After: " lb N/ac",
		Also: &render.Shown{Cell: cell, Text: metric, After: " kg N/ha", By: "11209/10000"},
	}
}

func mathML(s string) template.HTML {
	return template.HTML("<math><mrow>" + s + "</mrow></math>")
}

func soil() *render.Worksheet {
	return &render.Worksheet{
		Index: 0, Number: 1, Name: "soil", Title: "What the soil holds",
		Summary: "One layer of soil, as the laboratory reported it.",
		Givens: []render.Given{
			{
				ID: "soil-nitrate", Label: "Nitrate on the report", Kind: render.KindNumber,
				Hint: "Most reports say 2 to 40. Look for NO3-N or NO3.", Cell: 0, Presence: -1, Others: -1, Text: "12",
				Units: []render.UnitOption{
					{Text: "ppm NO3-N", Factor: "1/1", Selected: true}, {Text: "ppm NO3", Factor: "14007/62004"},
				},
				Low: 0, High: 200, Start: 12, StartTop: 12, LowText: "0", HighText: "200",
			},
			{
				ID: "soil-depth", Label: "Depth of the sample", Kind: render.KindNumber,
				Hint: "From the surface down.", Cell: 1, Presence: -1, Others: -1, Text: "12",
				Units: []render.UnitOption{{Text: "in", Factor: "1/1", Selected: true}, {Text: "cm", Factor: "50/127"}},
				Low:   1, High: 72, Start: 12, StartTop: 12, LowText: "1", HighText: "72",
			},
			{
				ID: "soil-bulk-density", Label: "Bulk density", Kind: render.KindNumber,
				Hint: "Only if you have measured it.", Cell: 2, Presence: 3, Others: -1, Unit: "g/cm3", Typical: "1.47 g/cm3",
				Low: 0.8, High: 1.9, LowText: "0.8", HighText: "1.9", Optional: true,
				For: []int{0, 4},
			},
		},
		Work: []render.Line{
			{
				When: 6, Shown: true,
				Symbols: mathML(`<mi>nitrogen</mi><mo>=</mo><mi>nitrate</mi><mo>×</mo>` +
					`<mtext>2,000,000 lb soil/ac per 6 in</mtext><mo>×</mo><mi>depth</mi>`),
				Numbers: []template.HTML{mathML(`<mo>=</mo><mn data-show="0" data-sheet="0">12</mn><mtext>&nbsp;ppm NO3-N</mtext>` +
					`<mo>×</mo><mtext>2,000,000 lb soil/ac per 6 in</mtext><mo>×</mo>` +
					`<mn data-show="1" data-sheet="0">12</mn>` +
					`<mtext>&nbsp;in</mtext><mo>=</mo><mn data-show="5" data-sheet="0">48</mn><mtext>&nbsp;lb N/ac</mtext>`)},
			},
			{
				When: 7, Shown: false, Bare: true, Numbers: []template.HTML{"<math></math>", "<math></math>"},
				Symbols: mathML(`<mi>nitrogen</mi><mo>=</mo><mi>nitrate</mi><mo>×</mo><mi>bulk density</mi>` +
					`<mo>×</mo><mi>depth</mi>`),
			},
		},
		Answers: []render.Answer{{
			Label: "Nitrogen in this layer", There: -1, Shown: poundsAcre(5, "48", "53.8"),
		}},
		Words: []render.Note{
			{Pieces: []render.Piece{{Text: "The layer holds nothing."}}, When: 10},
			{Pieces: []render.Piece{
				{Text: "The layer holds "},
				{Shown: &render.Shown{Cell: 5, Text: "48", After: " lb of nitrogen an acre", Typed: true}},
				{Text: "."},
			}, When: -1, Shown: true, Partly: true, Perhaps: true},
		},
		Notes: []render.Note{
			{Pieces: []render.Piece{
				{Text: "Of it, what lies below the roots cannot be counted: "},
				{Shown: &render.Shown{Cell: 5, Text: "48", After: " lb N/ac"}},
				{Text: " is the most there is."},
			}, When: -1},
			{Signal: "CAUTION", Pieces: []render.Piece{
				{Text: "This is more than a first-leaf year takes up. Buy none until the next report."},
			}, When: 8, Shown: true, Partly: true},
			{Pieces: []render.Piece{{Text: "Check the depth."}}, When: 9, Refusal: true},
		},
		Constants: []render.Constant{
			{
				Label: "the weight of the top six inches of an acre", Text: "2,000,000 lb soil/ac per 6 in",
				Origins: []render.Origin{{Text: "Montana State University", Cite: render.Cite{Source: 1, Use: 2}}},
				Kind:    "handbook",
			},
			{
				Label: "nitrogen's share of nitrate, by atomic weight", Text: "0.2259",
				Origins: []render.Origin{{Text: "Arithmetic"}, {Text: "IUPAC 2021", Cite: render.Cite{Source: 2, Use: 3}}},
				Kind:    "standard",
			},
		},
		CodeHref: "../../calculations/soil-nitrogen/",
	}
}

func number(id, label string, cell int, text, unit string) render.Given {
	return render.Given{
		ID: id, Label: label, Kind: render.KindNumber, Cell: cell, Presence: -1, Others: -1, Text: text, Unit: unit,
		Low: 0, High: 300, LowText: "0", HighText: "300", Start: 35, StartTop: 35,
	}
}

func season() *render.Worksheet {
	answer := func(cell int, label, text string) render.Answer {
		s := render.Shown{Cell: cell, Text: text, After: " lb N/ac"}
		return render.Answer{Label: label, There: -1, Shown: s}
	}
	step := func(name, symbols, numbers string) render.Line {
		symbols = `<mi>` + name + `</mi><mo>=</mo>` + symbols
		return render.Line{When: -1, Symbols: mathML(symbols), Numbers: []template.HTML{mathML(numbers)}}
	}
	return &render.Worksheet{
		Index: 1, Number: 2, Name: "season", Title: "What is left to buy",
		Givens: []render.Given{
			number("season-demand", "What the trees take up", 10, "35", "lb N/ac"),
			{
				ID: "season-soil", Label: "From the soil", Kind: render.KindLinked, LowText: "0", HighText: "300",
				Unit: "lb N/ac", Taken: &render.Shown{Cell: 5, Text: "48", After: " lb N/ac"}, Outside: 19,
				From: &render.Link{Href: "#worksheet-soil", Text: "What the soil holds"},
			},
			number("season-water", "From the water", 11, "10.9", "lb N/ac"),
			{
				ID: "season-method", Label: "How it is put on", Kind: render.KindChoice, Cell: 16,
				Choices: []render.Choice{{Text: "through the drip line", Selected: true}, {Text: "by hand"}},
				Hint:    "Sets how much of it reaches the roots.",
			},
			{
				ID: "season-rate", Label: "Rate", Kind: render.KindNumber, Cell: 17, Presence: -1, Others: 20,
				Text: "3 to 4", Unit: "oz N/tree", Low: 0, High: math.Inf(1), Start: 3, StartTop: 4, LowText: "0", HighText: "8",
				Units: []render.UnitOption{
					{Text: "oz N/tree", Factor: "1/1", Selected: true},
					{Text: "lb N/ac", Factor: "1/1", Second: &render.Limits{Low: 0, High: 300}},
				},
			},
			{
				ID: "season-first", Label: "First feed", Kind: render.KindNumber, Cell: 21, Presence: -1, Others: -1,
				Text: "2027-04-15", Low: 10957, High: 47481, Start: 20923, StartTop: 20923,
				LowText: "Jan 1, 2000", HighText: "Dec 31, 2099", Day: &render.Days{First: "2000-01-01", Last: "2099-12-31"},
			},
			{
				ID: "season-well", Label: "Nitrate of the well", Kind: render.KindNumber, Cell: 22, Presence: -1, Others: -1,
				Text: "<5", Below: "5", Unit: "ppm NO3-N", Low: 0, High: 200, Start: 0, StartTop: 5, LowText: "0", HighText: "200",
			},
		},
		Work: []render.Line{
			step("credits", `<mi>soil</mi><mo>+</mo><mi>water</mi>`,
				`<mo>=</mo><mn>48</mn><mo>+</mo><mn>10.9</mn><mo>=</mo><mn>58.9</mn>`),
			step("short", `<mtext>the larger of&nbsp;</mtext><mi>demand</mi><mo>−</mo><mi>credits</mi>`+
				`<mtext>&nbsp;and&nbsp;</mtext><mn>0</mn>`, `<mo>=</mo><mn>0</mn>`),
			step("apply", `<mfrac><mi>short</mi><mi>efficiency</mi></mfrac>`,
				`<mo>=</mo><mfrac><mn>0</mn><mtext>70 %</mtext></mfrac><mo>=</mo><mn>0</mn>`),
		},
		Answers: []render.Answer{
			answer(12, "Credits", "58.9"), answer(13, "Short of the need", "0"), answer(14, "To apply", "0"),
			answer(15, "More than the need", "23.9"),
			{Label: "Cost", There: -1, Shown: render.Shown{Cell: 23, Before: "$", Text: "3 to 4", After: "/ac"}},
			{Label: "Last feed", There: 25, Shown: render.Shown{Cell: 24, Text: "Sep 1, 2027", Day: true}},
			{
				Label: "Eighth feed", There: 27, Out: true,
				Shown: render.Shown{Cell: 26, Text: "–", After: " lb N/ac"},
			},
		},
	}
}

func reckoner() *render.Table {
	t := &render.Table{
		Index: 0, Sheet: 2, Caption: "Nitrogen in place, lb N/ac", RowLabel: "Depth", ColLabel: "Nitrate on the report",
		Rows:       []string{"6 in", "12 in", "24 in"},
		Cols:       []string{"3 ppm NO3-N", "5 ppm NO3-N", "10 ppm NO3-N", "15 ppm NO3-N", "20 ppm NO3-N"},
		MarkText:   "25 to 35 lb N/ac",
		FollowText: "What the soil holds",
		Constants: []render.Constant{
			{Text: "2 lb/ac per ppm", Origins: []render.Origin{{Cite: render.Cite{Source: 1, Use: 9}}}},
			{Text: "6 in", Origins: []render.Origin{{Cite: render.Cite{Source: 1, Use: 10}}}},
		},
	}
	for _, row := range []string{"6 10 20 30 40", "12 20 40 60 80", "24 40 80 120 160"} {
		var cells []render.Cell
		for col, f := range strings.Fields(row) {
			cells = append(cells, render.Cell{Text: f, Marked: f == "30", Near: f == "40" && col == 2})
		}
		t.Cells = append(t.Cells, cells)
	}
	return t
}

// body is the text of the fixture's guide.
func body(r *render.Renderer) string {
	w := new(bytes.Buffer)
	worked := func(text string) { r.Worked(w, &render.Worked{Href: "#worksheet-soil", Text: text}) }
	w.WriteString("<p>A soil laboratory reports nitrate as parts per million of the dry soil it was sent. Your trees, " +
		"and your fertilizer dealer, think in pounds an acre. The bridge between them is the weight of the soil in the " +
		"layer that was sampled.</p>\n<p>A report of ")
	worked("12 ppm")
	w.WriteString(" over the top foot is ")
	worked("48 lb/ac")
	w.WriteString(" of nitrogen in place. An acre of soil six inches deep weighs near ")
	weight := &render.Sourced{
		Text: "two million pounds", Cite: render.Cite{Source: 1, Use: 1}, Source: "Montana State University, Soil Scoop",
		For: "for a soil of 1.47 g/cm³; with your own bulk density the worksheet uses that.", Kind: "handbook",
	}
	r.Sourced(w, weight)
	w.WriteString(", so each part per million is two pounds. The rest is multiplying by the depth.")
	r.OwnNote(w, []render.Own{
		{Label: "Nitrate on the report", Shown: render.Shown{Cell: 0, Text: "12", After: " ppm NO3-N"}},
		{Label: "Nitrogen in this layer", Shown: render.Shown{Cell: 5, Text: "48", After: " lb N/ac"}},
	})
	r.SourceNote(w, weight)
	w.WriteString("</p>\n")
	r.Worksheet(w, soil())
	w.WriteString(`<div class="heading"><h2 id="enough">When it is enough</h2>` +
		`<a class="self" href="#enough" aria-label="Link to this part">§</a></div><p>First-leaf trees take up `)
	need := &render.Sourced{
		Text: "25 to 35 lb/ac", Cite: render.Cite{Source: 3, Use: 4}, Source: "Orchard advisors",
		For: "of N a year for first-leaf walnuts.", Kind: "common-practice",
	}
	r.Sourced(w, need)
	w.WriteString(" in a year. Where the marked cells below cover that, wait: the first feed can come later.")
	r.SourceNote(w, need)
	w.WriteString("</p>\n")
	ties(r, w)
	r.Reckoner(w, reckoner())
	w.WriteString("<p>Put it in the season's budget with what the well brings. See <a " +
		"href=\"https://example.org/budget\">the long form</a>.</p>\n")
	r.Worksheet(w, season())
	w.WriteString("<p>Two kinds: ")
	r.Following(w, twoKinds())
	w.WriteString(`</p><h2 id="slips">Slips people make</h2><ul><li>They read nitrate as nitrate-nitrogen.</li></ul>`)
	for i, word := range []string{"DANGER", "WARNING", "CAUTION", "NOTICE"} {
		signal(r, w, word, 5+i)
	}
	return w.String()
}

// ties writes a passage, and numbers that are tied to records and sizes.
func ties(r *render.Renderer, w *bytes.Buffer) {
	r.Passage(w, passage(), func(i int) { fmt.Fprintf(w, "What case %d says.", i) })
	ticket := &render.Recorded{Text: "23.4 lb", What: "the scale ticket of block 3", Day: "2026-09-14"}
	w.WriteString("<p>Block 3 took ")
	r.Recorded(w, ticket)
	w.WriteString(", as much as a ")
	r.Size(w, "5-gallon bucket")
	w.WriteString(" holds.")
	r.RecordNote(w, ticket)
	w.WriteString("</p>\n")
}

// passage has a case for each way in which one may hold for the example.
func passage() *render.Passage {
	return &render.Passage{Index: 2, Cases: []render.Case{
		{When: 30}, {When: 31, Shown: true}, {When: 32, Shown: true, Partly: true},
		{When: 33, Shown: true, Partly: true, Perhaps: true}, {When: -1, Shown: true},
	}}
}

// twoKinds is a figure of a given that can be typed in ounces a tree or in pounds an acre.
func twoKinds() *render.Following {
	return &render.Following{Sheet: 1, Href: "#worksheet-season", Shown: render.Shown{
		Cell: 17, Text: "3 to 4", After: " oz/tree",
		Kind: &render.Kind{Cell: 20, Other: &render.Shown{Cell: 17, Text: "3 to 4", After: " lb N/ac"}},
	}}
}

func signal(r *render.Renderer, w *bytes.Buffer, word string, use int) {
	w.WriteString(`<aside class="signal ` + strings.ToLower(word) + `" role="note" aria-label="` + word + `">` +
		`<p class="signal-word">` + word + `</p><p>A credit is a reason to buy less, not a licence to skip the leaf ` +
		`sample in July. Follow `)
	rule := &render.Sourced{
		Text: "40 CFR 141", Cite: render.Cite{Source: 4, Use: use}, Source: "EPA", For: "10 mg/L in drinking water.",
		Kind: "standard",
	}
	r.Sourced(w, rule)
	w.WriteString(` and your local nitrogen-management rules.`)
	r.SourceNote(w, rule)
	w.WriteString(`</p></aside>`)
}
