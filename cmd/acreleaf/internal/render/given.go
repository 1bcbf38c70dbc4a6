package render

import (
	"bytes"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// hint writes the hint and the example's value; it says whether there was anything to write.
func (r *Renderer) hint(w *bytes.Buffer, g *Given) {
	if !hinted(g) {
		return
	}
	w.WriteString(`<p class="hint"`)
	attribute(w, "id", g.ID+"-hint")
	w.WriteByte('>')
	said(w, g.HintLang, g.Hint)
	if g.Typical != "" {
		if g.Hint != "" {
			w.WriteByte(' ')
		}
		text(w, r.words.Worksheet.Typical.with(g.Typical))
	}
	w.WriteString("</p>")
}

func hinted(g *Given) bool { return g.Hint != "" || g.Typical != "" }

// linked writes a number that another worksheet answers.
func (r *Renderer) linked(w *bytes.Buffer, g *Given) {
	w.WriteString(`<p class="linked">`)
	inLanguage(w, "b", g.Lang, g.Label)
	w.WriteString(` <span class="figure">`)
	figure(w, g.Taken)
	w.WriteString("</span>")
	if g.From != nil {
		w.WriteByte(' ')
		r.words.Worksheet.FromWorksheet.write(w, func(string) {
			w.WriteString("<a")
			place(w, g.From.Href)
			language(w, g.FromLang)
			w.WriteByte('>')
			text(w, g.From.Text)
			w.WriteString("</a>")
		})
	}
	w.WriteString("</p>")
	r.hint(w, g)
	if g.Outside > 0 {
		r.outside(w, g)
	}
}

// outside writes the sentence that shows when a linked number is outside the range: there is no field to fix it in.
func (r *Renderer) outside(w *bytes.Buffer, g *Given) {
	w.WriteString(`<p class="fault"`)
	when(w, g.Outside, false)
	flag(w, wire.Refusal)
	w.WriteByte('>')
	r.words.Worksheet.FaultLinked.write(w, func(blank string) {
		switch blank {
		case "low":
			text(w, g.LowText)
		case "high":
			text(w, g.HighText)
		case "unit":
			unitEnding(w, g.Unit)
		}
	})
	w.WriteString("</p>")
}

func (r *Renderer) choice(w *bytes.Buffer, g *Given) {
	w.WriteString("<select disabled")
	attribute(w, "id", g.ID)
	numbered(w, wire.Cell, g.Cell)
	describedBy(w, g)
	w.WriteByte('>')
	for _, c := range g.Choices {
		w.WriteString("<option")
		language(w, g.Lang)
		option(w, c.Text, c.Selected)
	}
	w.WriteString("</select>")
	r.hint(w, g)
}

func option(w *bytes.Buffer, s string, selected bool) {
	if selected {
		w.WriteString(" selected")
	}
	w.WriteByte('>')
	text(w, s)
	w.WriteString("</option>")
}

// number writes the field of a number, a range or a day, with its unit and its fault.
func (r *Renderer) number(w *bytes.Buffer, g *Given) {
	w.WriteString(`<div class="entry">`)
	input(w, g)
	r.units(w, g)
	w.WriteString("</div>")
	r.hint(w, g)
	r.below(w, g)
	r.fault(w, g)
}

// input writes the field. Fields and choices are locked until the script is ready for them: a number typed sooner would
// are beside an answer that is not its own.
func input(w *bytes.Buffer, g *Given) {
	ranged := g.StartTop != g.Start && g.Text != ""
	switch {
	case g.Day != nil && !ranged:
		w.WriteString(`<input readonly type="date"`)
		attribute(w, "min", g.Day.First)
		attribute(w, "max", g.Day.Last)
	case ranged:
		w.WriteString(`<input readonly type="text" inputmode="text"`)
	default:
		w.WriteString(`<input readonly type="text" inputmode="decimal"`)
	}
	w.WriteString(` autocomplete="off"`)
	attribute(w, "id", g.ID)
	attribute(w, "value", g.Text)
	numbered(w, wire.Cell, g.Cell)
	measured(w, wire.Low, g.Low)
	measured(w, wire.High, g.High)
	if g.Text != "" && g.Text != strconv.FormatFloat(g.Start, 'g', -1, 64) {
		measured(w, wire.Start, g.Start)
	}
	if ranged {
		measured(w, wire.StartHigh, g.StartTop)
	}
	if g.Day != nil {
		flag(w, wire.Day)
	}
	if g.Lab {
		flag(w, wire.Lab)
	}
	if g.Presence >= 0 {
		numbered(w, wire.Presence, g.Presence)
	}
	if g.Others >= 0 {
		numbered(w, wire.Others, g.Others)
	}
	if len(g.For) > 0 {
		attribute(w, wire.For, joined(g.For))
	}
	describedBy(w, g)
	w.WriteByte('>')
}

// joined lists numbers with spaces between them.
func joined(numbers []int) string {
	var texts []string
	for _, n := range numbers {
		texts = append(texts, strconv.Itoa(n))
	}
	return strings.Join(texts, " ")
}

// describedBy ties a field or a list to its hint. The script ties a field to its fault as well, which has nothing to
// say before it runs.
func describedBy(w *bytes.Buffer, g *Given) {
	if hinted(g) {
		attribute(w, "aria-describedby", g.ID+"-hint")
	}
}

// below writes the sentence that says how a laboratory's "<5" is taken. The script writes it for other numbers.
func (r *Renderer) below(w *bytes.Buffer, g *Given) {
	if g.Below == "" {
		return
	}
	w.WriteString(`<p class="hint below"`)
	attribute(w, "id", g.ID+"-below")
	w.WriteByte('>')
	text(w, r.words.Worksheet.Below.with(g.Below))
	w.WriteString("</p>")
}

// units writes the unit beside the field: a choice where there is one.
func (r *Renderer) units(w *bytes.Buffer, g *Given) {
	if len(g.Units) == 0 {
		if g.Day == nil {
			element(w, "span", "unit", g.Unit)
		}
		return
	}
	w.WriteString("<select disabled")
	attribute(w, wire.UnitFor, g.ID)
	attribute(w, "aria-label", r.words.Worksheet.UnitOf.with(g.Label))
	w.WriteByte('>')
	for _, u := range g.Units {
		w.WriteString("<option")
		attribute(w, "value", u.Factor)
		if u.Second != nil {
			flag(w, wire.Other)
			measured(w, wire.Low, u.Second.Low)
			measured(w, wire.High, u.Second.High)
		}
		if u.Form > 0 {
			numbered(w, wire.Form, u.Form)
		}
		option(w, u.Text, u.Selected)
	}
	w.WriteString("</select>")
}

// fault writes the sentence that shows when the field's number cannot be used.
func (r *Renderer) fault(w *bytes.Buffer, g *Given) {
	words := &r.words.Worksheet
	sentence := words.FaultRange
	switch chosen := len(g.Units) > 0; {
	case g.Day != nil && g.Optional:
		sentence = words.FaultDayOptional
	case g.Day != nil:
		sentence = words.FaultDay
	case g.Optional && chosen:
		sentence = words.FaultRangeOptionalChosen
	case g.Optional:
		sentence = words.FaultRangeOptional
	case chosen:
		sentence = words.FaultRangeChosen
	}
	w.WriteString(`<p class="fault" hidden>`)
	sentence.write(w, func(blank string) {
		switch blank {
		case "low":
			w.WriteString("<span")
			attribute(w, wire.Limit, "low")
			w.WriteByte('>')
			text(w, g.LowText)
			w.WriteString("</span>")
		case "high":
			w.WriteString("<span")
			attribute(w, wire.Limit, "high")
			w.WriteByte('>')
			text(w, g.HighText)
			w.WriteString("</span>")
		case "unit":
			unitEnding(w, g.Unit)
		}
	})
	w.WriteString("</p>")
}

// unitEnding writes the unit after a limit. Where there is none, the space before it goes too.
func unitEnding(w *bytes.Buffer, unit string) {
	if unit == "" {
		w.Truncate(len(bytes.TrimRight(w.Bytes(), " ")))
	}
	text(w, unit)
}
