package render

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/drawing"
	"acreleaf/cmd/acreleaf/internal/wire"
)

// A Drawing is a picture that the numbers of a worksheet draw, with its description and its table.
type Drawing struct {
	Index  int // place among the drawings of its page, from 1
	Sheet  int
	Rule   *drawing.Rule
	Title  string // the author's own; empty for the usual one
	Cells  string // those that the rule takes, as wire.Drawn has them
	Places []float64
	Values map[string]*DrawnValue // what labels, the description and the table show, by name
}

// A DrawnValue is a value of a picture with what it is called.
type DrawnValue struct {
	Label string
	Lang  string // of the label, where it is not that of the page
	Shown Shown
	Said  Shown // the same with its unit in words, for the description
	There int   // the cell that is 0 while it is left out; -1 when it is always there
	Out   bool  // it is left out for the example
}

// Drawing writes a picture. Its shapes and its numbers follow the worksheet; without answers only its frame is left.
func (r *Renderer) Drawing(w *bytes.Buffer, d *Drawing) {
	words := r.words.Drawing.of(d.Rule.Of)
	w.WriteString(`<figure class="drawing"`)
	numbered(w, wire.Sheet, d.Sheet)
	w.WriteString(">\n<figcaption>")
	if d.Title == "" {
		d.Title = words.Title
	}
	text(w, d.Title)
	w.WriteString("</figcaption>\n")
	r.svg(w, d)
	r.saidOf(w, d, words.Said)
	waiting(w, d.Sheet)
	w.WriteString("<details><summary>")
	text(w, r.words.Drawing.Numbers)
	w.WriteString("</summary>\n")
	r.drawingTable(w, d)
	w.WriteString("</details>\n</figure>\n")
}

// hatchID is the id of a hatch of a picture.
func hatchID(d *Drawing, look drawing.Look) string {
	return "drawing_" + strconv.Itoa(d.Index) + "_" + string(look)
}

func (r *Renderer) svg(w *bytes.Buffer, d *Drawing) {
	w.WriteString("<svg")
	attribute(w, "viewBox", "0 0 "+strconv.Itoa(d.Rule.Width)+" "+strconv.Itoa(d.Rule.Height))
	numbered(w, "width", d.Rule.Width)
	numbered(w, "height", d.Rule.Height)
	w.WriteString(" aria-hidden=\"true\">\n") // the sentence after it is heard in its place, once
	fills(w, d)
	for i := range d.Rule.Fixed {
		r.shape(w, d, &d.Rule.Fixed[i])
	}
	w.WriteString("<g")
	attribute(w, wire.Drawn, d.Rule.Of+d.Cells)
	w.WriteString(">\n")
	for i := range d.Rule.Shapes {
		r.shape(w, d, &d.Rule.Shapes[i])
	}
	w.WriteString("</g>\n")
	for i := range d.Rule.Labels {
		r.drawingLabel(w, d, &d.Rule.Labels[i])
	}
	w.WriteString("</svg>\n")
}

// A hatch is how a look is ruled: the side of the square that is repeated, and what is in it.
var hatches = []struct {
	look drawing.Look
	side string
	in   string
}{
	{drawing.Dots, "5", `<circle cx="2.5" cy="2.5" r="1.1"/>`},
	{drawing.Level, "4", `<path d="M0 2H4"/>`},
	{drawing.Slant, "6", `<path d="M-1 1L1-1M-1 7L7-1M5 7L7 5"/>`},
	{drawing.Back, "6", `<path d="M-1 5L1 7M-1-1L7 7M5-1L7 1"/>`},
	{drawing.Cross, "6", `<path d="M-1 1L1-1M-1 7L7-1M5 7L7 5M-1 5L1 7M-1-1L7 7M5-1L7 1"/>`},
	{drawing.Band, "3", `<path d="M1.5 0V3"/>`},
}

