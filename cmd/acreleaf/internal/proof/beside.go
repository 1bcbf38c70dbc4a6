package proof

import (
	"fmt"
	"strings"

	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// joined reports digits, a point or a minus right before a figure, which make another number of it.
func (c *figureCheck) joined(p *markdown.Prose, f markdown.ProseFigure) bool {
	before := p.Text[:f.At]
	n := glued(before)
	if n == 0 || !startsNumber(f.Text) {
		return false
	}
	stuck := before[len(before)-n:]
	c.fault("figure-joined", p.Span(f.At-n, f.At),
		fmt.Sprintf("%q is right before this figure, so that a reader sees %s%s", stuck, stuck, f.Text),
		"write the whole number between the brackets, or a space before them")
	return true
}

// beside reports a number before or after a figure that takes its unit from the figure.
func (c *figureCheck) beside(p *markdown.Prose, f markdown.ProseFigure) {
	at := f.At + len(markdown.Stand)
	if b, leads := c.language.NumberBefore(p.Text[:f.At]); leads && b.SharesUnit(c.unitOf(f.Figure)) {
		c.shared(p, b.From, b.To, f.Figure)
	}
	if b, trails := c.language.NumberAfter(p.Text[at:]); trails && b.SharesUnit(c.unitOf(f.Figure)) {
		c.shared(p, at+b.From, at+b.To, f.Figure)
	}
}

// shared reports a number that takes its unit from a figure and is tied to nothing itself.
func (c *figureCheck) shared(p *markdown.Prose, from, to int, f *markdown.Figure) {
	number, of := p.Text[from:to], c.unitOf(f).String()
	whole := number + " " + of
	if below, money := strings.CutPrefix(of, "$"); money {
		whole = "$" + number + below
	}
	c.fault("figure-loose", p.Span(from, to),
		fmt.Sprintf("the prose says %s beside %s, and nothing says where the %s comes from", number, f.Text, number),
		fmt.Sprintf("write both between the brackets if one answer is that range; for the %s by itself, %s", number,
			ways(whole, c.unitOf(f))))
}

// unitOf is the unit of the value that a worked figure follows, or the unit that a sourced figure says.
func (c *figureCheck) unitOf(f *markdown.Figure) unit.Unit {
	if worked := c.page.Work.Figure(f); worked != nil {
		return c.page.Work.Example(worked.Bound).Range(worked.Name).Unit
	}
	if found := c.language.Find(f.Text); f.Scheme != construct.Worked && len(found) == 1 {
		return found[0].Unit
	}
	return unit.Unit{}
}

// glued gives the length of digits, a point or a minus at the end of a text, with no space behind.
func glued(before string) int {
	if before == "" || before[len(before)-1] == ' ' {
		return 0
	}
	rest := strings.TrimRight(before, "0123456789.,")
	n := len(before) - len(rest)
	if n > 0 && strings.ContainsAny(before[len(rest):], "0123456789") {
		return n
	}
	for _, minus := range []string{"-", "−"} {
		if word, found := strings.CutSuffix(before, minus); found && (word == "" || strings.HasSuffix(word, " ")) {
			return len(minus)
		}
	}
	return 0
}

// startsNumber says whether a figure's text begins with a digit or a sign of money.
func startsNumber(text string) bool {
	return text != "" && strings.IndexByte("0123456789$.", text[0]) >= 0
}
