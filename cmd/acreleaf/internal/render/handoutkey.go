package render

import (
	"bytes"
	"slices"
	"strconv"
)

// Key writes the key: of each exercise what its cards give, the right answers, and what each slip comes to.
func (r *Renderer) Key(w *bytes.Buffer, h *Handout) {
	words := &r.words.Handout
	r.leaf(w, h, words.Key, "key", func() {
		r.leafHead(w, h, words.Key)
		element(w, "p", "", words.KeyNote)
		w.WriteByte('\n')
		for _, e := range h.Exercises {
			r.keyOf(w, e)
		}
		element(w, "p", "rule", r.site.LocalRule)
	})
}

func (r *Renderer) keyOf(w *bytes.Buffer, e *HandedExercise) {
	w.WriteString("<section>\n<h2>")
	element(w, "small", "", r.words.Exercise.Kind.with(strconv.Itoa(e.Number)))
	w.WriteByte(' ')
	text(w, e.Title)
	w.WriteString("</h2>\n<p class=\"story\">")
	for _, piece := range e.Story {
		if piece.Given {
			element(w, "i", "", piece.Text)
		} else {
			text(w, piece.Text)
		}
	}
	w.WriteString("</p>\n")
	letter := 0
	for _, t := range e.tables() {
		w.WriteString("<table>\n<thead>\n")
		r.keyHeads(w, e, t, &letter)
		w.WriteString("</thead>\n<tbody>\n")
		for i := range e.Cards {
			keyRow(w, e, i, t)
		}
		w.WriteString("</tbody>\n</table>\n")
	}
	r.slipsOf(w, e)
	r.handedSteps(w, e)
	r.handedWork(w, e)
	w.WriteString("</section>\n")
}

// A keyTable is a table of the key: some parts of an exercise, and what is given if it is the first.
type keyTable struct {
	givens     bool
	from, past int // the parts
}

// columns is how many columns of numbers fit on a sheet. One with a text takes the place of several.
const columns, columnsOfText = 14, 4

// tables parts the key of an exercise into tables that are not too wide for a sheet.
func (e *HandedExercise) tables() []keyTable {
	list := []keyTable{{givens: true}}
	used := 1 + len(e.Givens)
	for i := range e.Asks {
		last := &list[len(list)-1]
		wide := 1 + len(e.Asks[i].Slips)
		if e.Asks[i].Chosen {
			wide = columnsOfText
		}
		if used+wide > columns && last.past > last.from {
			list = append(list, keyTable{from: i})
			last, used = &list[len(list)-1], 1
		}
		last.past, used = i+1, used+wide
	}
	return list
}

// keyHeads writes the two rows above the numbers: what is given, and the answer to each part with its slips by letter.
func (r *Renderer) keyHeads(w *bytes.Buffer, e *HandedExercise, t keyTable, letter *int) {
	words := &r.words.Handout
	w.WriteString("<tr>")
	keyHead(w, `rowspan="2" scope="col"`, words.CardHead, "")
	if t.givens {
		for _, given := range e.Givens {
			keyHead(w, `rowspan="2" scope="col"`, given.Label, given.Value)
		}
	}
	asks := e.Asks[t.from:t.past]
	for i := range asks {
		digits := r.words.Exercise.digits(asks[i].Digits)
		if asks[i].Chosen {
			digits = ""
		}
		keyHead(w, `scope="colgroup" class="part" colspan="`+strconv.Itoa(1+len(asks[i].Slips))+`"`, asks[i].Label, digits)
	}
	w.WriteString("</tr>\n<tr>")
	for i := range asks {
		keyHead(w, `scope="col" class="part"`, words.Answer, asks[i].Unit)
		for range asks[i].Slips {
			keyHead(w, `scope="col"`, lettered(*letter), "")
			*letter++
		}
	}
	w.WriteString("</tr>\n")
}

// keyHead writes the head of a column.
func keyHead(w *bytes.Buffer, attributes, text, unit string) {
	w.WriteString("<th " + attributes + ">")
	element(w, "b", "", text)
	if unit != "" {
		element(w, "span", "", unit)
	}
	w.WriteString("</th>")
}

