package render

import (
	"bytes"
	"strconv"
)

// Cards writes the cards, exercise by exercise, so many to a side of paper.
func (r *Renderer) Cards(w *bytes.Buffer, h *Handout) {
	words := &r.words.Handout
	r.leaf(w, h, words.Cards, "cards", func() {
		w.WriteString(`<h1 class="unseen">`)
		text(w, words.Cards+": "+h.Title)
		w.WriteString("</h1>\n")
		for _, e := range h.Exercises {
			for from := 0; from < len(e.Cards); from += e.PerSide {
				r.side(w, h, e, e.Cards[from:min(from+e.PerSide, len(e.Cards))])
			}
		}
	})
}

// cuts are the marks at the edges of the paper and in its middle, on a square of 100, by how many cards a side has.
var cuts = map[int]string{
	1: "",
	2: "M0 50h4M48 50h4M96 50h4",
	4: "M0 50h4M48 50h4M96 50h4M50 0v3M50 48.5v3M50 97v3",
}

func (r *Renderer) side(w *bytes.Buffer, h *Handout, e *HandedExercise, cards []HandedCard) {
	w.WriteString("<div")
	attribute(w, "class", "side of-"+strconv.Itoa(e.PerSide))
	w.WriteString(">\n<svg class=\"cuts\" viewBox=\"0 0 100 100\" preserveAspectRatio=\"none\" aria-hidden=\"true\">")
	w.WriteString("<path vector-effect=\"non-scaling-stroke\"")
	attribute(w, "d", cuts[e.PerSide])
	w.WriteString("/></svg>\n")
	for i := range cards {
		r.handedCard(w, h, e, &cards[i])
	}
	w.WriteString("</div>\n")
}

// ruledLines are more lines than the tallest card has room for; those that do not fit are not seen.
const ruledLines = 14

func (r *Renderer) handedCard(w *bytes.Buffer, h *Handout, e *HandedExercise, c *HandedCard) {
	words := &r.words.Handout
	w.WriteString("<article>\n<header>\n<div><p class=\"number\">")
	text(w, words.Card.with(strconv.Itoa(c.Number)))
	w.WriteString("</p>\n<h2>")
	text(w, e.Title)
	w.WriteString("</h2>\n")
	element(w, "p", "workshop", h.Title)
	r.office(w)
	w.WriteString("</div>\n")
	r.handedCode(w, c)
	w.WriteString("</header>\n<p class=\"story\">")
	r.handedStory(w, c.Story)
	w.WriteString("</p>\n")
	r.report(w, c.Report)
	w.WriteString("<div class=\"room\">")
	element(w, "p", "", words.Work)
	for range ruledLines {
		w.WriteString("<i></i>")
	}
	w.WriteString("</div>\n<ol class=\"asks\">\n")
	for i := range e.Asks {
		r.handedAsk(w, e, c, i)
	}
	w.WriteString("</ol>\n</article>\n")
}

func (r *Renderer) handedStory(w *bytes.Buffer, pieces []StoryPiece) {
	for _, piece := range pieces {
		if piece.Given {
			element(w, "b", "", piece.Text)
		} else {
			text(w, piece.Text)
		}
	}
}

func (r *Renderer) handedAsk(w *bytes.Buffer, e *HandedExercise, c *HandedCard, i int) {
	words, a := &r.words.Handout, &e.Asks[i]
	w.WriteString("<li><p><b>")
	if len(e.Asks) > 1 {
		integer(w, i+1)
		text(w, ". ")
	}
	text(w, a.Label)
	w.WriteString("</b>")
	if a.Chosen {
		w.WriteString("</p>")
		handedOptions(w, a, c.Options[i])
		w.WriteString("</li>\n")
		return
	}
	w.WriteString(", ")
	text(w, r.words.Exercise.digits(a.Digits))
	w.WriteString("</p><p class=\"blanks\">")
	element(w, "span", "", words.Answer)
	if a.Unit != "" {
		w.WriteByte(' ')
		element(w, "span", "", words.Unit)
	}
	w.WriteString("</p></li>\n")
}

// handedOptions writes options with a box to tick, or items with a blank for the place of each.
func handedOptions(w *bytes.Buffer, a *HandedAsk, options []string) {
	class := "box"
	if a.Order {
		class = "blank"
	}
	w.WriteString("<ul class=\"options\">")
	for _, option := range options {
		w.WriteString("<li><i")
		attribute(w, "class", class)
		w.WriteString("></i> ")
		text(w, option)
		w.WriteString("</li>")
	}
	w.WriteString("</ul>")
}

// quiet is the white margin that a QR code must have, in modules (ISO/IEC 18004).
const quiet = 4

// handedCode writes the QR code of a card. It is a link too, for who has the PDF on a screen.
func (r *Renderer) handedCode(w *bytes.Buffer, c *HandedCard) {
	if c.Code.Address == "" {
		return
	}
	label := r.words.Handout.Check.with(strconv.Itoa(c.Number))
	size := strconv.Itoa(c.Code.Size + 2*quiet)
	w.WriteString("<a class=\"code\"")
	place(w, c.Code.Address)
	w.WriteString("><svg role=\"img\"")
	attribute(w, "aria-label", label)
	attribute(w, "viewBox", strconv.Itoa(-quiet)+" "+strconv.Itoa(-quiet)+" "+size+" "+size)
	w.WriteString("><path")
	attribute(w, "d", c.Code.Path)
	w.WriteString("/></svg><span>")
	text(w, r.words.Handout.Phone)
	w.WriteString("</span></a>\n")
}
