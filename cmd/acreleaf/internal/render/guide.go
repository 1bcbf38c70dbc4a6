package render

import (
	"bytes"
	"cmp"
	"html/template"
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/wire"
)

// Guide writes the page of a guide.
func (r *Renderer) Guide(w *bytes.Buffer, g *Guide) {
	r.write(w, &filling{
		page:      &g.Page,
		script:    true,
		exercises: g.Exercises,
		block:     g.Block != nil,
		drawings:  g.Drawings,
		course:    g.Lesson != nil || g.Course != nil,
		main:      func(w *bytes.Buffer) { r.guideMain(w, g) },
		turn:      func(w *bytes.Buffer) { r.turn(w, g) },
		cite:      func(w *bytes.Buffer) { r.howToCite(w, g); r.changes(w, g.Changes) },
	})
}

// hasDrawing says whether there is a picture in a text that numbers draw.
func hasDrawing(body template.HTML) bool { return strings.Contains(string(body), " "+wire.Drawn+"=") }

func (r *Renderer) guideMain(w *bytes.Buffer, g *Guide) {
	head(w, &g.Page, func() { r.facts(w, g) })
	r.lesson(w, g.Lesson)
	r.course(w, g.Course)
	r.contents(w, g)
	r.glance(w, g)
	r.state(w, g.Body)
	r.block(w, g.Block)
	r.unitSystem(w, g.Body)
	r.article(w, g)
	if g.Module != nil {
		r.printAll(w)
	}
	r.record(w, g.Course)
	r.module(w, g.Module)
	r.learning(w, g)
}

// article writes the text. On a page about one block it is the worksheets behind the answers, folded into one line.
func (r *Renderer) article(w *bytes.Buffer, g *Guide) {
	if g.Block != nil {
		w.WriteString(`<details class="chain"><summary>`)
		text(w, r.words.Block.Chain)
		w.WriteString("</summary>\n")
		defer w.WriteString("</details>\n")
	}
	w.WriteString("<article>\n")
	w.WriteString(string(g.Body))
	r.references(w, g.Cited)
	w.WriteString("</article>\n")
}

// facts writes what is in the margin beside the title: number, crop, season and review.
func (r *Renderer) facts(w *bytes.Buffer, g *Guide) {
	w.WriteString(`<ul class="facts">`)
	crop := g.Crop
	if g.Kind.Row().Reader == kind.Grower {
		crop = cmp.Or(crop, r.site.Crop)
	}
	if number := r.words.number(g.Kind); number != nil && g.Number > 0 {
		element(w, "li", "", number.with(strconv.Itoa(g.Number)))
	}
	r.place(w, g.Lesson)
	element(w, "li", "", crop)
	element(w, "li", "", g.Season)
	if g.Reviewed != "" {
		w.WriteString("<li>")
		r.words.Date.dated(w, r.words.Page.Reviewed, g.Reviewed)
		w.WriteString("</li>")
	}
	w.WriteString("</ul>\n")
}

// glance writes the line of answers at the top.
func (r *Renderer) glance(w *bytes.Buffer, g *Guide) {
	list := g.Glance
	if len(list) == 0 {
		return
	}
	w.WriteString(`<section class="glance"`)
	attribute(w, "aria-label", r.words.Page.Glance)
	w.WriteString(">\n")
	label := r.words.Page.Example
	if g.From != "" {
		label = r.words.Page.ExampleFrom.with(g.From)
	}
	element(w, "p", "", label)
	w.WriteString("\n<ul>\n")
	for i := range list {
		g := &list[i]
		w.WriteString("<li>" + workedFigure)
		place(w, g.Href)
		numbered(w, wire.Sheet, g.Sheet)
		w.WriteByte('>')
		figure(w, &g.Shown)
		w.WriteString("</a> ")
		inLanguage(w, "span", g.Lang, g.Label)
		w.WriteString("</li>\n")
	}
	w.WriteString("</ul>\n</section>\n")
}

// turn writes the ways to the guides before and after of its kind.
func (r *Renderer) turn(w *bytes.Buffer, g *Guide) {
	words := r.words.turn(g.Kind)
	if words == nil || g.Previous == nil && g.Next == nil {
		return
	}
	w.WriteString(`<nav class="turn"`)
	attribute(w, "aria-label", words.Order)
	w.WriteString(">\n")
	turnTo(w, "prev", words.Previous, g.Previous)
	turnTo(w, "next", words.Next, g.Next)
	w.WriteString("</nav>\n")
}

func turnTo(w *bytes.Buffer, rel, word string, to *Link) {
	if to == nil {
		return
	}
	w.WriteString("<a")
	attribute(w, "rel", rel)
	place(w, to.Href)
	w.WriteByte('>')
	element(w, "small", "", word)
	w.WriteByte(' ')
	text(w, to.Text)
	w.WriteString("</a>\n")
}

// howToCite writes how to cite the guide and when it is due for review.
func (r *Renderer) howToCite(w *bytes.Buffer, g *Guide) {
	sentence := r.words.Foot.Citation
	if g.Reviewed == "" {
		sentence = r.words.Foot.CitationUndated
	}
	w.WriteString("<div>")
	element(w, "dt", "", r.words.Foot.Cite)
	w.WriteString("<dd>")
	sentence.write(w, func(blank string) {
		switch blank {
		case "office":
			text(w, r.site.Office)
		case "title":
			element(w, "cite", "", g.Page.Title)
		case "date":
			text(w, r.words.Date.InWords(g.Reviewed))
		}
	})
	if r.site.Base != "" {
		w.WriteByte(' ')
		element(w, "span", "address", r.site.Base+g.Page.Address)
	}
	if g.ReviewBy != "" {
		w.WriteByte(' ')
		r.words.Date.dated(w, r.words.Page.ReviewBy, g.ReviewBy)
	}
	w.WriteString("</dd></div>\n")
}

// changes writes what changed on a page, folded into a line with the day of the last change.
func (r *Renderer) changes(w *bytes.Buffer, list []Change) {
	if len(list) == 0 {
		return
	}
	w.WriteString("<div>")
	element(w, "dt", "", r.words.Foot.Changes)
	w.WriteString("<dd><details><summary>")
	r.words.Date.dated(w, r.words.Foot.LastChange, list[0].Day)
	w.WriteString("</summary>\n")
	r.Changes(w, list)
	w.WriteString("</details></dd></div>\n")
}

// Changes writes what changed on a page as a list.
func (r *Renderer) Changes(w *bytes.Buffer, list []Change) {
	w.WriteString("<ul>")
	for _, c := range list {
		w.WriteString("<li>")
		r.words.Foot.Change.write(w, func(blank string) {
			if blank == "date" {
				r.words.Date.day(w, c.Day)
			} else {
				text(w, c.Text)
			}
		})
		w.WriteString("</li>")
	}
	w.WriteString("</ul>\n")
}
