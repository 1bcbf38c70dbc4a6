package proof

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/config"
)

// ties says what to type for a number that is tied to nothing: what of the page and its sources it can be; else what of
// the page is of its kind and has another value, and the ways to tie it to what the page does not have.
func (c *figureCheck) ties(a prose.Amount, text string, around topic) string {
	linked := c.linkText(a, text)
	if offers, moves := c.offers(a, text, around); len(offers) > 0 {
		note := c.contrary(a, around) + strings.Join(offers, ";\nor ")
		if moves {
			note += fmt.Sprintf(";\nor, if it holds whatever is typed there, put after [%s] %s", linked, byHand(a.Unit))
		}
		return note
	}
	return c.others(a, around) + ways(linked, a.Unit)
}

// ways lists the ways to tie a number by hand.
func ways(linked string, u unit.Unit) string {
	return fmt.Sprintf("write [%s] and right after it (worked:NAME.ANSWER) if a worksheet works it out, %s", linked,
		byHand(u))
}

// byHand lists the ways to tie a number to what no worksheet has.
func byHand(u unit.Unit) string {
	note := "(source:ID \"what it is of\") if a source in sources.yaml gives it, or (record:YYYY-MM-DD \"what it is\") " +
		"if it is a record or a price of your own"
	if isSize(u) {
		note += ", or (size:) if it is a plain size"
	}
	return note
}

// isSize says whether a unit may be that of a plain size: a length, an area, a volume or a weight of no nutrient.
func isSize(u unit.Unit) bool {
	return prose.IsSize(u)
}

// offers lists what a number can be tied to: of the same kind, substance and value, and with words of its own around
// the number. Moves says that all of it is what a reader types or chooses, so that a rule of the trade does not fit.
func (c *figureCheck) offers(a prose.Amount, text string, around topic) (offers []string, moves bool) {
	moves = true
	fits := c.fits(a, around, c.table.inCell)
	for _, f := range fits {
		if f.same && f.words > 0 && 2*f.words > fits[0].words {
			offers = append(offers, fmt.Sprintf("%s: write [%s](worked:%s)", f.is(), c.followed(a, text), f.target))
			moves = moves && f.chosen
		}
	}
	for _, id := range c.site.Sources.IDs() {
		for i := range c.site.Sources[id].Figures {
			f := &c.site.Sources[id].Figures[i]
			low, high, ok := inUnitOf(a, f.Range)
			if of := c.wordsOf(c.figureOf(f)); ok && a.AgreesClosely(low, high) && isAbout(around, of) {
				offers = append(offers, fmt.Sprintf("source %q gives %s, %s: write [%s]%s", id, f.Range, f.For,
					c.linkText(a, text), sourceLink(id, f)))
				moves = false
			}
		}
	}
	return offers, moves
}

// contrary names the page's own number that the words around a number are of, if it has another value.
func (c *figureCheck) contrary(a prose.Amount, around topic) string {
	fits := c.fits(a, around, c.table.inCell)
	if len(fits) == 0 || fits[0].words == 0 {
		return ""
	}
	best := slices.DeleteFunc(fits, func(f fit) bool { return f.words < fits[0].words })
	if slices.ContainsFunc(best, func(f fit) bool { return f.same }) {
		return ""
	}
	return fmt.Sprintf("%s (%s): if that is meant, write its number; else\n", best[0].is(), best[0].target)
}

// isAbout says whether a sentence is about what a source's figure is of: more than one word of it is there, or all.
func isAbout(around, of topic) bool {
	shared := around.shared(of)
	return shared > 1 || shared == 1 && len(of) == 1
}

// sourceLink is the link to a figure of a source.
func sourceLink(id string, f *config.SourceFigure) string {
	return fmt.Sprintf("(source:%s \"%s\")", id, strings.ReplaceAll(f.For, `"`, `\"`))
}

// followed is the text of a worked figure, whose number is in digits.
func (c *figureCheck) followed(a prose.Amount, text string) string {
	if a.Digits {
		return c.linkText(a, text)
	}
	return unit.Range{Low: a.Low, High: a.High, Unit: a.Unit}.String()
}
