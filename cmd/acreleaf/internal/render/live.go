package render

import (
	"bytes"
	"encoding/json"
	"html/template"
	"io/fs"
	"maps"
	"strings"

	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/wire"
)

// module writes the data block. A "<" inside its strings is written as JSON's own escape, so that no text can end the
// element.
func (r *Renderer) module(w *bytes.Buffer, data []byte) {
	if data == nil {
		return
	}
	w.WriteString(`<script type="application/json" id="module">`)
	for {
		before, after, found := bytes.Cut(data, []byte{'<'})
		w.Write(before)
		if !found {
			break
		}
		w.WriteString(`\u003c`)
		data = after
	}
	w.WriteString("</script>\n")
}

// ScriptWords gives words that a script writes itself, in a language, as JSON.
func ScriptWords(files fs.FS, language string, names []wire.Word) ([]byte, error) {
	own, err := LoadWords(files, language)
	if err != nil {
		return nil, err
	}
	all, asked := scriptWords(own, words.InGeneral(language)), map[wire.Word]string{}
	for _, name := range names {
		asked[name] = all[name]
	}
	return json.Marshal(asked)
}

func scriptWords(own *Words, general *words.General) map[wire.Word]string {
	sheet, kept, led := &own.Worksheet, &own.Kept, &own.Leader
	all := map[wire.Word]string{
		wire.To: general.To, wire.Said: sheet.Said.pattern(), wire.Below: sheet.Below.pattern(), wire.Order: sheet.Order,
		wire.NotDetected: sheet.NotDetected, wire.Above: sheet.Above, wire.Comma: sheet.Comma.pattern(),
		wire.NoNumber: sheet.NoNumber.pattern(), wire.NoUnit: sheet.NoUnit.pattern(), wire.ReadAs: sheet.ReadAs.pattern(),
		wire.Decimal: sheet.Decimal, wire.Early: sheet.Early, wire.Sometimes: general.Partly,
		wire.SetAside: sheet.SetAside.pattern(), wire.Needed: sheet.Needed.pattern(),
		wire.UseAgain: sheet.UseAgain.pattern(), wire.Perhaps: general.Perhaps, wire.Narrow: general.NoAnswer,
		wire.DayPattern: general.Day, wire.Months: strings.Join(general.Months[:], ","),
		wire.Waiting: sheet.Waiting, wire.PassageWaiting: sheet.PassageWaiting,
		wire.Beside: sheet.Beside, wire.Unanswered: sheet.Unanswered, wire.None: sheet.None,
		wire.Undo: kept.Undo, wire.Kept: kept.Back, wire.Linked: kept.Linked, wire.LeftOut: kept.LeftOut,
		wire.OtherEdition: kept.OtherEdition, wire.Unkept: kept.Unkept,
		wire.Copied: kept.Copied, wire.InAddress: kept.InAddress,
		wire.Elapsed: led.Elapsed.pattern(), wire.Left: led.Left.pattern(), wire.Over: led.Over.pattern(),
		wire.Count: led.Count, wire.Counted: led.Counted.pattern(), wire.HeardOf: led.Heard.pattern(),
		wire.Cleared: led.Cleared, wire.PutBack: led.PutBack,
	}
	all[wire.LinkNumbers] = kept.Link
	maps.Copy(all, own.Paper.scriptWords())
	maps.Copy(all, own.Progress.scriptWords())
	maps.Copy(all, own.Block.scriptWords())
	maps.Copy(all, own.Offline.scriptWords())
	maps.Copy(all, own.Terms.scriptWords())
	return all
}

// state writes the line that says what the numbers of a page are: those of the example, until the script makes the page
// live and has the other half of the line in its place. A page that takes no number has no such line.
func (r *Renderer) state(w *bytes.Buffer, body template.HTML) {
	still, live := r.words.Page.WithoutScript, r.words.Kept.Live
	switch {
	case strings.Contains(string(body), " "+wire.Cell+"="):
	case strings.Contains(string(body), " "+wire.Exercise+"="):
		still, live = r.words.Page.OneCard, r.words.Kept.Cards
	default:
		return
	}
	w.WriteString(`<p class="state"><span>`)
	text(w, still)
	w.WriteString(`</span> <span id="state" role="status">`)
	text(w, live)
	w.WriteString("</span></p>\n")
}

// unitSystem writes the switch between the two units of every answer, where an answer has two.
func (r *Renderer) unitSystem(w *bytes.Buffer, body template.HTML) {
	if !strings.Contains(string(body), " "+wire.SI+"=") {
		return
	}
	words := &r.words.Units
	w.WriteString(`<fieldset class="units" id="units">`)
	element(w, "legend", "", words.Show)
	w.WriteString(`<div><label><input type="radio" name="units" value="us" checked> `)
	text(w, words.US)
	w.WriteString(`</label><label><input type="radio" name="units" value="metric"> `)
	text(w, words.Metric)
	w.WriteString("</label></div></fieldset>\n")
}
