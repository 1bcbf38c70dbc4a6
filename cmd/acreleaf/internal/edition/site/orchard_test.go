package site

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing/fstest"
)

// An orchard is a content folder that is worked on: pages in two languages, calculations, sources and pictures.
type orchard struct {
	random *rand.Rand
	files  fstest.MapFS

	pages                      map[string]*leaf
	factors                    map[string]int // of the calculations in files, by name
	pictures                   map[string]int // their content
	name, languages, mark      string
	asked                      string // the questions of the home page
	bookTitle, bookFigure      string
	bibliography, home, spoilt bool
	homeTwin                   bool // there is a home page in Spanish
}

// twoLanguages are those of the site, as far as the theme has words for them.
var twoLanguages = "[" + strings.Join(languagesOfTheme(), ", ") + "]"

// A leaf is a page of an office.
type leaf struct {
	title, season, heading string
	order, nitrate         int
	text, link, picture    string
	changed                int    // the version of what it tells of its change, which feeds carry
	uses                   string // a calculation of the office's own
	factor                 int    // of the calculation that is in it; 0 for none
	cites                  string
	asks                   string // the condition of a passage
	translates             string // the page that it translates into Spanish
	spanish                bool   // it is in Spanish, and translates none
	slip                   string // what is wrong with it
}

func newOrchard(random *rand.Rand) *orchard {
	o := &orchard{random: random, files: fstest.MapFS{}, pages: map[string]*leaf{}, factors: map[string]int{"spread": 3},
		pictures: map[string]int{"a.png": 1, "b.png": 1}, name: "Test Row Orchard Office", languages: twoLanguages,
		bookTitle: "The book of rows", bookFigure: "68 lb", bibliography: true, home: true}
	for i := range 12 {
		o.pages[fmt.Sprintf("guides/block-%02d.md", i)] = o.leaf(i)
	}
	if strings.Contains(twoLanguages, "es") {
		o.pages["guides/fila-03.md"] = o.twin(3)
	}
	o.pages["manual/press.md"] = o.leaf(1)
	o.pages["manual/proof.md"] = o.leaf(2)
	o.write()
	return o
}

func (o *orchard) leaf(order int) *leaf {
	l := &leaf{title: fmt.Sprint("Block ", order), season: "spring", heading: "Deep", order: order, nitrate: 12,
		text: "Text.", link: o.anyName() + "#deep", cites: "book"}
	switch order % 4 {
	case 0:
		l.uses = "spread"
	case 1:
		l.picture = "../a.png"
	}
	if order == 2 {
		l.factor = 2
	}
	return l
}

// twin is a page that translates a block.
func (o *orchard) twin(block int) *leaf {
	l := o.leaf(20)
	l.translates = fmt.Sprintf("block-%02d.md", block)
	return l
}

func (o *orchard) anyName() string { return fmt.Sprintf("../guides/block-%02d.md", o.random.IntN(12)) }

// An edit is one thing that an author does.
type edit struct {
	name string
	do   func(o *orchard, l *leaf)
}

