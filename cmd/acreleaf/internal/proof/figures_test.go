package proof

import (
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

const figureSources = `book:
  title: A book
  kind: handbook
  figures:
    136 lb N: removed with a ton
    25 to 35 lb N/ac: a year
    5: devices
    6 in: of growth
    43,560 ft2: in an acre
trial:
  title: Trials
  kind: handbook
  figures:
    102 to 174 lb N: the range of the trials
    0.227 lb N/ac: for each ppm
two:
  title: Two of each
  kind: handbook
  figures:
    3 in: of water in a week of June
    4 in: of water in a week of July
    80 %: of the roots, in the top layer
    85 %: of the roots, in the two top layers; de las raíces
empty:
  title: Another
  kind: handbook
practice:
  title: Rules of thumb
  kind: common-practice
  figures:
    1 oz N/tree: in one feed
`

const figureSheets = "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n" +
	"```worksheet need\ncalculation: tree-rate\nrate: 3 to 4 oz N/tree\ntrees: 110 trees/ac\n```\n\n"

// figuresOf gives the messages about the figures of a text, each as "id at place".
func figuresOf(t *testing.T, language, text string) []string {
	t.Helper()
	sources, file, faults := config.LoadSources(fstest.MapFS{"s.yaml": {Data: []byte(figureSources)}}, "s.yaml")
	doc, more := markdown.Parse(&message.Source{Name: "a.md", Text: []byte(figureSheets + text)}, 0)
	work, bound := worksheet.Bind(doc, calc.Standard(), "en")
	for _, l := range []message.List{faults, more, bound} {
		if message.HasFault(l) {
			t.Fatalf("%q: %s", text, l[0].Text)
		}
	}
	page := &Page{Name: "a.md", Source: doc.Source, Language: language, Document: doc, Work: work}
	var said []string
	for _, m := range Alone(page, &Site{Sources: sources, SourcesFile: file}, Rules{}) {
		if strings.HasPrefix(m.ID, "figure-") {
			said = append(said, m.ID+" at "+string(doc.Source.Text[m.Span.Start:m.Span.End]))
		}
		if m.Note == "" {
			t.Errorf("%q: %s has no note", text, m.ID)
		}
	}
	return said
}

func TestFigures(t *testing.T) {
	for _, c := range []struct{ language, text, want string }{
		// sourced, and right
		{"en", "[136 lb](source:book) of nitrogen, [136](source:book) pounds of N, [61.7 kg](source:book)", ""},
		{"en", "[102–174 lb](source:trial), [102 to 174](source:trial) pounds, [102 to 174 lb N](source:trial)", ""},
		{"en", "[5](source:book), [5 devices](source:book), [five devices](source:book), [the book](source:book)", ""},
		{"en", "[0.23 lb/ac](source:trial), [0.227 lb/ac](source:trial) per ppm, [28 to 39.2 kg/ha](source:book)", ""},
		{"en", "[six inches](source:book), [0.5 ft](source:book), [half a foot](source:book)", ""},
		{"en", "[1 oz](source:practice) of nitrogen a tree, [an ounce](source:practice)", ""},
		{"en", "[at most 1 oz a tree](source:practice)", ""},
		{"en", "[Handbook 44](source:empty), [A book of 1998](source:empty), [an ounce](source:empty)", ""},
		{"en", "[43,560 square feet](source:book), [1 ac](source:book)", ""},
		{"es", "[25 a 35 libras por acre](source:book), [136 libras](source:book) de nitrógeno", ""},
		{"es", "[seis pulgadas](source:book)", ""},
		{"en", "[99 lb](source:nowhere)", ""}, // the join reports the source
		// sourced, and wrong
		{"en", "[137 lb](source:book)", "figure-source-differs at 137 lb"},
		{"en", "[102 to 175 lb](source:trial)", "figure-source-differs at 102 to 175 lb"},
		{"en", "[101 to 174 lb](source:trial)", "figure-source-differs at 101 to 174 lb"},
		{"en", "[6](source:book)", "figure-source-differs at 6"},
		{"en", "[6 devices](source:book)", "figure-source-differs at 6 devices"},
		{"en", "[1 ft](source:book)", "figure-source-differs at 1 ft"},
		{"en", "[0.2 lb/ac](source:trial)", "figure-source-differs at 0.2 lb/ac"},
		{"en", "[about 140 lb](source:book)", "figure-source-differs at about 140 lb"},
		{"en", "[136 oz/tree](source:book)", "figure-source-unit at 136 oz/tree"},
		{"en", "[136 lb NO3](source:book)", "figure-source-unit at 136 lb NO3"},
		{"en", "[136 lb](source:book) of potash", "figure-source-unit at 136 lb"},
		{"en", "[25 to 35 lb/ac](source:book) of product", "figure-source-unit at 25 to 35 lb/ac"},
		{"en", "[68 lb](source:empty)", "figure-unrecorded at 68 lb"},
		{"es", "[137 libras](source:book)", "figure-source-differs at 137 libras"},
		{"en", "[136 lb](source:book \"of urea\"), [136 lb](source:book \"of N\")", "figure-source-unit at 136 lb"},
		{"en", "[136 lb](source:book) (nitrate), [136 lb](source:book) (UAN-32 has less)", "figure-source-unit at 136 lb"},
		{"en", "[5](source:book) pounds, [five](source:book) pounds, [five](source:book) of them",
			"figure-source-unit at 5; figure-source-unit at five"},
		{"en", "[48 lb/ac](worked:soil.nitrogen) (nitrate moves), [48 lb/ac](worked:soil.nitrogen \"in the top foot\")", ""},
		// one of several figures of a source
		{"en", "[3 in](source:two \"in June\"), [4 in](source:two \"a week of July\"), [80 %](source:two \"in the top " +
			"layer\"), [85 %](source:two \"in two layers\")", ""},
		{"es", "[85 %](source:two \"de las raíces\")", ""},
		{"en", "[4 in](source:two \"in June\"), [3 in](source:two \"a week of July\"), [85 %](source:two \"in the top " +
			"layer\"), [80 %](source:two \"in two layers\")", "figure-source-differs at 4 in; figure-source-differs at 3 in; " +
			"figure-source-differs at 85 %; figure-source-differs at 80 %"},
		{"en", "[3 in](source:two), [3 in](source:two \"of rain\"), [80 %](source:two \"of the roots\")",
			"figure-source-which at 3 in; figure-source-which at 3 in; figure-source-which at 80 %"},
		{"en", "[5 in](source:two), [85 lb](source:two), [2 lb/ac](source:two)",
			"figure-source-which at 5 in; figure-source-unit at 85 lb; figure-source-unit at 2 lb/ac"},
		// numbers that stand against a figure
		{"en", "1[48 lb/ac](worked:soil.nitrogen), -[48 lb/ac](worked:soil.nitrogen), 0.[136 lb](source:book) of N",
			"figure-joined at 1; figure-joined at -; figure-joined at 0."},
		{"en", "40 to [48 lb/ac](worked:soil.nitrogen), 40–[48 lb/ac](worked:soil.nitrogen), between 5 and " +
			"[6 in](source:book), [48 lb/ac](worked:soil.nitrogen) to 60, 9 by [12 in](worked:soil.depth)",
			"figure-loose at 40; figure-loose at 40; figure-loose at 5; figure-loose at 60; figure-loose at 9"},
		{"en", "In 2026 to [48 lb/ac](worked:soil.nitrogen), row 3 to [12 in](worked:soil.depth), 12 – " +
			"[12 in](worked:soil.depth), 6:30 or [12 in](worked:soil.depth), 4 times [6 in](source:book), multiply 2 by " +
			"[48 lb/ac](worked:soil.nitrogen), [12 in](worked:soil.depth) or 1 of 3, 3 to [5](source:book)", ""},
		{"es", "de 40 a [48 lb/ac](worked:soil.nitrogen), en la hilera 3 a [12 in](worked:soil.depth)",
			"figure-loose at 40"},
		// loose
		{"en", "There are 48 lb/ac, and *three to\nfour* ounces.",
			"figure-loose at 48 lb/ac; figure-loose at three to\nfour* ounces"},
		{"en", "[48 lb/ac](worked:soil.nitrogen) at [12 in](worked:soil.depth). Read [the 12 inches](a.md) and " +
			"[48 lb/ac of it](a.md), or [50 lb/ac](a.md).", "figure-alone at 50 lb/ac"},
		{"en", "The sum is [48 lb/ac](worked:soil.nitrogen), [12 in](worked:soil.depth) deep.\n\n" +
			"![48 pounds an acre](b.svg) " +
			"![47 pounds an acre](b.svg)", "figure-alone at 47 pounds an acre"},
		{"en", "Use 30&nbsp;lb or 5\\% of it.", "figure-loose at 30&nbsp;lb; figure-loose at 5\\%"},
		{"en", "> quoted 30 lb\n\n- item 31 lb\n\nterm 32 lb\n: meaning 33 lb\n\n| 34 lb | b |\n| - | - |\n| 35 lb | c |",
			"figure-loose at 30 lb; figure-loose at 31 lb; figure-loose at 32 lb; figure-loose at 33 lb; " +
				"figure-loose at 34 lb; figure-loose at 35 lb"},
		{"en", "| Year | N (lb/ac) | Depth, in |\n| - | - | - |\n| 2026 | 30 | |\n| 2027 | | about 6 |\n" +
			"| 2028 | b | 7 lb |",
			"figure-loose at 30; figure-loose at about 6; figure-loose at 7 lb"},
		{"en", "| | First | Second |\n| - | - | - |\n| Pounds an acre | 30 | 40 |\n| Rows | 12 | 13 |",
			"figure-loose at 30; figure-loose at 40"},
		{"en", "| Row | Trees | In | L |\n| - | - | - | - |\n| 12 | 110 | 8 | 2 |\n\n## 12\n\n- 30", ""},
		{"en", "```worksheet a\ntitle: With 48 lb/ac\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\n" +
			"depth: 12 in\n```",
			"figure-alone at 48 lb/ac"},
		{"en", "A report of [12 ppm](worked:soil.nitrate). [See 12 ppm of ammonium-N](a.md), [12 ppm of nitrate-N](a.md).",
			"figure-alone at 12 ppm of ammonium-N"},
		{"en", "`30 lb` and\n\n    31 lb\n\n```text\n32 lb\n```\n\n<https://a.example/33-lb>",
			"figure-alone at 30 lb; figure-alone at 31 lb"},
		{"en", "`water: 30 in`, <!-- 31 lb --> <b>32 lb</b> [a](a.md \"33 lb\") ![b](b.svg \"34&nbsp;lb\")\n\n" +
			"```\n35 lb\n36 lb\n```\n\n<div>\n37 lb <!-- 38 lb\n39 lb --> 40 lb</div>\n\n<!--\n\n41 lb\n-->\n",
			"figure-loose at 32 lb; figure-alone at 33 lb; figure-alone at 34&nbsp;lb; figure-alone at 35 lb; " +
				"figure-alone at 36 lb; figure-alone at 37 lb; figure-alone at 40 lb"},
		{"es", "Ponga 30 libras, media onza y el 5 por ciento.",
			"figure-loose at 30 libras; figure-loose at media onza; figure-loose at 5 por ciento"},
		{"fr", "Mettre 30 lb et trente livres.", "figure-loose at 30 lb"},
	} {
		if got := strings.Join(figuresOf(t, c.language, c.text), "; "); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

// Each offer in the note of a loose figure, written down as it says, is a figure that brings no message.
func TestNotesOfLooseFiguresHold(t *testing.T) {
	for _, text := range []string{"This layer holds 48 lb/ac", "This layer holds 48 pounds of nitrogen an acre",
		"This layer holds forty-eight pounds an acre", "The depth was 12 inches", "The depth was twelve inches",
		"A sample of a depth of 1 ft", "The need is between 3 and 4 oz a tree", "The need is 3–4 ounces a tree",
		"Removed with a ton are 136 pounds of nitrogen", "A growth of half a foot", "The report says 12 parts per million",
		"This layer holds 48# an acre", "The depth was 12\"", "The depth was 1′", "In this layer are 48 units of N an acre",
		"In one feed put 1 oz a tree"} {
		found, _ := looseOf(t, text+".")
		if len(found) != 1 || !strings.Contains(found[0].Note, ": write [") {
			t.Errorf("%q: %v", text, found)
			continue
		}
		_, link, _ := strings.Cut(found[0].Note, ": write ")
		link = link[:strings.Index(link, ")")+1]
		if said := figuresOf(t, "en", "Use "+link+"."); len(said) > 0 {
			t.Errorf("%q: the note says %s, and of that is said %v", text, link, said)
		}
	}
}

// looseOf gives the messages about a text below the worksheets of figureSheets.
func looseOf(t *testing.T, text string) (message.List, *Page) {
	t.Helper()
	sources, _, _ := config.LoadSources(fstest.MapFS{"s.yaml": {Data: []byte(figureSources)}}, "s.yaml")
	doc, _ := markdown.Parse(&message.Source{Name: "a.md", Text: []byte(figureSheets + text)}, 0)
	work, _ := worksheet.Bind(doc, calc.Standard(), "en")
	page := &Page{Name: "a.md", Source: doc.Source, Language: "en", Document: doc, Work: work}
	return Alone(page, &Site{Sources: sources}, Rules{}), page
}
