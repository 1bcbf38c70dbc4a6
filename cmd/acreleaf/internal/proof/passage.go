package proof

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// passageCheck checks what passages say with other numbers than the example's. It gathers while the prose is visited.
type passageCheck struct {
	page     *Page
	texts    map[*markdown.PassageCase][]passageText
	messages message.List
}

// passageText is a text of a case with what it is tied to.
type passageText struct {
	text    string
	figures []*markdown.Figure
	span    func(start, end int) message.Span
}

func newPassageCheck(p *Page) *passageCheck {
	return &passageCheck{page: p, texts: map[*markdown.PassageCase][]passageText{}}
}

// finish works every passage of the page.
func (c *passageCheck) finish() message.List {
	for _, passage := range c.page.Work.Passages {
		tried := c.page.Work.Try(passage)
		for _, f := range tried.Findings {
			c.finding(passage, f)
		}
		for i := range passage.Written.Cases {
			c.words(passage, i, tried.Options[i])
		}
	}
	return c.messages
}

func (c *passageCheck) fault(at message.Span, id, text, note string) {
	c.messages = append(c.messages, message.Message{
		Level: message.Fault, ID: id, Source: c.page.Source, Span: at, Text: text, Note: note,
	})
}

// finding tells what a passage says or does with some numbers.
func (c *passageCheck) finding(p *worksheet.Passage, f worksheet.Finding) {
	written := p.Written.Cases[f.Case]
	at := written.WhenSpan
	switch f.Kind {
	case worksheet.NeverHolds:
		note := "look at its signs and units, and at the cases before it, which are asked first"
		if written.When == "" {
			at, note = written.Text, "take out the case that always holds before it, or narrow its condition"
		}
		c.fault(at, "passage-never", "no numbers were found for which this case holds", note)
	case worksheet.SaysNothing:
		c.fault(f.Figure.Span, "passage-blank", fmt.Sprintf("with %s, there is no %s to say here", f.With, f.Figure.Target),
			"move the figure to a case with a condition that sees to it, such as: "+f.Figure.Target+" > 0")
	case worksheet.SaysNegative:
		c.fault(f.Figure.Span, "passage-negative", fmt.Sprintf("with %s, this says %s", f.With, f.Value),
			fmt.Sprintf("write a case of its own for that, before this one: “- when: %s < 0”", f.Figure.Target))
	case worksheet.DividesByZero:
		c.fault(at, "passage-zero", fmt.Sprintf("with %s, this condition divides by 0", f.With),
			"compare without dividing: write a > b * 2 in place of a / b > 2")
	}
}

// prose keeps the texts of the cases.
func (c *passageCheck) prose(p *markdown.Prose) {
	if p.Aside != "" || len(p.Text) == 0 || len(c.page.Work.Passages) == 0 {
		return
	}
	at := p.Span(0, len(p.Text))
	for _, passage := range c.page.Work.Passages {
		for i := range passage.Written.Cases {
			one := &passage.Written.Cases[i]
			if at.Start < one.Text.Start || at.End > one.Text.End {
				continue
			}
			t := passageText{text: p.Text, span: p.Place()}
			for _, f := range p.Figures {
				t.figures = append(t.figures, f.Figure)
			}
			c.texts[one] = append(c.texts[one], t)
		}
	}
}

// words looks for words that are right for some of the numbers at which a case holds, and wrong for others.
func (c *passageCheck) words(p *worksheet.Passage, i int, options map[string]map[string]bool) {
	one := &p.Written.Cases[i]
	for _, t := range c.texts[one] {
		c.numbers(t)
		c.order(one, t)
		c.names(t, options)
	}
}

// looseNumber is a number by itself: no part of a grade or of a form of nitrogen, such as CAN-17 or NO3.
var looseNumber = regexp.MustCompile(`(?:^|[^\pL\pN.,/-])(\d[\d.,]*\d|\d)(?:[^\pL\pN/-]|$)`)

// numbers reports numbers that do not follow the reader's.
func (c *passageCheck) numbers(t passageText) {
	for _, at := range looseNumber.FindAllStringSubmatchIndex(t.text, -1) {
		c.fault(t.span(at[2], at[3]), "passage-number",
			fmt.Sprintf("“%s” stays the same for every reader, and is tied to nothing", t.text[at[2]:at[3]]),
			fmt.Sprintf("tie it to what works it out: [%s](worked:NAME.ANSWER), or leave it out", t.text[at[2]:at[3]]))
	}
}

// An orderWord is a word of order, with the number and the stem that names of numbers have.
type orderWord struct{ name, number string }

