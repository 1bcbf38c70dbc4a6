package main

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
)

const calculationsBefore = `These calculations come with the program.
For each one the page lists what is given, what is answered, and a
block that you can copy into your own page. A given that may be left out has the sign of a comment in front, ` +
	"`#`" + `. Take that sign away to use it.
[Worksheets](worksheets.md) says what to do with a block, and
[your own calculations](own-calculations.md) how to add one.

> **NOTICE** A block is filled with ordinary numbers, which are nobody's own. Put in yours before you act on an answer.

> **DANGER** Some materials in these lists are acid or ammonia. They burn skin, eyes and lungs. Read the label and wear
> what it asks. Never inject without backflow protection, and follow your local code.
`

// calculationPage is made from the catalogue.
func calculationPage() *manualPage {
	var b strings.Builder
	b.WriteString(calculationsBefore)
	lists := map[string]string{} // where a list of choices was printed
	for _, s := range calc.Standard().All() {
		fmt.Fprintf(&b, "\n## %s\n\n%s\n\n", s.Name, escaped(s.Summary))
		b.WriteString("| given | what it is | ordinary | taken |\n| --- | --- | --- | --- |\n")
		for _, g := range s.Givens {
			fmt.Fprintf(&b, "| `%s` | %s | `%s` | %s |\n", g.Name, plainCell(g.Label), g.Example(), taken(s, g, lists))
		}
		b.WriteString("\nIt answers:\n\n")
		for _, r := range s.Answers() {
			fmt.Fprintf(&b, "- `%s`: %s, %s\n", r.Name, escaped(r.Label), unitOf(r))
		}
		fmt.Fprintf(&b, "\n````text\n%s````\n", block(s))
	}
	return &manualPage{name: "calculations", title: "Every calculation", order: 30, body: b.String(),
		summary: "What each calculation takes and answers, with a block that is ready to copy."}
}

// unitOf is the unit of an answer, and the second one that it is shown in.
func unitOf(r *sheet.Result) string {
	switch text := r.Unit.String(); {
	case r.Date:
		return "a day"
	case text == "":
		return "a plain number"
	case r.Also != "":
		return fmt.Sprintf("`%s`, also `%s`", text, r.Also)
	default:
		return "`" + text + "`"
	}
}

// taken says what a given takes: its choices, or its range and other units.
func taken(s *sheet.Sheet, g *sheet.Given, lists map[string]string) string {
	text := ""
	if len(g.Choices) > 0 {
		var names []string
		for _, o := range g.Choices {
			names = append(names, "`"+o.Name+"`")
		}
		text = strings.Join(names, ", ")
		if first := lists[text]; first != "" {
			return fmt.Sprintf("one of the list under [%s](#%s)", first, first)
		}
		if len(names) > 4 {
			lists[text] = s.Name
		}
		return text
	}
	text = fmt.Sprintf("`%s` to `%s`", exampleOf(g, g.Low), exampleOf(g, g.High))
	for _, other := range g.Units {
		text += ", or in `" + other + "`"
	}
	if g.Else.Unit != "" {
		text += ", or `" + g.Else.Unit + "`"
	}
	if g.Optional {
		text += "; may be left out"
	}
	return text
}

// exampleOf is a value of a given as it may be written.
func exampleOf(g *sheet.Given, value float64) string {
	other := *g
	other.Typical = value
	return other.Example()
}

// block is a worksheet of a calculation with its ordinary numbers. What may be left out is a remark, unless the numbers
// give no answer without it.
func block(s *sheet.Sheet) string {
	entries := map[string]sheet.Entry{}
	var left []*sheet.Given
	for _, g := range s.Givens {
		if g.Optional {
			left = append(left, g)
		} else {
			entries[g.Name], _ = g.Read(g.Example())
		}
	}
	bench := sheet.NewBench(s)
	for _, err := bench.Work(entries); err != nil && len(left) > 0; _, err = bench.Work(entries) {
		entries[left[0].Name], _ = left[0].Read(left[0].Example())
		left = left[1:]
	}
	var b strings.Builder
	fmt.Fprintf(&b, "```worksheet my-%s\ncalculation: %s\n", s.Name, s.Name)
	for _, g := range s.Givens {
		remark := ""
		if _, stated := entries[g.Name]; !stated {
			remark = "# "
		}
		fmt.Fprintf(&b, "%s%s: %s\n", remark, g.Name, g.Example())
	}
	b.WriteString("```\n")
	return b.String()
}

// cautions are what a page with dangerous work must have beside the block.
const cautions = `> **WARNING** Acid and ammonia burn. Never inject without backflow protection.
> Test the water that people drink. Keep raw manure from nuts on the ground.
`

// Every block to copy makes a page without a fault, whole and with its answers.
func TestManualBlocks(t *testing.T) {
	for _, s := range calc.Standard().All() {
		content := fstest.MapFS{}
		for file, text := range faultGround {
			content[file] = &fstest.MapFile{Data: []byte(text)}
		}
		page := "---\ntitle: Try\nsummary: A block.\n---\n\n" + block(s) + "\n" + cautions
		content["guides/try.md"] = &fstest.MapFile{Data: []byte(page)}
		made, messages := book.NewMaker(book.Options{Content: content, Name: "content"}, site.New).Make(book.Changes{})
		if made == nil {
			var said strings.Builder
			message.Printer{}.Print(&said, messages)
			t.Errorf("%s\n%s", block(s), &said)
			continue
		}
		for _, f := range made.Files {
			if f.Path == "guides/try/index.html" && strings.Contains(string(f.Bytes()), `<div class="void">`) {
				t.Errorf("%s has no answer:\n%s", s.Name, block(s))
			}
		}
	}
}
