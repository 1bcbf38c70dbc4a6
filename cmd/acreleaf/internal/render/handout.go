package render

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
)

// A Handout is what is printed for a workshop.
type Handout struct {
	Title     string // of the workshop
	Paper     Paper
	Style     string
	Exercises []*HandedExercise
}

// A Paper is a size of paper, in lengths as CSS has them.
type Paper struct{ Width, Height string }

// A HandedExercise is an exercise with the cards that are printed of it.
type HandedExercise struct {
	Number  int // in the page
	PerSide int // how many cards are on a side of paper: 1, 2 or 4
	Title   string
	Story   []StoryPiece  // with the labels of what is given
	Givens  []HandedGiven // those that differ, with the unit where all cards have the same
	Asks    []HandedAsk
	Steps   []HandedStep // of the work, besides what is asked
	Cards   []HandedCard
	Work    []HandedWork // of the first of these cards
}

// A HandedGiven is a given and what it is, or its unit.
type HandedGiven struct{ Label, Value string }

// A HandedStep is a step of the work, and the unit that its number has on all cards.
type HandedStep struct{ Label, Unit string }

// A HandedAsk is one thing that is asked.
type HandedAsk struct {
	Label  string
	Digits int
	Unit   string   // of the answer; "" for none
	Slips  []string // what went wrong in each
	Chosen bool     // it is answered without a number
	Order  bool     // that is, with a place for each of several items
}

// A HandedCard is a card, and its row of the key.
type HandedCard struct {
	Number int
	Story  []StoryPiece
	Report []ReportLine
	Code   Code        // the zero Code for none
	Givens []string    // by HandedExercise.Givens, without its unit where that is there
	Keys   []HandedKey // by HandedExercise.Asks
	Steps  []string    // by HandedExercise.Steps, without the unit

	Options [][]string // by HandedExercise.Asks: what there is to choose from, or to put in order
}

// A HandedKey is the right answer without its unit, and what each slip gives: AsRight where that is the right answer
// too, and "" where nobody can make the slip.
type HandedKey struct {
	Answer string
	Slips  []string
}

// HandedWork is the work of one calculation.
type HandedWork struct {
	Title string
	Lines []Line
}

// A Code is a QR code: its path is drawn in a square of Size modules.
type Code struct {
	Address string
	Size    int
	Path    string
}

// leaf writes a page to print: it needs no other file, runs nothing and asks for nothing.
func (r *Renderer) leaf(w *bytes.Buffer, h *Handout, name, class string, body func()) {
	style := "@page{size:" + h.Paper.Width + " " + h.Paper.Height + ";margin:10mm}\n:root{--width:" + h.Paper.Width +
		";--height:" + h.Paper.Height + "}\n" + h.Style
	sum := sha256.Sum256([]byte(style))
	w.WriteString("<!DOCTYPE html>\n<html")
	attribute(w, "lang", r.site.Language)
	w.WriteString(">\n<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\"")
	attribute(w, "content", "default-src 'none'; style-src 'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+
		"'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types 'none'")
	w.WriteString(">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
	text(w, name+": "+h.Title)
	w.WriteString("</title>\n<meta name=\"referrer\" content=\"no-referrer\">\n<style>")
	w.WriteString(style)
	w.WriteString("</style>\n</head>\n<body>\n<main")
	attribute(w, "class", class)
	w.WriteString(">\n")
	body()
	w.WriteString("</main>\n</body>\n</html>\n")
}

// leafHead writes the title of the key or of the sheet to sign in.
func (r *Renderer) leafHead(w *bytes.Buffer, h *Handout, name string) {
	w.WriteString("<header>\n<h1>")
	element(w, "small", "", name)
	w.WriteByte(' ')
	text(w, h.Title)
	w.WriteString("</h1>\n")
	r.office(w)
	w.WriteString("</header>\n")
}

// office writes who hands out.
func (r *Renderer) office(w *bytes.Buffer) {
	w.WriteString(`<p class="office">`)
	text(w, r.site.Office)
	if r.site.Invented {
		text(w, " ("+r.words.Page.MadeUp+")")
	}
	w.WriteString("</p>\n")
}

// SignIn writes the sheet to sign in: a line for each number that has a card.
func (r *Renderer) SignIn(w *bytes.Buffer, h *Handout) {
	words := &r.words.Handout
	r.leaf(w, h, words.SignIn, "sign-in", func() {
		r.leafHead(w, h, words.SignIn)
		w.WriteString("<p class=\"blanks\">")
		element(w, "span", "", words.Date)
		w.WriteByte(' ')
		element(w, "span", "", words.Place)
		w.WriteString("</p>\n")
		element(w, "p", "", words.SignInNote)
		w.WriteString("\n<table>\n<thead><tr>")
		for _, head := range []string{words.Number, words.Name, words.Signature} {
			element(w, "th", "", head)
		}
		w.WriteString("</tr></thead>\n<tbody>\n")
		first, last := h.numbers()
		for number := first; number <= last; number++ {
			w.WriteString("<tr><td>")
			integer(w, number)
			w.WriteString("</td><td></td><td></td></tr>\n")
		}
		w.WriteString("</tbody>\n</table>\n")
	})
}

// numbers are the first and the last number of a card.
func (h *Handout) numbers() (first, last int) {
	for _, e := range h.Exercises {
		for _, c := range e.Cards {
			if first == 0 || c.Number < first {
				first = c.Number
			}
			last = max(last, c.Number)
		}
	}
	return first, last
}
