package site

import (
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// example is what the first answer at a glance of a page comes to, and from what. It is empty for a page without.
func example(m page.Metadata, work *worksheet.Page) render.Example {
	if len(m.Glance) == 0 {
		return render.Example{}
	}
	use, name, _ := strings.Cut(m.Glance[0].Text, ".")
	bound := work.Find(use)
	if bound == nil {
		return render.Example{} // a figure that is not there was a fault
	}
	o := work.Example(bound)
	if !o.There(name) {
		return render.Example{}
	}
	return render.Example{Label: label(bound.Sheet, name), Answer: o.Text(name), From: from(o, name)}
}

// mostGivens keeps an example one line of text.
const mostGivens = 3

// from lists the first numbers that an outcome is worked from. A choice is no number.
func from(o sheet.Outcome, answer string) string {
	var givens []string
	for _, g := range o.Use.Sheet.Givens {
		if len(g.Choices) == 0 && g.Name != answer && o.Stated(g.Name) && len(givens) < mostGivens {
			givens = append(givens, o.Text(g.Name))
		}
	}
	return strings.Join(givens, ", ")
}

// glanceFrom lists the numbers that all answers at a glance are worked from, if they are the same.
func glanceFrom(m page.Metadata, work *worksheet.Page) string {
	use := ""
	for _, item := range m.Glance {
		name, _, _ := strings.Cut(item.Text, ".")
		if use != "" && name != use {
			return ""
		}
		use = name
	}
	return example(m, work).From
}
