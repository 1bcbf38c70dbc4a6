package render

import (
	"bytes"
	"html/template"
	"strings"
)

// aDay marks an element whose number is a day.
const aDay = " data-day"

// module writes the data block, with the words that the script writes itself: those of the margin and of days only for
// a text with notes or days in it. A "<" inside its strings is written as JSON's own escape, so that no text can end
// the element.
func (r *Renderer) module(w *bytes.Buffer, json []byte, body template.HTML) {
	if json == nil {
		return
	}
	words := &r.words.Worksheet
	w.WriteString(`<script type="application/json" id="module"`)
	attribute(w, "data-to", words.To)
	attribute(w, "data-said", words.Said.pattern())
	attribute(w, "data-below", words.Below.pattern())
	attribute(w, "data-order", words.Order)
	attribute(w, "data-not-detected", words.NotDetected)
	attribute(w, "data-above", words.Above)
	attribute(w, "data-comma", words.Comma.pattern())
	attribute(w, "data-no-number", words.NoNumber.pattern())
	attribute(w, "data-no-unit", words.NoUnit.pattern())
	attribute(w, "data-read-as", words.ReadAs.pattern())
	attribute(w, "data-decimal", words.Decimal)
	attribute(w, "data-early", words.Early)
	attribute(w, "data-partly", words.Partly)
	if strings.Contains(string(body), belongs) {
		attribute(w, "data-set-aside", words.SetAside.pattern())
		attribute(w, "data-needed", words.Needed.pattern())
		attribute(w, "data-use-again", words.UseAgain.pattern())
	}
	attribute(w, "data-perhaps", words.Perhaps)
	attribute(w, "data-narrow", words.Narrow)
	if strings.Contains(string(body), aDay) {
		attribute(w, "data-day", r.words.Date.Pattern.pattern())
		attribute(w, "data-months", strings.Join(r.words.Date.Short[:], ","))
	}
	if strings.Contains(string(body), ownNote) {
		attribute(w, "data-beside", words.Beside)
		attribute(w, "data-unanswered", words.Unanswered)
		attribute(w, "data-none", words.None)
	}
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
