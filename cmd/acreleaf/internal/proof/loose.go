package proof

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"

	"acreleaf/calc/said"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// loose reports a number of the trade that is tied to nothing.
func (c *figureCheck) loose(a said.Amount, text string, at message.Span) {
	note := c.suggestion(a, text)
	if note == "" {
		linked := linkText(a, text)
		note = fmt.Sprintf("write [%s](worked:NAME.ANSWER) if a worksheet works it out, "+
			"or [%s](source:%s) with a line for it below \"figures:\" of that source in sources.yaml",
			linked, linked, c.practice())
	}
	c.fault("figure-loose", at, fmt.Sprintf("the prose says %s, and nothing says where that comes from", text), note)
}

// practice gives the source of common practice, or a word in its place.
func (c *figureCheck) practice() string {
	for _, id := range c.site.Sources.IDs() {
		if c.site.Sources[id].Kind == config.CommonPractice {
			return id
		}
	}
	return "ID"
}

// linkText is what to write between the brackets: the author's words when a page can follow them, else the same in
// digits.
func linkText(a said.Amount, text string) string {
	if a.Digits {
		return readable(a, text)
	}
	return unit.Range{Low: a.Low, High: a.High, Unit: a.Unit}.String()
}

// readable is the author's words, or the same in digits when they say something else by themselves: "3 and 4 oz".
func readable(a said.Amount, text string) string {
	if f, err := said.ReadFigure(text, "", a.Unit); err == nil && f.Low == a.Low && f.High == a.High {
		return text
	}
	return unit.Range{Low: a.Low, High: a.High, Unit: a.Unit}.String()
}

// suggestion says what a figure can be tied to, "" when nothing says the same.
func (c *figureCheck) suggestion(a said.Amount, text string) string {
	for _, b := range c.page.Work.Sheets {
		for _, name := range c.page.Work.Worked(b) {
			value := c.page.Work.Example(b).Range(name)
			if !says(a, value) {
				continue
			}
			verb := "answers"
			if b.Sheet.FindGiven(name) != nil {
				verb = "is given"
			}
			return fmt.Sprintf("worksheet %q %s %s %s: write [%s](worked:%s.%s)", b.Block.Name, verb, name, value,
				linkText(a, text), b.Block.Name, name)
		}
	}
	for _, id := range c.nearSources() {
		for _, f := range c.site.Sources[id].Figures {
			if cites(a, f.Range) {
				return fmt.Sprintf("source %q gives %s, %s: write [%s](source:%s)", id, f.Range, f.For, readable(a, text), id)
			}
		}
	}
	return ""
}

// nearSources lists the sources that the page cites, and then the others.
func (c *figureCheck) nearSources() []string {
	cited := map[string]bool{}
	for _, f := range c.page.Document.Figures {
		cited[f.Target] = f.Scheme == "source"
	}
	ids := c.site.Sources.IDs()
	slices.SortStableFunc(ids, func(a, b string) int { return cmp.Compare(rank(cited[a]), rank(cited[b])) })
	return ids
}

func rank(first bool) int {
	if first {
		return 0
	}
	return 1
}

// says tells whether an amount is a range, in any unit of its kind. A plain number says nothing of the trade.
func says(a said.Amount, value unit.Range) bool {
	low, high, ok := inUnitOf(a, value)
	return ok && a.Agrees(low, high)
}

// cites is says for a figure of a source, which rounding may move less.
func cites(a said.Amount, value unit.Range) bool {
	low, high, ok := inUnitOf(a, value)
	return ok && a.Quotes(low, high)
}

// inUnitOf gives the ends of a range in the unit of an amount, if that is of the same kind.
func inUnitOf(a said.Amount, value unit.Range) (low, high float64, ok bool) {
	by, ok := said.Meant(a.Unit, value.Unit)
	if !ok || value.Unit.String() == "" {
		return 0, 0, false
	}
	back := by.Inverse()
	return back.Apply(value.Low), back.Apply(value.High), true
}

// metadata checks a text of the metadata, which can hold no links.
func (c *figureCheck) metadata(key, text string, at message.Span) {
	for _, a := range c.language.Find(text) {
		c.repeated(a, oneLine(text[a.Start:a.End]), "the "+key, c.within(at, text[a.Start:a.End]))
	}
}

// titles checks the titles of worksheets and tables, which hold no links either.
func (c *figureCheck) titles() {
	for _, b := range c.page.Document.Blocks {
		for _, e := range b.Entries {
			if e.Key == "title" {
				c.metadata("title of this "+b.Construct, e.Value, e.ValueSpan)
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
func (c *figureCheck) repeated(a said.Amount, text, where string, at message.Span) {
	for _, f := range c.page.Document.Figures {
		if worked := c.page.Work.Figure(f); worked != nil {
			if says(a, c.page.Work.Example(worked.Bound).Range(worked.Name)) {
				return
			}
			continue
		}
		if sourced, err := said.ReadFigure(f.Text, "", a.Unit); err == nil && sourced.Fits &&
			a.Agrees(sourced.By.Apply(sourced.Low), sourced.By.Apply(sourced.High)) {
			return
		}
	}
	note := "state it in the text as a worked or sourced figure, or leave the number out here"
	if tied := c.suggestion(a, text); tied != "" {
		note = tied + " in the text, or leave the number out here"
	}
	c.fault("figure-alone", at, fmt.Sprintf("%s says %s, and no figure of the page does", where, text), note)
}
