package render

import (
	"bytes"
	"strconv"
	"unicode"
	"unicode/utf8"
)

// givens writes what a worksheet takes: first what it needs and what its author gives, then, folded into one line, what
// may be left empty and is.
func (r *Renderer) givens(w *bytes.Buffer, list []Given) {
	w.WriteString(`<div class="given">`)
	element(w, "h3", "", r.words.Worksheet.Given)
	w.WriteByte('\n')
	var folded []*Given
	for i := range list {
		if list[i].folds() {
			folded = append(folded, &list[i])
		} else {
			r.given(w, &list[i])
		}
	}
	if len(folded) > 0 {
		w.WriteString(`<details class="more"><summary>`)
		text(w, r.words.Worksheet.More)
		w.WriteByte(' ')
		w.WriteString("<small>")
		r.few(w, folded)
		w.WriteString("</small>")
		w.WriteString("</summary>\n")
		for i := range list {
			if list[i].folds() {
				r.given(w, &list[i])
			}
		}
		w.WriteString("</details>")
	}
	w.WriteString("</div>\n")
}

// folds says whether a given is out of the way until a reader asks for it: nothing is lost while it is empty.
func (g *Given) folds() bool { return g.Optional && g.Kind == KindNumber && g.Text == "" }

// few lists labels in one line: all of them, or the first two and how many there are beside these.
func (r *Renderer) few(w *bytes.Buffer, list []*Given) {
	const most = 3
	named := len(list)
	if named > most {
		named = most - 1
	}
	for i, g := range list[:named] {
		if i > 0 {
			w.WriteString("; ")
		}
		said(w, g.Lang, withinLine(g.Label))
	}
	if more := len(list) - named; more > 0 {
		w.WriteString("; ")
		text(w, r.words.Worksheet.MoreOf.with(strconv.Itoa(more)))
	}
}

// withinLine is a label as it is written after others: "bulk density", but "NO3 of the well".
func withinLine(label string) string {
	first, size := utf8.DecodeRuneInString(label)
	if next, _ := utf8.DecodeRuneInString(label[size:]); unicode.IsLower(next) || next == ' ' {
		return string(unicode.ToLower(first)) + label[size:]
	}
	return label
}

// given writes one line under Given.
func (r *Renderer) given(w *bytes.Buffer, g *Given) {
	if g.Kind == KindChoice && g.wide() {
		w.WriteString(`<div class="field wide">`)
	} else {
		w.WriteString(`<div class="field">`)
	}
	switch g.Kind {
	case KindLinked:
		r.linked(w, g)
	case KindChoice:
		r.label(w, g)
		r.choice(w, g)
	default:
		r.label(w, g)
		r.number(w, g)
	}
	w.WriteString("</div>\n")
}

// wide says whether an option of a choice is too long to be read beside its label on a phone.
func (g *Given) wide() bool {
	const most = 16 // letters
	for _, c := range g.Choices {
		if len(c.Text) > most {
			return true
		}
	}
	return false
}

func (r *Renderer) label(w *bytes.Buffer, g *Given) {
	w.WriteString("<label")
	attribute(w, "for", g.ID)
	language(w, g.Lang)
	w.WriteByte('>')
	text(w, g.Label)
	if g.Optional && !g.folds() {
		w.WriteByte(' ')
		element(w, "small", "", r.words.Worksheet.Optional)
	}
	w.WriteString("</label>")
}
