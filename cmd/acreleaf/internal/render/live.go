package render

import (
	"bytes"
	"html/template"
	"strings"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// module writes the data block, with the words that the script writes itself: those of the margin and of days only for
// a text with notes or days in it. A "<" inside its strings is written as JSON's own escape, so that no text can end
// the element.
func (r *Renderer) module(w *bytes.Buffer, json []byte, body template.HTML) {
	if json == nil {
		return
	}
	w.WriteString(`<script type="application/json" id="module"`)
	r.liveWords(w, string(body))
	w.WriteByte('>')
	for {
		before, after, found := bytes.Cut(json, []byte{'<'})
		w.Write(before)
		if !found {
			break
		}
		w.WriteString(`\u003c`)
		json = after
	}
	w.WriteString("</script>\n")
}

// liveWords writes the words that the script writes itself, of which a text asks for some only by what is in it.
func (r *Renderer) liveWords(w *bytes.Buffer, body string) {
	words, general := &r.words.Worksheet, r.general
	word := func(name wire.Word, text string) { attribute(w, name.Attribute(), text) }
	word(wire.To, general.To)
	word(wire.Said, words.Said.pattern())
	word(wire.Below, words.Below.pattern())
	word(wire.Order, words.Order)
	word(wire.NotDetected, words.NotDetected)
	word(wire.Above, words.Above)
	word(wire.Comma, words.Comma.pattern())
	word(wire.NoNumber, words.NoNumber.pattern())
	word(wire.NoUnit, words.NoUnit.pattern())
	word(wire.ReadAs, words.ReadAs.pattern())
	word(wire.Decimal, words.Decimal)
	word(wire.Early, words.Early)
	word(wire.Sometimes, general.Partly)
	if strings.Contains(body, belongs) {
		word(wire.SetAside, words.SetAside.pattern())
		word(wire.Needed, words.Needed.pattern())
		word(wire.UseAgain, words.UseAgain.pattern())
	}
	word(wire.Perhaps, general.Perhaps)
	word(wire.Narrow, general.NoAnswer)
	if strings.Contains(body, " "+wire.Day) {
		word(wire.DayPattern, general.Day)
		word(wire.Months, strings.Join(general.Months[:], ","))
	}
	if strings.Contains(body, ownNote) {
		word(wire.Beside, words.Beside)
		word(wire.Unanswered, words.Unanswered)
		word(wire.None, words.None)
	}
}

// unitSystem writes the switch between the two units of every answer. The script shows it where an answer has two.
func (r *Renderer) unitSystem(w *bytes.Buffer, module []byte) {
	if module == nil {
		return
	}
	words := &r.words.Units
	w.WriteString(`<fieldset class="units" id="units" hidden>`)
	element(w, "legend", "", words.Show)
	w.WriteString(`<div><label><input type="radio" name="units" value="us" checked> `)
	text(w, words.US)
	w.WriteString(`</label><label><input type="radio" name="units" value="metric"> `)
	text(w, words.Metric)
	w.WriteString("</label></div></fieldset>\n")
}
