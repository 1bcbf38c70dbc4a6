package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
)

// A farm is a made-up office with many guides, for benchmarks. The same seed always writes the same bytes.
type farm struct {
	guides int
	random *rand.Rand
	text   strings.Builder // of the guide being written
}

// writeFarm writes a content folder with so many guides and gives the Markdown of each, without its metadata.
func writeFarm(tb testing.TB, folder string, guides int) [][]byte {
	tb.Helper()
	f := &farm{guides: guides, random: rand.New(rand.NewPCG(1868, uint64(guides)))}
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			tb.Fatal(err)
		}
	}
	if err := os.MkdirAll(filepath.Join(folder, "guides"), 0o755); err != nil {
		tb.Fatal(err)
	}
	write("site.yaml", "office: Thousand Rows Orchard Office\ninvented: true\nnotice: Everything here is made up.\n")
	write("sources.yaml", rowBook())
	const home = "Guides for the year, in the order of its work.\n"
	write("home.md", "---\ntitle: Thousand Rows\nsummary: Guides for the year.\n---\n"+home)
	bodies := [][]byte{[]byte(home)}
	for i := range guides {
		metadata, body := f.metadata(i), f.guide(i)
		write(guideName(i), metadata+body)
		bodies = append(bodies, []byte(body))
	}
	return bodies
}

func guideName(i int) string { return fmt.Sprintf("guides/block-%05d.md", i) }

var partsOfSeason = []string{"before bud break", "at leaf-out", "in spring", "in summer", "at harvest", "after harvest"}

func (f *farm) metadata(i int) string {
	return fmt.Sprintf("---\ntitle: What block %d needs this year\nsummary: %s\nreviewed: 2026-09-%02d\n"+
		"review-every: 24 months\norder: %d\nseason: %s\nglance: [block.%s]\n---\n",
		i, f.pick(sentences), 1+i%30, i, partsOfSeason[i*len(partsOfSeason)/f.guides], lessons[i%len(lessons)].answer)
}

// guide writes about five kilobytes of text with what guides have in them.
func (f *farm) guide(i int) string {
	f.text.Reset()
	f.paragraph(5)
	f.say("## Read the report first\n\n")
	f.paragraph(4)
	for range 5 {
		f.say("- **%s** %s\n", f.pick(subjects), f.pick(sentences))
	}
	f.say("\n## Work it out\n\n")
	f.lesson(lessons[i%len(lessons)])
	f.paragraph(4)
	f.say("### %s in this block\n\n", f.pick(subjects))
	f.paragraph(5)
	f.say("| Row | %s | %s | Look |\n|---|---:|---:|---|\n", f.pick(subjects), f.pick(subjects))
	for row := range 5 {
		f.say("| %d | %d | *%d* | %s |\n", row+1, f.random.IntN(90), f.random.IntN(90), f.pick(subjects))
	}
	f.say("\n")
	if i%3 == 0 {
		f.say("```reckoner\ncalculation: soil-nitrogen\ndown: depth = 6, 12, 18, 24 in\n" +
			"across: nitrate = 5, 10, 15, 20 ppm NO3-N\nshow: nitrogen\nmark: 25 to 35 lb N/ac\n```\n\n")
	}
	f.say("## What it does not tell you\n\n")
	f.paragraph(6)
	f.paragraph(5)
	f.say("> **CAUTION** %s %s\n\n", f.pick(sentences), f.pick(sentences))
	next, later := (i+1)%f.guides, (i+7)%f.guides
	f.say("Next, see [block %d](%s), or [the walk there](%s#work-it-out), and [write to us](https://rows.example.org).\n",
		next, filepath.Base(guideName(next)), filepath.Base(guideName(later)))
	return f.text.String()
}

// A recipe is a worksheet with the numbers left open, and the figures that the prose states of it.
type recipe struct {
	calculation, first, second, answer string
	unitOfFirst, unitOfSecond          string
	low                                int // of the first given; it varies over twenty
	second2                            []int
}

