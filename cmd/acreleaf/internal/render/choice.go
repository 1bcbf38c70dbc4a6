package render

import (
	"bytes"
	"strconv"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// An AskedOption is an option to choose, or an item to put in order.
type AskedOption struct {
	Text    []StoryPiece
	Because string // why the option is right
	When    int    // the cell that is 0 while the option is not right
	Holds   bool   // on the first card
	Value   *Shown // what the item is put in order by; nil for an option, and for a step of the work
}

// pick writes a question that is answered by choosing: one of several options, or a place for each of several items.
func (r *Renderer) pick(w *bytes.Buffer, e *Exercise, i int) {
	a := &e.Asks[i]
	id := ExerciseAnchor(e.Name) + "_" + strconv.Itoa(i+1)
	w.WriteString(`<li class="pick"`)
	numbered(w, wire.Asked, i)
	w.WriteString("><p class=\"question\"")
	attribute(w, "id", id)
	w.WriteByte('>')
	text(w, a.Label)
	w.WriteString("</p>\n<div")
	if a.Order {
		attribute(w, "role", "group")
	} else {
		attribute(w, "role", "radiogroup")
	}
	attribute(w, "aria-labelledby", id)
	attribute(w, "aria-describedby", id+"_mark")
	w.WriteString(">\n<ul class=\"options\">\n")
	for at := range a.Options {
		w.WriteString("<li><label>")
		if a.Order {
			places(w, len(a.Options))
		} else {
			w.WriteString(`<input type="radio" disabled`)
			attribute(w, "name", id)
			numbered(w, "value", at+1)
			w.WriteByte('>')
		}
		w.WriteString(" <span class=\"option\">")
		r.story(w, a.Options[at].Text)
		w.WriteString("</span></label></li>\n")
	}
	w.WriteString("</ul>\n<div class=\"entry\"><button type=\"button\"")
	flag(w, wire.LiveOnly)
	w.WriteByte('>')
	text(w, r.words.Exercise.Check)
	w.WriteString("</button></div></div>")
	marks(w, a, id)
}

// listed writes the options alone, for the wall; nothing for none. Asked is the place of the question.
func (r *Renderer) listed(w *bytes.Buffer, options []AskedOption, asked int) {
	if options == nil {
		return
	}
	w.WriteString("<ul")
	numbered(w, wire.Asked, asked)
	w.WriteByte('>')
	for i := range options {
		w.WriteString("<li><span class=\"option\">")
		r.story(w, options[i].Text)
		w.WriteString("</span></li>")
	}
	w.WriteString("</ul>")
}

// places writes the list of places that an item may have.
func places(w *bytes.Buffer, count int) {
	w.WriteString("<select disabled autocomplete=\"off\"><option value=\"\">–</option>")
	for place := range count {
		element(w, "option", "", strconv.Itoa(place+1))
	}
	w.WriteString("</select>")
}

// reasons writes why an option is right, or the numbers by which items are put in order.
func (r *Renderer) reasons(w *bytes.Buffer, a *ExerciseAsk) {
	if a.Options == nil {
		return
	}
	w.WriteString(`<div class="reasons"`)
	numbered(w, wire.Sheet, a.Index)
	w.WriteByte('>')
	for i := range a.Options {
		o := &a.Options[i]
		switch {
		case o.Value != nil:
			w.WriteString("<p>")
			r.story(w, o.Text)
			w.WriteString(": ")
			quantity(w, o.Value)
			w.WriteString("</p>")
		case !a.Order:
			w.WriteString("<p")
			when(w, o.When, o.Holds)
			w.WriteByte('>')
			text(w, o.Because)
			w.WriteString("</p>")
		}
	}
	w.WriteString("</div>")
}
