package render

import (
	"bytes"

	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/drawing"
	"acreleaf/cmd/acreleaf/internal/wire"
)

// DrawingWords is for the pictures that numbers draw.
type DrawingWords struct {
	Numbers string            `yaml:"numbers"`
	None    string            `yaml:"none"`   // in the description, for a number that is not there
	Labels  map[string]string `yaml:"labels"` // by the keys that the rules have

	Budget   BudgetWords   `yaml:"season-budget"`
	Calendar CalendarWords `yaml:"feed-schedule"`
	Roots    RootsWords    `yaml:"root-share"`
	Water    WaterWords    `yaml:"water-nitrogen"`
	Forms    FormsWords    `yaml:"material-compare"`
}

// BudgetWords is for the picture of a season's budget, and the next ones for those of the other calculations.
type BudgetWords struct {
	Title string   `yaml:"title"`
	Said  Sentence `yaml:"said" blanks:"fed-need,in-reach,water,organic,apply,surplus"`
}

type CalendarWords struct {
	Title string   `yaml:"title"`
	Said  Sentence `yaml:"said" blanks:"feeds,each,first,last-date,limit"`
}

type RootsWords struct {
	Title string   `yaml:"title"`
	Said  Sentence `yaml:"said" blanks:"wetted,offset,root,share"`
}

type WaterWords struct {
	Title string   `yaml:"title"`
	Said  Sentence `yaml:"said" blanks:"per-inch,water,nitrogen"`
}

type FormsWords struct {
	Title string   `yaml:"title"`
	Said  Sentence `yaml:"said" blanks:"material,nitrate,ammonium,urea,lime,liming"`
}

// drawnWords are those of one picture.
type drawnWords struct {
	Title string
	Said  Sentence
}

func (d *DrawingWords) of(calculation string) drawnWords {
	return map[string]drawnWords{
		"season-budget": drawnWords(d.Budget), "feed-schedule": drawnWords(d.Calendar), "root-share": drawnWords(d.Roots),
		"water-nitrogen": drawnWords(d.Water), "material-compare": drawnWords(d.Forms),
	}[calculation]
}

// saidOf writes the description, of each group one. It is heard in the place of the picture, and not seen.
func (r *Renderer) saidOf(w *bytes.Buffer, d *Drawing, said Sentence) {
	w.WriteString("<div class=\"unseen\">\n")
	for group := range max(1, len(d.Rule.Groups)) {
		w.WriteString("<p")
		if len(d.Rule.Groups) > 0 && d.Values[d.Rule.Groups[group]].There >= 0 {
			there := d.Values[d.Rule.Groups[group]]
			when(w, there.There, !there.Out)
		} else {
			flag(w, wire.When) // it always holds, but has no numbers while the sheet has no answer
		}
		w.WriteByte('>')
		said.write(w, func(blank string) {
			switch {
			case len(d.Rule.Groups) == 0:
			case blank == "material":
				blank = d.Rule.Groups[group]
			default:
				blank = d.Rule.Groups[group] + "-" + blank
			}
			drawnQuantity(w, "span", &d.Values[blank].Said, r.words.Drawing.None)
		})
		w.WriteString("</p>\n")
	}
	waiting(w, d.Sheet)
	w.WriteString("</div>\n")
}

// drawingTable writes the numbers of a picture as a table: a row for each value, or a column for each group.
func (r *Renderer) drawingTable(w *bytes.Buffer, d *Drawing) {
	w.WriteString(`<div class="scroll" role="group" tabindex="0"`)
	attribute(w, "aria-label", r.words.Drawing.Numbers)
	w.WriteString(">\n<table>\n")
	if len(d.Rule.Groups) > 0 {
		w.WriteString("<thead><tr><td></td>")
		for _, group := range d.Rule.Groups {
			w.WriteString(`<th scope="col">`)
			drawnQuantity(w, "span", &d.Values[group].Shown, "")
			w.WriteString("</th>")
		}
		w.WriteString("</tr></thead>\n")
	}
	w.WriteString("<tbody>\n")
	for _, row := range d.Rule.Rows {
		w.WriteString("<tr")
		if v := d.Values[row]; v != nil {
			when(w, v.There, !v.Out)
		}
		w.WriteString(`><th scope="row">`)
		if v := d.Values[row]; v != nil {
			said(w, v.Lang, v.Label)
			w.WriteString("</th>")
			drawnCell(w, v)
		} else {
			text(w, r.words.Drawing.Labels[row])
			w.WriteString("</th>")
			for _, group := range d.Rule.Groups {
				drawnCell(w, d.Values[group+"-"+row])
			}
		}
		w.WriteString("</tr>\n")
	}
	w.WriteString("</tbody>\n</table>\n</div>\n")
}

func drawnCell(w *bytes.Buffer, v *DrawnValue) {
	w.WriteString("<td>")
	drawnQuantity(w, "span", &v.Shown, "")
	w.WriteString("</td>")
}

// shapeText is a number as a reader sees it, or the month of a day.
func (r *Renderer) shapeText(s *drawing.Shape, v float64) string {
	if s.Month {
		return r.general.Months[drawing.MonthOf(v)]
	}
	return unit.Text(v)
}