var lessons = []recipe{
	{"soil-nitrogen", "nitrate", "depth", "nitrogen", "ppm NO3-N", "in", 4, []int{6, 12, 24}},
	{"water-nitrogen", "nitrate", "water", "nitrogen", "ppm NO3-N", "in", 2, []int{10, 24, 36}},
	{"tree-rate", "rate", "trees", "nitrogen", "oz N/tree", "trees/ac", 1, []int{75, 110, 141}},
}

// lesson writes a worksheet and a paragraph that states its givens and its answer.
func (f *farm) lesson(r recipe) {
	s := calc.Standard().Find(r.calculation)
	first := fmt.Sprintf("%d %s", r.low+f.random.IntN(20), r.unitOfFirst)
	second := fmt.Sprintf("%d %s", r.second2[f.random.IntN(len(r.second2))], r.unitOfSecond)
	f.say("```worksheet block\ncalculation: %s\n%s: %s\n%s: %s\n```\n\n", r.calculation, r.first, first, r.second, second)
	f.say("With [%s](worked:block.%s) and [%s](worked:block.%s) the answer is [%s](worked:block.%s). ",
		first, r.first, second, r.second, answerOf(s, r, first, second), r.answer)
	f.say("Others print [%d lb/ac](source:row-book \"of N\").\n\n", 10+5*f.random.IntN(12))
}

// rowBook has every figure that the guides of a farm may cite.
func rowBook() string {
	text := "row-book:\n  title: The book of rows\n  kind: memory\n  figures:\n"
	for i := range 12 {
		text += fmt.Sprintf("    %d lb N/ac: of N\n", 10+5*i)
	}
	return text
}

func answerOf(s *sheet.Sheet, r recipe, first, second string) string {
	values := map[string]float64{}
	for name, text := range map[string]string{r.first: first, r.second: second} {
		entry, err := s.FindGiven(name).Read(text)
		if err != nil {
			panic(err) // the recipe is wrong
		}
		values[name] = entry.Value
	}
	outcome, err := s.Evaluate(values)
	if err != nil {
		panic(err)
	}
	return outcome.Value(r.answer).String()
}

func (f *farm) say(format string, args ...any) { fmt.Fprintf(&f.text, format, args...) }

func (f *farm) pick(from []string) string { return from[f.random.IntN(len(from))] }

// paragraph writes sentences, a line each, now and then with a word that stands out.
func (f *farm) paragraph(sentenceCount int) {
	for i := range sentenceCount {
		if i == 2 {
			f.say("Call it *%s* or `%s`. ", f.pick(subjects), f.pick(subjects))
		}
		f.say("%s\n", f.pick(sentences))
	}
	f.say("\n")
}

var subjects = []string{"Nitrate", "Depth", "Spacing", "The well", "Leaf color", "Root spread", "The emitter line",
	"Cover crop", "Sandy soil", "Shoot growth"}

var sentences = []string{
	"What the trees do not take up can wash below the roots with the next long set.",
	"Walk the rows before you order, and look at the tips of the shoots and not only at the leaves.",
	"A report is a picture of one day, and a wet month can make it old.",
	"Sample where the roots and the emitters are, because the middle of the alley tells you little.",
	"Keep the bag cool on the way to the lab, and write the block and the depth on it.",
	"If two reports do not agree, look at the depth first and at the lab second.",
	"Young trees have a small root ball, so small feeds reach more of them than one large one.",
	"Write down what you did and when, since next year nobody remembers it.",
	"The label comes first, and your county's rules come with it.",
	"Ask the lab how it states nitrate when the line does not say so.",
	"The well can bring a good part of what a block needs, and it brings it whether you count it or not.",
	"Shallow soil over hardpan holds less water than its color lets you think.",
	"A strong cover crop takes nitrogen in spring and gives some of it back in summer.",
	"When leaves are pale in one corner only, look for a broken line before you look for a shortage.",
	"It costs less to measure than to guess, and it costs the groundwater less too.",
}
