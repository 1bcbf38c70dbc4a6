package proof

import (
	"fmt"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
)

// mostOthers is how many numbers of a kind a note names.
const mostOthers = 3

// others names what the page has of the number's kind and substance, the likeliest first and one a line. The number may
// be one of them, even with another value, and only the author knows.
func (c *figureCheck) others(a prose.Amount, around topic) string {
	var list []string
	for _, f := range c.fits(a, around, c.table.inCell) {
		list = append(list, fmt.Sprintf("%s%s (%s)", f.is(), inUnit(a.Unit, f.value), f.target))
	}
	list = append(list, c.akin(a)...)
	if len(list) == 0 {
		return ""
	}
	if more := len(list) - mostOthers; more > 0 {
		list = append(list[:mostOthers], fmt.Sprintf("and %d more", more))
	}
	return "of this kind the page has\n" + strings.Join(list, ";\n") +
		".\nIf it is one of these, write that number and tie it there; else\n"
}

// inUnit tells a value in the unit that the author wrote, where that is another: " = 53.8 kg N/ha".
func inUnit(written unit.Unit, value unit.Range) string {
	by, ok := prose.Convert(written, value.Unit)
	if back := by.Inverse(); ok && by.Apply(1) != 1 {
		return " = " + unit.Range{Low: back.Apply(value.Low), High: back.Apply(value.High), Unit: written}.String()
	}
	return ""
}

// akin lists the numbers of the page that are of a number's kind with one step between: what is counted was left unsaid
// ("46.4 to the acre" of trees), or the nutrient is told as another form of it.
func (c *figureCheck) akin(a prose.Amount) []string {
	var list []string
	all := c.candidates()
	for i := range all {
		n := &all[i]
		if _, _, fits := inUnitOf(a, n.value); fits || n.day != "" || c.table.inCell && n.given {
			continue
		}
		by, err := a.Unit.To(n.value.Unit)
		switch {
		case a.Unit.Shorter(n.value.Unit):
			list = append(list, fmt.Sprintf("%s (%s)", n.is(), n.target))
		case err == nil && compounds(a.Unit) != compounds(n.value.Unit):
			back := by.Inverse()
			told := unit.Range{Low: back.Apply(n.value.Low), High: back.Apply(n.value.High), Unit: a.Unit}
			list = append(list, fmt.Sprintf("%s = %s, converted by atomic weights (%s)", n.is(), told, n.target))
		}
	}
	return list
}

// compounds are the forms of nutrients in a unit that are no elements: the nitrate of "ppm NO3".
func compounds(u unit.Unit) string {
	var found []string
	for _, w := range strings.FieldsFunc(u.String(), func(r rune) bool { return r == ' ' || r == '/' }) {
		switch w {
		case "NO3", "NO2", "NH4", "NH3", "urea", "P2O5", "K2O", "SO4", "CaO":
			found = append(found, w)
		}
	}
	return strings.Join(found, " ")
}

// alike says whether two units are told in one way. Some measure the same and are never taken for each other: a share
// in percent and one in ppm, what is in a gallon and what an inch of water brings to an acre.
func alike(a, b unit.Unit) bool {
	below := func(u unit.Unit) int { return strings.Count(u.String(), "/") + strings.Count(u.String(), " per ") }
	inPercent := func(u unit.Unit) bool { return strings.HasPrefix(u.String(), "%") }
	return below(a) == below(b) && inPercent(a) == inPercent(b)
}
