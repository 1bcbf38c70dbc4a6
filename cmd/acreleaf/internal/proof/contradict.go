package proof

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

func (c *figureCheck) advise(id string, at message.Span, text, note string) {
	c.messages = append(c.messages, message.Message{
		Level: message.Advice, ID: id, Source: c.page.Source, Span: at, Text: text, Note: note,
	})
}

// contradicted advises on a figure that is tied to a source or to itself where the words around it are those of a
// number of the page, and that has another value. The tie alone would make it look checked.
func (c *figureCheck) contradicted(p *markdown.Prose, f markdown.ProseFigure) {
	if !c.rules.Advice || f.Scheme == construct.Worked || f.Faulty || len(c.page.Work.Sheets) == 0 {
		return
	}
	a, ok := c.amountOf(f.Figure, c.after(p.Text, f.At+len(markdown.Stand)))
	if !ok {
		return
	}
	around := c.around(p, f.At, f.At+len(markdown.Stand))
	fits := c.fits(a, around, c.table.inCell)
	if f.Scheme == construct.Sized {
		// A worksheet's own name, such as that of the well, says nothing of a plain size.
		fits = slices.DeleteFunc(fits, func(g fit) bool { return around.shared(g.own) == 0 })
	}
	if c.ordered(p, f, a) || len(fits) == 0 || fits[0].words <= around.shared(c.wordsOf(c.tiedTo(f.Figure)...)) {
		return
	}
	best := slices.DeleteFunc(fits, func(g fit) bool { return g.words < fits[0].words })
	if slices.ContainsFunc(best, func(g fit) bool { return g.same }) {
		return
	}
	c.differs(f.TextSpan, f.Text, best[0].candidate, best[0].text, "")
}

// amountOf reads the amount of a figure, with what belongs to it of the words after it.
func (c *figureCheck) amountOf(f *markdown.Figure, rest string) (prose.Amount, bool) {
	found := c.language.Find(f.Text + rest)
	if len(found) > 0 && found[0].Start < len(f.Text) {
		return found[0], true
	}
	for _, n := range c.language.Counts(f.Text) {
		if c.isMeasure(n) {
			return n.Amount(), true
		}
	}
	return prose.Amount{}, false
}

// tiedTo gives the texts that say what a figure is tied to.
func (c *figureCheck) tiedTo(f *markdown.Figure) []string {
	texts := []string{f.Title}
	for _, figure := range c.site.Sources[f.Target].Figures {
		texts = append(texts, figure.For)
	}
	return texts
}

// differs advises on a number that is another than the page's own.
func (c *figureCheck) differs(at message.Span, text string, n *candidate, linked, noun string) {
	c.advise("figure-contradicts", at, fmt.Sprintf("the prose says %s, and %s", text, n.is()),
		fmt.Sprintf("if that is meant, write [%s](worked:%s)%s; if not, say in the sentence what it is of",
			linked, n.target, noun))
}

// countsAndDays looks for counts and days that a worksheet of the page gives: 5 feeds, 14 nights, April 20. They are
// no figures by themselves.
func (c *figureCheck) countsAndDays(p *markdown.Prose) {
	if !c.rules.Advice || p.Aside != "" || len(c.page.Work.Sheets) == 0 {
		return
	}
	for _, n := range c.language.Counts(p.Text) {
		if !isTied(p, n.Start, n.End) && !c.isMeasure(n) {
			c.count(p, n)
		}
	}
	for _, d := range c.language.Dates(p.Text) {
		if !isTied(p, d.Start, d.End) {
			c.day(p, d)
		}
	}
}

// isTied says whether a place is in a link, whose text is looked at by itself.
func isTied(p *markdown.Prose, start, end int) bool {
	return slices.ContainsFunc(p.Links, func(l message.Span) bool { return l.Start <= start && end <= l.End })
}

// count compares a count with those of the page that have its word, and a number without a unit with all of them.
func (c *figureCheck) count(p *markdown.Prose, n prose.Count) {
	around := c.around(p, n.Start, n.End)
	var best *candidate
	words := 0
	all := c.candidates()
	for i := range all {
		k := &all[i]
		if shared := around.shared(k.words); shared > 0 && k.day == "" && c.mayBe(k, n) {
			score := 2*shared + around.shared(k.own)
			if k.value.Unit.String() == n.Unit {
				score += 2 // hours for hours, though days are hours too
			}
			if score > words {
				best, words = k, score
			}
		}
	}
	if best == nil {
		c.bare(p, n, around)
		return
	}
	text, linked, noun := oneLine(p.Text[n.Start:n.End]), best.text, ""
	a := n.Amount()
	low, high, ok := inUnitOf(a, best.value)
	if n.Unit == "" {
		low, high, ok = best.value.Low, best.value.High, true
		linked, noun = best.value.Numbers(), " "+n.Noun
	}
	own := around.shared(best.own)
	switch {
	case !ok:
	case a.AgreesClosely(low, high) && n.Unit != "":
		c.untied(p, message.Span{Start: n.Start, End: n.End}, best, tie(text, best))
	case a.AgreesClosely(low, high):
		c.untied(p, message.Span{Start: n.Start, End: n.End}, best, tie(linked, best)+noun)
	case isBound(p.Text[:n.Start]):
	case n.Unit != "" && own > 1 || n.Unit == "" && c.hasWorked(p, n.Start, n.End, "") ||
		c.hasWorked(p, n.Start, n.End, best.block) || c.isOnly(best, n) && isTotal(p.Text, n):
		c.differs(p.Span(n.Start, n.End), text, best, linked, noun)
	}
}