// fills writes the hatches that a picture has.
func fills(w *bytes.Buffer, d *Drawing) {
	used := func(look drawing.Look) bool {
		return slices.ContainsFunc(slices.Concat(d.Rule.Fixed, d.Rule.Shapes), func(s drawing.Shape) bool {
			return s.Look == look || s.Look == drawing.Ring && look == drawing.Band
		})
	}
	w.WriteString("<defs>\n")
	for _, h := range hatches {
		if !used(h.look) {
			continue
		}
		w.WriteString("<pattern")
		attribute(w, "id", hatchID(d, h.look))
		attribute(w, "width", h.side)
		attribute(w, "height", h.side)
		w.WriteString(` patternUnits="userSpaceOnUse">` + h.in + "</pattern>\n")
	}
	w.WriteString("</defs>\n")
}

// shape writes a shape, or the place of one that is not drawn now.
func (r *Renderer) shape(w *bytes.Buffer, d *Drawing, s *drawing.Shape) {
	w.WriteByte('<')
	w.WriteString(s.Tag)
	if s.Look != "" {
		attribute(w, "class", string(s.Look))
	}
	switch s.Look {
	case drawing.Ring:
		attribute(w, "stroke", "url(#"+hatchID(d, drawing.Band)+")")
	case drawing.Dots, drawing.Level, drawing.Slant, drawing.Back, drawing.Cross, drawing.Band:
		attribute(w, "fill", "url(#"+hatchID(d, s.Look)+")")
	}
	drawn := s.Drawn(d.Places)
	if !drawn {
		attribute(w, "display", "none")
	} else {
		for i := range s.Moves {
			attribute(w, s.Moves[i].Name, s.Moves[i].Value(d.Places))
		}
	}
	if s.Tag != "text" {
		w.WriteString("/>\n")
		return
	}
	w.WriteByte('>')
	if drawn && s.Text != drawing.Always {
		text(w, r.shapeText(s, d.Places[s.Text]))
	}
	if s.Word != "" {
		r.drawingWord(w, s.Word, "tspan", " ")
	}
	w.WriteString("</text>\n")
}

// drawingLabel writes a word, or a number that the script keeps current.
func (r *Renderer) drawingLabel(w *bytes.Buffer, d *Drawing, l *drawing.Label) {
	w.WriteString("<text")
	class := string(l.Look)
	if l.End {
		class = strings.TrimSpace("end " + class)
	}
	if class != "" {
		attribute(w, "class", class)
	}
	numbered(w, "x", l.X)
	numbered(w, "y", l.Y)
	w.WriteByte('>')
	r.drawingWord(w, l.Word, "", "")
	if l.Value != "" {
		drawnQuantity(w, "tspan", &d.Values[l.Value].Shown, "")
	}
	w.WriteString("</text>\n")
}

// metric ends the key of a word of a picture as it is in metric units.
const metric = "-metric"

// drawingWord writes a word, in an element of its own where it is asked for or where the word is another in metric
// units.
func (r *Renderer) drawingWord(w *bytes.Buffer, key, tag, before string) {
	words := r.words.Drawing.Labels
	switch second := words[key+metric]; {
	case second != "":
		unitPart(w, "tspan", "", before+words[key], before+second)
	case tag != "":
		element(w, tag, "", before+words[key])
	default:
		text(w, words[key])
	}
}

// drawnQuantity writes a number of a picture with its unit. The style shows no unit for a number that is not there, and
// in the place of both the word for none, where there is one.
func drawnQuantity(w *bytes.Buffer, tag string, s *Shown, none string) {
	second := s
	if s.Also != nil {
		second = s.Also
	}
	unitPart(w, tag, unitClass, s.Before, second.Before)
	class := ""
	if s.Text == Absent {
		class = "void" // as the script marks it
	}
	number(w, tag, class, s)
	if none != "" {
		element(w, tag, "none", none)
	}
	unitPart(w, tag, unitClass, s.After, second.After)
}

// unitClass is for the unit of a number in a picture.
const unitClass = "of"
