package proof

import (
	"bytes"
	"fmt"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// loose reports a number of the trade that is tied to nothing.
func (c *figureCheck) loose(a prose.Amount, text string, around topic, at message.Span) {
	c.fault("figure-loose", at, fmt.Sprintf("the prose says %s, and nothing says where that comes from", text),
		c.ties(a, text, around))
}

// spacing reports the two numbers of a spacing that share a unit: "18 by 22 ft".
func (c *figureCheck) spacing(p *markdown.Prose, first prose.Neighbor, a prose.Amount, around topic) {
	c.fault("figure-loose", p.Span(first.From, a.End),
		fmt.Sprintf("the prose says %s, and nothing says where the two come from", oneLine(p.Text[first.From:a.End])),
		fmt.Sprintf("write [%s %s] and the other number by themselves, each with its tie. For the other,\n%s",
			p.Text[first.From:first.To], a.Unit, c.ties(a, oneLine(p.Text[a.Start:a.End]), around)))
}

// linkText is what to write between the brackets: the author's words, or the same in digits when they say something
// else by themselves: "3 and 4 oz".
func (c *figureCheck) linkText(a prose.Amount, text string) string {
	if f, err := c.language.ReadFigure(text, "", a.Unit); err == nil && f.Low == a.Low && f.High == a.High {
		return text
	}
	return unit.Range{Low: a.Low, High: a.High, Unit: a.Unit}.String()
}

// metadata checks a text of the metadata, which can hold no links.
func (c *figureCheck) metadata(key, text string, at message.Span) {
	for _, a := range c.language.Find(text) {
		c.repeated(a, oneLine(text[a.Start:a.End]), "the "+key, c.wordsOf(text), c.within(at, text[a.Start:a.End]))
	}
}

// titles checks the titles of worksheets and tables, which hold no links either.
func (c *figureCheck) titles() {
	for _, b := range c.page.Document.Blocks {
		for _, e := range b.Entries {
			if b.Construct.HasText(e.Key) && !b.Construct.IsFilled(e.Key) {
				c.metadata(fmt.Sprintf("%s of this %s", e.Key, b.Construct), e.Value, e.ValueSpan)
			}
		}
	}
}

// within finds a text in the lines of metadata that begin at a place. A text over several lines is not found there, and
// has the place of the whole.
func (c *figureCheck) within(at message.Span, text string) message.Span {
	lines := c.page.Source.Text[at.Start:]
	if end := bytes.Index(lines, []byte("\n---")); end >= 0 {
		lines = lines[:end]
	}
	if found := bytes.Index(lines, []byte(text)); found >= 0 {
		return message.Span{Start: at.Start + found, End: at.Start + found + len(text)}
	}
	return at
}

// repeated reports a number where no link can stand, unless a figure of the page says the same.
func (c *figureCheck) repeated(a prose.Amount, text, where string, around topic, at message.Span) {
	for _, f := range c.page.Document.Figures {
		if worked := c.page.Work.Figure(f); worked != nil {
			low, high, ok := inUnitOf(a, c.page.Work.Example(worked.Bound).Range(worked.Name))
			if ok && a.AgreesClosely(low, high) {
				return
			}
			continue
		}
		if tied, err := c.language.ReadFigure(f.Text, "", a.Unit); err == nil && tied.Fits &&
			a.AgreesClosely(tied.By.Apply(tied.Low), tied.By.Apply(tied.High)) {
			return
		}
	}
	note := "leave the number out here, or state it in the text too, tied to what it rests on"
	if tied, _ := c.offers(a, text, around); len(tied) > 0 {
		note = strings.Join(tied, "; or ") + " in the text, or leave the number out here"
	}
	c.fault("figure-alone", at, fmt.Sprintf("%s says %s, and no figure of the page does", where, text), note)
}