// lettered calls the columns of slips A, B and so on to Z, then A2.
func lettered(i int) string {
	const letters = 26
	name := string(rune('A' + i%letters))
	if round := i/letters + 1; round > 1 {
		name += strconv.Itoa(round)
	}
	return name
}

// AsRight is in the key where a slip gives the right answer.
const AsRight = "–"

func keyRow(w *bytes.Buffer, e *HandedExercise, card int, t keyTable) {
	c := &e.Cards[card]
	w.WriteString("<tr><th scope=\"row\">")
	integer(w, c.Number)
	w.WriteString("</th>")
	if t.givens {
		for _, given := range c.Givens {
			element(w, "td", "given", given)
		}
	}
	for i, key := range c.Keys[t.from:t.past] {
		class := "part"
		if e.Asks[t.from+i].Chosen {
			class = "part given"
		}
		element(w, "td", class, key.Answer)
		for _, slip := range key.Slips {
			w.WriteString("<td class=\"slip\">")
			text(w, slip)
			w.WriteString("</td>")
		}
	}
	w.WriteString("</tr>\n")
}

// slipsOf says what went wrong in each slip of an exercise.
func (r *Renderer) slipsOf(w *bytes.Buffer, e *HandedExercise) {
	words := &r.words.Handout
	letter := 0
	for i := range e.Asks {
		for j, slip := range e.Asks[i].Slips {
			if letter == 0 {
				element(w, "h3", "", words.Slips)
				w.WriteString("\n<dl>\n")
			}
			w.WriteString("<div><dt>")
			text(w, lettered(letter))
			w.WriteString("</dt><dd>")
			if j == 0 && len(e.Asks) > 1 {
				text(w, e.Asks[i].Label+": ")
			}
			text(w, slip)
			w.WriteString("</dd></div>\n")
			letter++
		}
	}
	if letter > 0 {
		w.WriteString("</dl>\n")
	}
	if e.alike() {
		element(w, "p", "", AsRight+" "+words.Alike)
		w.WriteByte('\n')
	}
}

// alike says whether a slip gives the right answer on a card.
func (e *HandedExercise) alike() bool {
	for _, c := range e.Cards {
		for _, key := range c.Keys {
			if slices.Contains(key.Slips, AsRight) {
				return true
			}
		}
	}
	return false
}

// handedSteps writes what each step of the work comes to, card by card, for who has stopped on the way to the answer.
func (r *Renderer) handedSteps(w *bytes.Buffer, e *HandedExercise) {
	const inTable = columns / 2 // the label of a step is longer than a letter
	words := &r.words.Handout
	for from := 0; from < len(e.Steps); from += inTable {
		past := min(from+inTable, len(e.Steps))
		if from == 0 {
			element(w, "h3", "", words.Steps)
		}
		w.WriteString("\n<div")
		if beside := min(3, inTable/(1+past-from)); beside > 1 { // few steps: the rows fit beside each other
			attribute(w, "class", "beside-"+strconv.Itoa(beside))
		}
		w.WriteString(">\n<table class=\"steps\">\n<thead>\n<tr>")
		keyHead(w, `scope="col"`, words.CardHead, "")
		for _, step := range e.Steps[from:past] {
			keyHead(w, `scope="col"`, step.Label, step.Unit)
		}
		w.WriteString("</tr>\n</thead>\n<tbody>\n")
		for _, c := range e.Cards {
			w.WriteString("<tr><th scope=\"row\">")
			integer(w, c.Number)
			w.WriteString("</th>")
			for _, number := range c.Steps[from:past] {
				element(w, "td", "", number)
			}
			w.WriteString("</tr>\n")
		}
		w.WriteString("</tbody>\n</table>\n</div>\n")
	}
}

// handedWork writes how the first card is worked, line by line.
func (r *Renderer) handedWork(w *bytes.Buffer, e *HandedExercise) {
	if len(e.Cards) == 0 {
		return
	}
	element(w, "h3", "", r.words.Handout.Worked.with(strconv.Itoa(e.Cards[0].Number)))
	w.WriteByte('\n')
	for i := range e.Work {
		work := &e.Work[i]
		if len(e.Work) > 1 {
			element(w, "h4", "", work.Title)
		}
		w.WriteString("<ol class=\"work\">\n")
		lines(w, work.Lines)
		w.WriteString("</ol>\n")
	}
}