var edits = []edit{
	{"text", func(o *orchard, l *leaf) { l.text = fmt.Sprint("Text ", o.random.IntN(9)) }},
	{"changed", func(o *orchard, l *leaf) { l.changed = o.random.IntN(9) }},
	{"title", func(o *orchard, l *leaf) { l.title = fmt.Sprint("Title ", o.random.IntN(9)) }},
	{"order", func(o *orchard, l *leaf) { l.order = o.random.IntN(15) }},
	{"season", func(o *orchard, l *leaf) { l.season = []string{"spring", "summer", "fall"}[o.random.IntN(3)] }},
	{"heading", func(o *orchard, l *leaf) { l.heading = []string{"Deep", "Wide"}[o.random.IntN(2)] }},
	{"heading again", func(o *orchard, l *leaf) { l.heading = []string{"Deep", "Wide"}[o.random.IntN(2)] }},
	{"link", func(o *orchard, l *leaf) { l.link = o.anyName() }},
	{"anchor", func(o *orchard, l *leaf) { l.link = o.anyName() + "#deep" }},
	{"picture of", func(o *orchard, l *leaf) { l.picture = []string{"", "../a.png", "../b.png"}[o.random.IntN(3)] }},
	{"picture", func(o *orchard, l *leaf) { o.pictures[[]string{"a.png", "b.png"}[o.random.IntN(2)]]++ }},
	{"no picture", func(o *orchard, l *leaf) { delete(o.pictures, "b.png") }},
	{"nitrate", func(o *orchard, l *leaf) { l.nitrate = 4 + o.random.IntN(20) }},
	{"factor", func(o *orchard, l *leaf) { l.factor = o.random.IntN(4) }},
	{"use", func(o *orchard, l *leaf) { l.uses = []string{"", "spread", "own", "own"}[o.random.IntN(4)] }},
	{"file factor", func(o *orchard, l *leaf) { o.factors["spread"] = 1 + o.random.IntN(5) }},
	{"own file", func(o *orchard, l *leaf) { o.factors["own"] = 1 + o.random.IntN(5) }},
	{"no own file", func(o *orchard, l *leaf) { delete(o.factors, "own") }},
	{"cites", func(o *orchard, l *leaf) { l.cites = []string{"", "book", "rule"}[o.random.IntN(3)] }},
	{"asks", func(o *orchard, l *leaf) {
		l.asks = []string{"", `soil.nitrogen > "40 lb N/ac"`, `soil.depth > "1 ft"`, `own.reach > "20 ft"`,
			`soil.nitrogen > "-1 lb N/ac"`, "soil.nitrogn > 0"}[o.random.IntN(6)]
	}},
	{"book title", func(o *orchard, l *leaf) { o.bookTitle = fmt.Sprint("The book of rows ", o.random.IntN(5)) }},
	{"book figure", func(o *orchard, l *leaf) { o.bookFigure = []string{"68 lb", "68 lb", "70 lb"}[o.random.IntN(3)] }},
	{"bibliography", func(o *orchard, l *leaf) { o.bibliography = o.random.IntN(4) > 0 }},
	{"office", func(o *orchard, l *leaf) { o.name = fmt.Sprint("Office ", o.random.IntN(5)) }},
	{"languages", func(o *orchard, l *leaf) {
		o.languages = []string{"[en]", twoLanguages, twoLanguages}[o.random.IntN(3)]
	}},
	{"mark", func(o *orchard, l *leaf) { o.mark = strings.Repeat("# \n", o.random.IntN(3)) }},
	{"home", func(o *orchard, l *leaf) { o.home = o.random.IntN(3) > 0 }},
	{"home twin", func(o *orchard, l *leaf) {
		o.homeTwin = strings.Contains(twoLanguages, "es") && o.random.IntN(2) == 0
	}},
	{"asked", func(o *orchard, l *leaf) {
		page := []string{"guides/block-01.md", "gone.md"}[o.random.IntN(2)]
		o.asked = []string{"", "questions:\n  " + page + ": What?\n"}[o.random.IntN(2)]
	}},
	{"spoil", func(o *orchard, l *leaf) { o.spoilt = o.random.IntN(3) == 0 }},
	{"slip", func(o *orchard, l *leaf) {
		l.slip = []string{"[it](gone.md)", "a\x00b", "[9 lb/ac](worked:soil.nitrogen)", "# Two\n\n# Two"}[o.random.IntN(4)]
	}},
	{"new page", func(o *orchard, l *leaf) { o.pages[fmt.Sprintf("guides/new-%d.md", o.random.IntN(4))] = o.leaf(20) }},
	{"new twin", func(o *orchard, l *leaf) {
		if strings.Contains(twoLanguages, "es") {
			block := o.random.IntN(12)
			o.pages[fmt.Sprintf("guides/fila-%02d.md", block)] = o.twin(block)
		}
	}},
	{"translates", func(o *orchard, l *leaf) {
		if l.translates != "" {
			l.translates = []string{o.anyName()[10:], "fila-03.md", "gone.md"}[o.random.IntN(3)]
		}
	}},
	{"language", func(o *orchard, l *leaf) {
		l.spanish = l.translates == "" && strings.Contains(twoLanguages, "es") && o.random.IntN(2) == 0
	}},
	{"page again", func(o *orchard, l *leaf) { o.pages[o.anyName()[3:]] = o.leaf(5) }},
	{"bad name", func(o *orchard, l *leaf) { o.pages["guides/Bad.md"] = o.leaf(5) }},
}

// edit does one thing, and now and then fixes all that is wrong.
func (o *orchard) edit() string {
	names := slices.Sorted(maps.Keys(o.pages))
	name := names[o.random.IntN(len(names))]
	switch o.random.IntN(8) {
	case 0, 1:
		o.mend()
		return "mend"
	case 2:
		delete(o.pages, name)
		return "delete " + name
	}
	e := edits[o.random.IntN(len(edits))]
	e.do(o, o.pages[name])
	return e.name + " " + name
}