// orderWords are the words of order in English, and in Spanish in all their forms.
var orderWords = func() map[string]orderWord {
	known := map[string]orderWord{}
	for _, line := range []string{"first 1 primer primero primera primeros primeras",
		"second 2 segundo segunda segundos segundas", "third 3 tercer tercero tercera terceros terceras",
		"fourth 4 cuarto cuarta cuartos cuartas", "fifth 5 quinto quinta quintos quintas",
		"sixth 6 sexto sexta sextos sextas", "last - último última últimos últimas"} {
		fields := strings.Fields(line)
		known[fields[0]] = orderWord{fields[0], fields[1]}
		for _, spanish := range fields[2:] {
			known[spanish] = known[fields[0]]
		}
	}
	return known
}()

// placed finds a word behind an article. The first leaf is a year of a tree's life, and no place in an order that a
// reader's numbers change.
var placed = regexp.MustCompile(`(?i)\b(?:the|el|la|los|las) (\pL+)( (?:leaf|year|hoja|año)\b)?`)

// order reports a word of order that nothing in the case is named by.
func (c *passageCheck) order(one *markdown.PassageCase, t passageText) {
	for _, at := range placed.FindAllStringSubmatchIndex(t.text, -1) {
		start, end := at[2], at[3]
		word := t.text[start:end]
		o, known := orderWords[strings.ToLower(word)]
		if !known || at[4] >= 0 || namedBy(one, t, o.name) || namedBy(one, t, o.number) {
			continue
		}
		c.fault(t.span(start, end), "passage-word", fmt.Sprintf("“%s” is not tied to the reader's numbers", word),
			"use a figure that is named so, such as the last-date of a schedule, or write without the word")
	}
}

// namedBy says whether a number that the case asks about or states has a part in its name.
func namedBy(one *markdown.PassageCase, t passageText, part string) bool {
	inName := func(name string) bool {
		_, name, _ = strings.Cut(name, ".")
		return slices.Contains(strings.FieldsFunc(name, func(r rune) bool { return r == '-' || r == '_' }), part)
	}
	return slices.ContainsFunc(strings.Fields(one.When), inName) ||
		slices.ContainsFunc(t.figures, func(f *markdown.Figure) bool { return inName(f.Target) })
}

// names reports the name of something to choose, where the case holds for other choices as well.
func (c *passageCheck) names(t passageText, options map[string]map[string]bool) {
	small := strings.ToLower(t.text)
	reported := map[string]bool{}
	for _, b := range c.page.Work.Sheets {
		for _, g := range b.Sheet.Givens {
			for _, o := range g.Choices {
				for _, name := range optionNames(o) {
					at := wordAt(small, name)
					if at < 0 || reported[name] || options == nil || c.pinned(name, options) {
						continue
					}
					reported[name] = true
					c.fault(t.span(at, at+len(name)), "passage-word",
						fmt.Sprintf("“%s” is named here, and this case holds for other choices too", t.text[at:at+len(name)]),
						fmt.Sprintf("add to the condition of the case: and %s.%s is %s", b.Block.Name, g.Name, o.Name))
				}
			}
		}
	}
}

// pinned says whether a case holds only while a choice is at what has a name.
func (c *passageCheck) pinned(name string, options map[string]map[string]bool) bool {
	for _, b := range c.page.Work.Sheets {
		for _, g := range b.Sheet.Givens {
			seen := options[b.Block.Name+"."+g.Name]
			all := len(seen) > 0
			for _, o := range g.Choices {
				all = all && (!seen[o.Name] || slices.Contains(optionNames(o), name))
			}
			if all {
				return true
			}
		}
	}
	return false
}

// optionNames are the names of an option as a text may have them: its grade or word, and its label up to a comma or a
// bracket.
func optionNames(o sheet.Option) []string {
	names := []string{strings.ToLower(o.Name)}
	for _, part := range strings.FieldsFunc(o.Label, func(r rune) bool { return strings.ContainsRune(",();", r) }) {
		names = append(names, strings.ToLower(strings.TrimSpace(part)))
	}
	return slices.DeleteFunc(names, func(name string) bool { return len(name) < shortestName })
}

// shortestName is how many letters the name of an option has at least, to be looked for in a text.
const shortestName = 4

// wordAt finds a word in a text; -1 if it is not there, or only as a part of another.
func wordAt(text, word string) int {
	for from := 0; ; {
		at := strings.Index(text[from:], word)
		if at < 0 {
			return -1
		}
		at += from
		before, _ := utf8.DecodeLastRuneInString(text[:at])
		after, _ := utf8.DecodeRuneInString(text[at+len(word):])
		if !inWord(before) && !inWord(after) {
			return at
		}
		from = at + len(word)
	}
}

func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsNumber(r) }
