package render

import (
	"bytes"
	"html/template"
	"strconv"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// A Leader is the page for who leads a workshop.
type Leader struct {
	Page      Page
	Of        Link          // the page for participants
	Notes     template.HTML // made from Markdown; may be empty
	Module    []byte        // as in Guide
	Cited     []Reference   // as in Guide
	Exercises []LedExercise
}

// A LedExercise is an exercise as the leader has it.
type LedExercise struct {
	*Exercise
	Minutes int // that the plan has for it; 0 where it says nothing
}

// LeaderWords is for the page for who leads a workshop.
type LeaderWords struct {
	Title    Sentence `yaml:"title" blanks:"workshop"`
	Summary  string   `yaml:"summary"`
	Open     string   `yaml:"open"`
	Part     string   `yaml:"part"` // leads to the page for participants
	Wall     string   `yaml:"wall"`
	OnWall   string   `yaml:"on-wall"`
	Keys     string   `yaml:"keys"`
	Close    string   `yaml:"close"`
	Back     string   `yaml:"back"`
	Next     string   `yaml:"next"`
	Start    string   `yaml:"start"`
	Minutes  Sentence `yaml:"minutes" blanks:"count"`
	Found    string   `yaml:"found"`
	Elapsed  Sentence `yaml:"elapsed" blanks:"now,all"`
	Left     Sentence `yaml:"left" blanks:"count"`
	Over     Sentence `yaml:"over" blanks:"count"`
	Tally    string   `yaml:"tally"`
	How      string   `yaml:"how"`
	Exercise string   `yaml:"exercise"`
	Count    string   `yaml:"count"`
	Counted  Sentence `yaml:"counted" blanks:"label,count,right"`
	Heard    Sentence `yaml:"heard" blanks:"card,text"`
	Unknown  string   `yaml:"unknown"`
	Undo     string   `yaml:"undo"`
	Clear    string   `yaml:"clear"`
	Cleared  string   `yaml:"cleared"`
	PutBack  string   `yaml:"put-back"`
}

// TitleOf is the title of the page for who leads a workshop.
func (w *LeaderWords) TitleOf(workshop string) string { return w.Title.with(workshop) }

// Leader writes the page for who leads a workshop. Searchers are asked to leave it out; it is not secret.
func (r *Renderer) Leader(w *bytes.Buffer, l *Leader) {
	r.write(w, &filling{
		page: &l.Page, script: len(l.Exercises) > 0, exercises: len(l.Exercises) > 0, led: true,
		drawings: hasDrawing(l.Notes),
		main:     func(w *bytes.Buffer) { r.leaderMain(w, l) },
	})
}

func (r *Renderer) leaderMain(w *bytes.Buffer, l *Leader) {
	words := &r.words.Leader
	head(w, &l.Page, func() {
		w.WriteString(`<ul class="facts"><li>`)
		link(w, "", l.Of.Href, words.Part)
		w.WriteString("</li></ul>\n")
	})
	element(w, "p", "", words.Open)
	w.WriteString("\n<article>\n")
	w.WriteString(string(l.Notes))
	r.references(w, l.Cited)
	w.WriteString("</article>\n")
	if len(l.Exercises) == 0 {
		return
	}
	r.wall(w, l)
	r.tally(w, l)
	r.module(w, l.Module)
}

// cardField ends the label of the field for the number of a card, and begins the field.
const cardField = `</label> <input type="number" inputmode="numeric" min="1" value="1" autocomplete="off"`

// wall writes the exercises one after the other. The script shows one at a time, in large type, and its work line by
// line.
func (r *Renderer) wall(w *bytes.Buffer, l *Leader) {
	words := &r.words.Leader
	w.WriteString("<section class=\"wall\" aria-labelledby=\"wall-title\">\n<header><h2 id=\"wall-title\">")
	text(w, words.Wall)
	w.WriteString("</h2>\n<p" + " " + wire.LiveOnly + ">")
	text(w, words.Keys)
	w.WriteString("</p>\n<p>")
	r.leaderButton(w, "show", words.OnWall)
	w.WriteString("</p></header>\n<div class=\"bar\" hidden>\n<p><label for=\"wall-card\">")
	text(w, r.words.Exercise.Card)
	w.WriteString(cardField)
	w.WriteString(" id=\"wall-card\"></p>\n<p>")
	r.leaderButton(w, "back", words.Back)
	w.WriteByte(' ')
	r.leaderButton(w, "next", words.Next)
	w.WriteString("</p>\n<p class=\"clock\"><span class=\"now\"></span> <span class=\"elapsed\"></span> ")
	r.leaderButton(w, "start", words.Start)
	w.WriteString("</p>\n<p>")
	r.leaderButton(w, "close", words.Close)
	w.WriteString("</p>\n</div>\n")
	for i := range l.Exercises {
		r.slide(w, &l.Exercises[i])
	}
	w.WriteString("</section>\n")
}

func (r *Renderer) leaderButton(w *bytes.Buffer, class, label string) {
	w.WriteString(`<button type="button"`)
	attribute(w, "class", class)
	flag(w, wire.LiveOnly)
	w.WriteByte('>')
	text(w, label)
	w.WriteString("</button>")
}

// slide writes one exercise: the story, what is asked, the work, and the answers.
func (r *Renderer) slide(w *bytes.Buffer, e *LedExercise) {
	id := "wall_" + e.Name
	w.WriteString(`<section class="slide"`)
	numbered(w, wire.Exercise, e.Index)
	if e.Minutes > 0 {
		numbered(w, wire.Minutes, e.Minutes)
	}
	attribute(w, "aria-labelledby", id)
	w.WriteString("><h3")
	attribute(w, "id", id)
	w.WriteByte('>')
	element(w, "small", "", r.words.Exercise.Kind.with(strconv.Itoa(e.Number)))
	w.WriteByte(' ')
	said(w, e.Lang, e.Title)
	w.WriteString("</h3>\n")
	if e.Minutes > 0 {
		element(w, "p", "minutes", r.words.Leader.Minutes.with(strconv.Itoa(e.Minutes)))
	}
	w.WriteString("<p class=\"story\">")
	r.story(w, e.Story)
	w.WriteString("</p>\n")
	r.report(w, e.Report)
	w.WriteString("<ol class=\"asks\">")
	for i := range e.Asks {
		if a := &e.Asks[i]; !a.Step {
			w.WriteString("<li>")
			said(w, a.Lang, a.Label)
			if a.Options == nil {
				w.WriteByte(' ')
				element(w, "small", "", r.words.Exercise.digits(a.Digits))
			}
			r.listed(w, a.Options, i)
			w.WriteString("</li>")
		}
	}
	w.WriteString("</ol>\n")
	for i := range e.Work {
		work := &e.Work[i]
		name := id + "_work_" + strconv.Itoa(i+1)
		w.WriteString("<div")
		numbered(w, wire.Sheet, work.Index)
		w.WriteString("><h4")
		attribute(w, "id", name)
		w.WriteByte('>')
		said(w, work.Lang, work.Title)
		w.WriteString(`</h4><div class="work"><div role="group" tabindex="0"`)
		attribute(w, "aria-labelledby", name)
		w.WriteString("><ol>\n")
		lines(w, work.Work[:min(work.Last+1, len(work.Work))]) // what comes after the last answer is not asked for
		w.WriteString("</ol></div></div></div>\n")
	}
	r.found(w, e)
	w.WriteString("</section>\n")
}

// found writes the answers of a slide.
func (r *Renderer) found(w *bytes.Buffer, e *LedExercise) {
	w.WriteString(`<div class="found">`)
	element(w, "h4", "", r.words.Leader.Found)
	w.WriteString("<dl>")
	for i := range e.Asks {
		a := &e.Asks[i]
		if a.Step {
			continue
		}
		rightAnswer(w, a, i)
		r.reasons(w, a)
		w.WriteString("</dd></div>")
	}
	w.WriteString("</dl></div>")
}

// tally writes the fields for answers that are heard in the room. Without a script there is none.
func (r *Renderer) tally(w *bytes.Buffer, l *Leader) {
	words := &r.words.Leader
	w.WriteString(`<section class="tally" aria-labelledby="tally-title"`)
	flag(w, wire.LiveOnly)
	w.WriteString("><h2 id=\"tally-title\">")
	text(w, words.Tally)
	w.WriteString("</h2>\n")
	element(w, "p", "", words.How)
	w.WriteString("\n<p class=\"choice\"><label for=\"tally-exercise\">")
	text(w, words.Exercise)
	w.WriteString(`</label> <select id="tally-exercise" autocomplete="off">`)
	for i := range l.Exercises {
		e := &l.Exercises[i]
		inLanguage(w, "option", e.Lang, strconv.Itoa(e.Number)+". "+e.Title)
	}
	w.WriteString("</select> <label for=\"tally-card\">")
	text(w, r.words.Exercise.Card)
	w.WriteString(cardField)
	w.WriteString(" id=\"tally-card\"></p>\n")
	for i := range l.Exercises {
		e := &l.Exercises[i]
		w.WriteString(`<div class="heard"`)
		numbered(w, wire.Exercise, e.Index)
		if i > 0 {
			w.WriteString(" hidden")
		}
		w.WriteString("><p class=\"story\">")
		r.story(w, e.Story)
		w.WriteString("</p>\n")
		r.report(w, e.Report)
		w.WriteString("<ol class=\"asks\">\n")
		for ask := range e.Asks {
			if !e.Asks[ask].Step {
				r.question(w, e.Exercise, ask)
			}
		}
		w.WriteString("</ol></div>\n")
	}
	w.WriteString("<p class=\"last\" role=\"status\"></p>\n<div class=\"counts\"></div>\n<p>")
	r.leaderButton(w, "undo", words.Undo)
	w.WriteByte(' ')
	r.leaderButton(w, "clear", words.Clear)
	w.WriteString("</p>\n</section>\n")
}
