package book

import (
	"cmp"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// An Example is what the first answer at a glance of a page comes to. It is empty for a page without.
type Example struct {
	Label  string // what it is: "Nitrogen in this layer"
	Lang   string // of the label, where it is not that of the page
	Answer string // "48 lb N/ac"
	From   string // "12 ppm NO3-N, 12 in"
}

// ExampleOf is the example of a page, and from what it is worked.
func ExampleOf(m page.Metadata, work *worksheet.Page) Example {
	if len(m.Glance) == 0 {
		return Example{}
	}
	use, name, _ := strings.Cut(m.Glance[0].Text, ".")
	bound := work.Find(use)
	if bound == nil {
		return Example{} // a figure that is not there was a fault
	}
	o := work.Example(bound)
	if !o.There(name) {
		return Example{}
	}
	label := Label(bound.Sheet, name)
	return Example{Label: label, Lang: bound.Sheet.LangOf(label, o.Use.Language()), Answer: o.Text(name),
		From: from(o, name)}
}

// mostGivens keeps an example one line of text.
const mostGivens = 3

// from lists the first numbers that an outcome is worked from. A choice is no number, and without a unit nothing says
// what a number counts.
func from(o sheet.Outcome, answer string) string {
	var givens []string
	for _, g := range o.Use.Sheet.Givens {
		told := g.Date || len(g.Choices) == 0 && g.Unit.String() != ""
		if told && g.Name != answer && o.Stated(g.Name) && len(givens) < mostGivens {
			givens = append(givens, o.Text(g.Name))
		}
	}
	return strings.Join(givens, ", ")
}

// Label is what the reader sees for a given, step or answer.
func Label(s *sheet.Sheet, name string) string {
	if g := s.FindGiven(name); g != nil {
		return g.Label
	}
	for _, r := range s.Results {
		if r.Name == name {
			return cmp.Or(r.Label, name)
		}
	}
	return name
}