// mend takes away what is wrong in the pages. What it does not know of stays until another day.
func (o *orchard) mend() {
	delete(o.pages, "guides/Bad.md")
	o.asked = strings.Replace(o.asked, "gone.md", "guides/block-02.md", 1)
	o.home, o.bibliography, o.spoilt, o.languages, o.bookFigure = true, true, false, twoLanguages, "68 lb"
	for i := range 12 {
		name := fmt.Sprintf("guides/block-%02d.md", i)
		if o.pages[name] == nil {
			o.pages[name] = o.leaf(i)
		}
	}
	if o.random.IntN(2) == 0 {
		o.factors["own"] = 4
	}
	o.pictures["b.png"]++
	defines := false
	for _, name := range slices.Sorted(maps.Keys(o.pages)) {
		l := o.pages[name]
		l.slip, l.heading = "", "Deep"
		l.spanish = l.spanish && o.random.IntN(2) == 0
		if l.translates != "" {
			l.translates = "block-" + strings.TrimPrefix(name, "guides/fila-")
		}
		if !strings.HasSuffix(l.asks, `"40 lb N/ac"`) {
			l.asks = "" // the others are wrong, at least on some pages
		}
		if defines || o.factors["own"] > 0 {
			l.factor = 0
		}
		defines = defines || l.factor > 0
	}
	for _, l := range o.pages {
		if l.uses == "own" && !defines && o.factors["own"] == 0 {
			l.uses = ""
		}
	}
}

// write writes every file of the folder anew.
func (o *orchard) write() {
	clear(o.files)
	put := func(name, format string, args ...any) {
		o.files[name] = &fstest.MapFile{Data: fmt.Appendf(nil, format, args...)}
	}
	put("site.yaml", "office: %s\naddress: https://rows.example.org/\nlanguage: %s\n%s", o.name, o.languages, o.mark)
	if o.spoilt {
		put("site.yaml", "offices: %s\n", o.name)
	}
	if o.bibliography {
		put("sources.yaml", "%srule:\n  title: Rules\n  kind: memory\n  figures:\n    68 lb: a rule\n"+
			"book:\n  title: %s\n  kind: memory\n  figures:\n    %s: what it says\n", o.mark, o.bookTitle, o.bookFigure)
	}
	if o.home {
		put("home.md", "---\ntitle: Test Row\nsummary: Guides.\n%s---\nOf %s.\n", o.asked, o.name)
	}
	if o.homeTwin {
		put("inicio.md", "---\ntitle: La fila\nsummary: Todas.\nlanguage: es\ntranslates: home.md\n---\nDe %s.\n", o.name)
	}
	for name, factor := range o.factors {
		put("calculations/"+name+".yaml", "%s", calculation(factor))
	}
	for name, version := range o.pictures {
		var picture bytes.Buffer
		if err := png.Encode(&picture, image.NewGray(image.Rect(0, 0, version, 1))); err != nil {
			panic(err)
		}
		put(name, "%s", picture.String())
	}
	for name, l := range o.pages {
		put(name, "%s", l.markdown())
	}
}

func calculation(factor int) string {
	return fmt.Sprintf("title: Spread\nsummary: It spreads.\ngivens:\n  width:\n    label: Width\n    example: 10 ft\n"+
		"    range: 0 to 100\nconstants:\n  share:\n    label: Share\n    value: %d\n    source: book\n"+
		"work:\n  - reach = width * share\nanswers:\n  reach:\n    label: Reach\n    unit: ft\n", factor)
}

func (l *leaf) markdown() string {
	var w strings.Builder
	w.WriteString("---\n")
	if l.translates != "" {
		fmt.Fprintf(&w, "language: es\ntranslates: %s\n", l.translates)
	}
	if l.spanish {
		w.WriteString("language: es\n")
	}
	fmt.Fprintf(&w, "title: %s\nsummary: It is short.\norder: %d\nseason: %s\nglance: [soil.nitrogen]\n"+
		"changes: {2026-03-02: Version %d}\n---\n%s\n\n", l.title, l.order, l.season, l.changed, l.text)
	fmt.Fprintf(&w, "## %s\n\n```worksheet soil\ncalculation: soil-nitrogen\nnitrate: %d ppm NO3-N\ndepth: 12 in\n```\n\n"+
		"It is [%d lb/ac](worked:soil.nitrogen).\n\n", l.heading, l.nitrate, 4*l.nitrate)
	fmt.Fprintf(&w, "See [the other](%s).\n\n", l.link)
	if l.picture != "" {
		fmt.Fprintf(&w, "![A row of trees](%s)\n\n", l.picture)
	}
	if l.uses != "" {
		fmt.Fprintf(&w, "```worksheet own\ncalculation: %s\nwidth: 12 ft\n```\n\n", l.uses)
	}
	if l.factor > 0 {
		fmt.Fprintf(&w, "```calculation own\n%s```\n\n", calculation(l.factor))
	}
	if l.asks != "" {
		fmt.Fprintf(&w, "```passage\n- when: %s\n  say: Of [%d lb/ac](worked:soil.nitrogen) take it all.\n"+
			"- otherwise: Take part of it.\n```\n\n", l.asks, 4*l.nitrate)
	}
	if l.cites != "" {
		fmt.Fprintf(&w, "Others print [68 lb](source:%s).\n\n", l.cites)
	}
	fmt.Fprintf(&w, "%s\n", l.slip)
	return w.String()
}