// bare compares a number without a unit with those of the page whose words are around it: it may be one of them, or one
// with two digits the wrong way round. Of other numbers nothing can be said.
func (c *figureCheck) bare(p *markdown.Prose, n prose.Count, around topic) {
	written := strings.ReplaceAll(c.language.PointDecimals(p.Text[n.Start:n.Number]), ",", "")
	if n.Unit != "" || len(strings.Trim(written, "0")) < 3 {
		return
	}
	all := c.candidates()
	for i := range all {
		k := &all[i]
		if k.day != "" || k.value.Low != k.value.High || around.shared(k.words) == 0 {
			continue
		}
		places := len(written) - 1 - strings.LastIndexByte(written, '.')
		if !strings.Contains(written, ".") {
			places = 0
		}
		own := strconv.FormatFloat(k.value.Low, 'f', places, 64)
		text := oneLine(p.Text[n.Start:n.Number])
		switch {
		case n.Amount().AgreesClosely(k.value.Low, k.value.High):
			c.untied(p, message.Span{Start: n.Start, End: n.Number}, k, tie(k.text, k))
			return
		case own != written && sorted(own) == sorted(written):
			c.differs(p.Span(n.Start, n.Number), text, k, k.text, "")
			return
		}
	}
}

// sorted are the characters of a text in their order.
func sorted(text string) string {
	all := []byte(text)
	slices.Sort(all)
	return string(all)
}

// mayBe says whether a number of the page may be a count of the prose: one of time, or one whose name has the word.
func (c *figureCheck) mayBe(k *candidate, n prose.Count) bool {
	if n.Unit != "" {
		_, _, ok := inUnitOf(n.Amount(), k.value)
		return ok
	}
	unit := k.value.Unit.String()
	isCount := unit == "" || unit == "day" || unit == "days" // a count of nights is told in days
	isWhole := k.value.Low == math.Trunc(k.value.Low)
	return n.Noun != "" && isCount && isWhole && (k.own[stem(n.Noun)] || n.After != "" && k.own[stem(n.After)])
}

// day compares a day with those of the page that have words of the sentence.
func (c *figureCheck) day(p *markdown.Prose, d prose.Date) {
	around := c.around(p, d.Start, d.End)
	var best *candidate
	words := 0
	all := c.candidates()
	for i := range all {
		k := &all[i]
		shared := around.shared(k.words)
		if k.day == "" || shared == 0 {
			continue
		}
		if shared > words || shared == words && k.isDay(d) {
			best, words = k, shared
		}
	}
	switch text := oneLine(p.Text[d.Start:d.End]); {
	case best == nil || words == 1 && !best.isDay(d):
		c.startDay(p, d)
	case best.isDay(d):
		c.untied(p, message.Span{Start: d.Start, End: d.End}, best, tie(best.text, best))
	case !slices.Contains(notOn, d.Before):
		c.differs(p.Span(d.Start, d.End), text, best, best.text, "")
	}
}

// isDay says whether a candidate is a day, whose year may be left out.
func (n *candidate) isDay(d prose.Date) bool {
	day := fmt.Sprintf("-%02d-%02d", d.Month, d.Day)
	return strings.HasSuffix(n.day, day) && (d.Year == 0 || strings.HasPrefix(n.day, fmt.Sprintf("%04d", d.Year)))
}

// notOn are words before a day that is a bound, and not the day itself.
var notOn = strings.Fields("before after by until till since from through to between about around antes después " +
	"desde hasta entre")

// isBound says whether the words before a number make a bound of it: at least 3 feeds, up to 3.
func isBound(before string) bool {
	words := strings.Fields(strings.ToLower(before[max(0, len(before)-30):]))
	if len(words) == 0 {
		return false
	}
	last := words[len(words)-1]
	return slices.Contains(bounds, last)
}

var bounds = strings.Fields("least most to than over under about nearly every or between all menos más hasta cada " +
	"casi these those other the los las")

// untied advises to tie a number that a worksheet gives, where it is in a sentence with a worked figure: the
// reader's numbers move the one and not the other.
func (c *figureCheck) untied(p *markdown.Prose, at message.Span, n *candidate, link string) {
	if !c.hasWorked(p, at.Start, at.End, "") {
		return
	}
	c.advise("figure-untied", p.Span(at.Start, at.End),
		fmt.Sprintf("the prose says %s beside a worked figure, and %s", oneLine(p.Text[at.Start:at.End]), n.is()),
		fmt.Sprintf("write %s, so that it is checked with the other", link))
}

// tie is a text as a figure of a candidate.
func tie(text string, n *candidate) string { return fmt.Sprintf("[%s](worked:%s)", text, n.target) }

// hasWorked says whether a worked figure is in the sentence of a place, of one worksheet or of any.
func (c *figureCheck) hasWorked(p *markdown.Prose, start, end int, block string) bool {
	from, to := sentenceSpan(p.Text, start, end)
	return slices.ContainsFunc(p.Figures, func(f markdown.ProseFigure) bool {
		return f.Scheme == construct.Worked && from <= f.At && f.At < to &&
			(block == "" || strings.HasPrefix(f.Target, block+"."))
	})
}
