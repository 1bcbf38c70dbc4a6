package proof

import (
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/reading"
)

// A topic is the words of a text that say what it is about, without their endings.
type topic map[string]bool

// wordsOf gathers them: no small words, no numbers, no units and no nutrients, which two numbers of one kind share.
func (c *figureCheck) wordsOf(texts ...string) topic {
	found := topic{}
	for _, text := range texts {
		for w := range reading.Words(strings.NewReplacer("-", " ", "_", " ", "/", " ").Replace(text)) {
			w = strings.ToLower(w)
			if len(w) < 3 || strings.ContainsAny(w, "0123456789") || slices.Contains(smallWords, w) ||
				c.language.IsUnitOrNumber(w) || c.language.IsUnitOrNumber(strings.TrimSuffix(w, "s")) {
				if place, is := ordinals[w]; is {
					found[place] = true
				}
				continue
			}
			found[stem(w)] = true
		}
	}
	return found
}

// numbered adds the number at the end of a name: "date-2" is of the second.
func (w topic) numbered(name string) {
	last := name[strings.LastIndexByte(name, '-')+1:]
	if last != "" && last != name && strings.Trim(last, "0123456789") == "" {
		w[last] = true
	}
}

// shared counts the words that two texts have in common.
func (w topic) shared(other topic) int {
	n := 0
	for one := range w {
		if other[one] {
			n++
		}
	}
	return n
}

// ordinals are words of a place in an order, with its number.
var ordinals = map[string]string{"first": "1", "second": "2", "third": "3", "fourth": "4", "fifth": "5", "sixth": "6",
	"primero": "1", "primera": "1", "segundo": "2", "segunda": "2", "tercero": "3", "tercera": "3", "cuarta": "4"}

// stem takes the endings off a word of English or Spanish, as far as two forms of it need to be the same.
func stem(w string) string {
	for _, ending := range []string{"ing", "ed", "es", "s"} {
		if rest, found := strings.CutSuffix(w, ending); found && len(rest) > 2 && !strings.HasSuffix(rest, "s") {
			w = rest
			break
		}
	}
	return strings.TrimRight(w, "eao")
}

// around gives the words around a place of the prose: those of its sentence, and in a table those of the heads of its
// column and row.
func (c *figureCheck) around(p *markdown.Prose, start, end int) topic {
	if !p.Running {
		return c.wordsOf(p.Text, c.table.around)
	}
	return c.wordsOf(sentenceAt(p.Text, start, end))
}

// sentenceAt gives the sentence that a place is in.
func sentenceAt(text string, start, end int) string {
	from, to := sentenceSpan(text, start, end)
	return text[from:to]
}

func sentenceSpan(text string, start, end int) (from, to int) {
	for _, s := range reading.Sentences(text) {
		if s.Start <= start && end <= s.End {
			return s.Start, s.End
		}
	}
	return 0, len(text)
}

// smallWords say nothing of what a number is of.
var smallWords = strings.Fields("the and for from with that this these those than then was were are you your our its " +
	"his her their they not but all any can may must will would should have has had been being one each every per about " +
	"above below over under after before when where what which who how why more most less least much many few some into " +
	"onto out off down only also just now here there such same other another both very too again still yet give gives " +
	"given gave take takes taken took make makes made put get gets use used uses add added number amount total year " +
	"new near page write read says said come comes leave leaves left keep count counts nitrogen first second third " +
	"los las del una uno por para con que sin sobre entre como más menos cada este esta estos estas ese esa son era fue " +
	"hay ser tiene tienen dan pone poner hacer año cantidad número nitrógeno total antes después cuando donde")
