package render

import (
	"bytes"
	"strconv"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// An Exercise is a question, with the numbers of its first card.
type Exercise struct {
	Number int // in the page
	Index  int // in the page's data
	Name   string
	Title  string
	Lang   string // of the title, where it is not that of the page
	Story  []StoryPiece
	Report []ReportLine // nil for none
	Asks   []ExerciseAsk
	Hint   string
	Cards  int
	Work   []ExerciseWork
}

// A StoryPiece is a text, or the number of a given.
type StoryPiece struct {
	Text   string
	Picked int // the place of the given among those that vary; -1 for a text, and for a number that is on every card
	Given  bool
}

// A ReportLine is a line of a laboratory report.
type ReportLine struct {
	Label  string
	Result StoryPiece
}

// An ExerciseAsk is one thing that is asked.
type ExerciseAsk struct {
	Index    int  // of the sheet that an answer is put into
	Step     bool // a step on the way, which a card does not ask for
	Label    string
	Lang     string // of the label, where it is not that of the page
	Digits   int
	Key      string // the right answer of the card
	Units    []AskedUnit
	Options  []AskedOption // of what is answered by choosing; nil for a number
	Order    bool          // the options are items to put in order
	Verdicts []Verdict
	Unread   string // the sentence on what is no answer
}

// An AskedUnit is a unit to choose for an answer.
type AskedUnit struct {
	Text string
	Fits string // the factor to the unit that is asked for; "" where it does not fit
}

// A Verdict is one of the sentences that a page can show about an answer. Key is the right answer, which the script
// writes.
type Verdict struct {
	Before, Key string
	After       string
	Class       string // of right answers, of those that are half right, of slips, and of what comes before several slips
}

// ExerciseWork is the work of one calculation of the exercise.
type ExerciseWork struct {
	Index int // of its sheet
	Title string
	Lang  string // of the title, where it is not that of the page
	Work  []Line
	Last  int // the first line of the last step; the number of lines where that is in another calculation
}

// ExerciseAnchor is the id of an exercise in its page.
func ExerciseAnchor(name string) string { return "exercise-" + name }

// Exercise writes a question. Without a script it is that of the first card, with its work folded below.
func (r *Renderer) Exercise(w *bytes.Buffer, e *Exercise) {
	words := &r.words.Exercise
	anchor := ExerciseAnchor(e.Name)
	w.WriteString(`<section class="exercise"`)
	attribute(w, "id", anchor)
	numbered(w, wire.Exercise, e.Index)
	attribute(w, "aria-labelledby", anchor+"_title")
	w.WriteString(">\n<header><h2")
	attribute(w, "id", anchor+"_title")
	w.WriteByte('>')
	element(w, "small", "", words.Kind.with(strconv.Itoa(e.Number)))
	w.WriteByte(' ')
	said(w, e.Lang, e.Title)
	w.WriteString("</h2>\n")
	r.card(w, e, anchor)
	w.WriteString("</header>\n<p class=\"story\">")
	r.story(w, e.Story)
	w.WriteString("</p>\n")
	r.report(w, e.Report)
	w.WriteString("<ol class=\"asks\">\n")
	for i := range e.Asks {
		r.question(w, e, i)
	}
	w.WriteString("</ol>\n")
	if e.Hint != "" {
		w.WriteString(`<details class="hint"><summary>`)
		text(w, words.Hint)
		w.WriteString("</summary>")
		element(w, "p", "", e.Hint)
		w.WriteString("</details>\n")
	}
	r.exerciseWork(w, e, anchor)
	w.WriteString("<p class=\"unseen\" role=\"status\"></p>\n</section>\n")
}

// card writes what a learner chooses: the card, and how much of the work is shown. Its sentences are hidden.
func (r *Renderer) card(w *bytes.Buffer, e *Exercise, anchor string) {
	words := &r.words.Exercise
	w.WriteString("<div class=\"card\"><p><label")
	attribute(w, "for", anchor+"_card")
	w.WriteByte('>')
	text(w, words.Card)
	w.WriteString(`</label> <input type="number" inputmode="numeric" min="1" value="1" autocomplete="off" readonly`)
	numbered(w, "max", e.Cards)
	attribute(w, "id", anchor+"_card")
	attribute(w, "aria-describedby", anchor+"_no-card")
	w.WriteString("> ")
	element(w, "span", "", words.OfCards.with(strconv.Itoa(e.Cards)))
	w.WriteString(` <button type="button"`)
	flag(w, wire.LiveOnly)
	w.WriteByte('>')
	text(w, words.Another)
	w.WriteString("</button></p>\n<p")
	flag(w, wire.LiveOnly)
	w.WriteString("><label")
	attribute(w, "for", anchor+"_face")
	w.WriteByte('>')
	text(w, words.Faces)
	w.WriteString(`</label> <select class="face" autocomplete="off"`)
	attribute(w, "id", anchor+"_face")
	w.WriteByte('>')
	for i, face := range []string{words.Whole, words.ButLast, words.Names, words.Alone} {
		w.WriteString("<option")
		if i == 3 {
			w.WriteString(" selected")
		}
		w.WriteByte('>')
		text(w, face)
		w.WriteString("</option>")
	}
	w.WriteString("</select></p>\n<p class=\"no-card\" hidden")
	attribute(w, "id", anchor+"_no-card")
	w.WriteByte('>')
	text(w, words.NoCard.with(strconv.Itoa(e.Cards)))
	w.WriteString("</p>\n")
	for _, led := range []string{words.More, words.Less} {
		w.WriteString(`<p class="led" hidden>`)
		text(w, led)
		w.WriteString("</p>\n")
	}
	w.WriteString("</div>")
}

func (r *Renderer) story(w *bytes.Buffer, pieces []StoryPiece) {
	for _, piece := range pieces {
		if !piece.Given {
			text(w, piece.Text)
			continue
		}
		w.WriteString("<b")
		if piece.Picked >= 0 {
			numbered(w, wire.Picked, piece.Picked)
		}
		w.WriteByte('>')
		text(w, piece.Text)
		w.WriteString("</b>")
	}
}

// report writes the laboratory report of a card; nothing for none.
func (r *Renderer) report(w *bytes.Buffer, lines []ReportLine) {
	if len(lines) == 0 {
		return
	}
	w.WriteString("<table class=\"report\">\n<thead><tr>")
	for _, head := range []string{r.words.Exercise.Test, r.words.Exercise.Result} {
		w.WriteString(`<th scope="col">`)
		text(w, head)
		w.WriteString("</th>")
	}
	w.WriteString("</tr></thead>\n<tbody>\n")
	for _, line := range lines {
		w.WriteString(`<tr><th scope="row">`)
		text(w, line.Label)
		w.WriteString("</th><td")
		if line.Result.Picked >= 0 {
			numbered(w, wire.Picked, line.Result.Picked)
		}
		w.WriteByte('>')
		text(w, line.Result.Text)
		w.WriteString("</td></tr>\n")
	}
	w.WriteString("</tbody>\n</table>\n")
}

// question writes one thing that is asked, with a field for the answer and all that may be said of it.
func (r *Renderer) question(w *bytes.Buffer, e *Exercise, i int) {
	words, a := &r.words.Exercise, &e.Asks[i]
	if a.Options != nil {
		r.pick(w, e, i)
		return
	}
	id := ExerciseAnchor(e.Name) + "_" + strconv.Itoa(i+1)
	w.WriteString(`<li`)
	if a.Step {
		w.WriteString(` class="step"`)
	}
	numbered(w, wire.Asked, i)
	w.WriteString("><label")
	attribute(w, "for", id)
	language(w, a.Lang)
	w.WriteByte('>')
	text(w, a.Label)
	w.WriteString("</label> ")
	element(w, "small", "", words.digits(a.Digits))
	w.WriteString(`<div class="entry"><input type="text" inputmode="decimal" autocomplete="off" readonly`)
	attribute(w, "id", id)
	attribute(w, "aria-describedby", id+"_mark")
	w.WriteString(">")
	if len(a.Units) > 0 {
		w.WriteString("<select disabled autocomplete=\"off\"")
		attribute(w, "aria-label", words.UnitOf.with(a.Label))
		w.WriteString("><option value=\"\">")
		text(w, words.Unit)
		w.WriteString("</option>")
		for _, u := range a.Units {
			w.WriteString("<option")
			attribute(w, wire.Fits, u.Fits)
			w.WriteByte('>')
			text(w, u.Text)
			w.WriteString("</option>")
		}
		w.WriteString("</select>")
	}
	w.WriteString(`<button type="button"`)
	flag(w, wire.LiveOnly)
	w.WriteByte('>')
	text(w, words.Check)
	w.WriteString("</button></div>")
	marks(w, a, id)
}

// marks writes all that may be said of an answer, and ends the question.
func marks(w *bytes.Buffer, a *ExerciseAsk, id string) {
	w.WriteString(`<div class="mark" hidden`)
	attribute(w, "id", id+"_mark")
	w.WriteString(">")
	for i := range a.Verdicts {
		verdict(w, &a.Verdicts[i])
	}
	w.WriteString(`<p class="unread" hidden>`)
	text(w, a.Unread)
	w.WriteString("</p></div></li>")
	w.WriteByte('\n')
}

func verdict(w *bytes.Buffer, v *Verdict) {
	w.WriteString("<p")
	if v.Class != "" {
		attribute(w, "class", v.Class)
	}
	w.WriteString(" hidden>")
	text(w, v.Before)
	if v.Key != "" {
		element(w, "b", "key", v.Key)
		text(w, v.After)
	}
	w.WriteString("</p>")
}

// rightAnswer begins an entry of a list: what is asked, and the right answer to it.
func rightAnswer(w *bytes.Buffer, a *ExerciseAsk, i int) {
	w.WriteString("<div>")
	inLanguage(w, "dt", a.Lang, a.Label)
	w.WriteString(`<dd><b class="key"`)
	numbered(w, wire.Asked, i)
	w.WriteByte('>')
	text(w, a.Key)
	w.WriteString("</b>")
}

// exerciseWork writes the right answers and the work of the card, folded.
func (r *Renderer) exerciseWork(w *bytes.Buffer, e *Exercise, anchor string) {
	words := &r.words.Exercise
	w.WriteString(`<details class="solution"><summary>`)
	text(w, words.Solution)
	w.WriteString("</summary>\n<dl>")
	for i := range e.Asks {
		a := &e.Asks[i]
		if a.Step {
			continue
		}
		rightAnswer(w, a, i)
		r.reasons(w, a)
		w.WriteString("</dd></div>")
	}
	w.WriteString("</dl>\n")
	for i := range e.Work {
		work := &e.Work[i]
		w.WriteString(`<div`)
		numbered(w, wire.Sheet, work.Index)
		w.WriteString(">")
		id := anchor + "_work_" + strconv.Itoa(i+1)
		w.WriteString("<h3")
		attribute(w, "id", id)
		w.WriteByte('>')
		said(w, work.Lang, work.Title)
		w.WriteString(`</h3><div class="work"><div role="group" tabindex="0"`)
		attribute(w, "aria-labelledby", id)
		w.WriteString("><ol>\n")
		lines(w, work.Work[:work.Last])
		w.WriteString("</ol>")
		if work.Last < len(work.Work) {
			w.WriteString("<ol class=\"last\">\n")
			lines(w, work.Work[work.Last:])
			w.WriteString("</ol>")
		}
		w.WriteString("</div></div></div>\n")
	}
	w.WriteString("</details>\n")
}

// digits says how many digits an answer is asked to.
func (words *ExerciseWords) digits(n int) string {
	if n == 1 {
		return words.OneDigit
	}
	return words.Digits.with(strconv.Itoa(n))
}
