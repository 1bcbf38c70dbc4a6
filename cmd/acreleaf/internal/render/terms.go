package render

import (
	"bytes"
	"cmp"
	"strconv"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// TermsWords is for the index of terms, and for finding a word in it.
type TermsWords struct {
	Folder  string   `yaml:"folder"` // of its page
	Way     string   `yaml:"way"`
	Title   string   `yaml:"title"`
	Summary string   `yaml:"summary"`
	Letters string   `yaml:"letters"`
	Digits  string   `yaml:"digits"` // above the words that begin with one
	See     string   `yaml:"see"`
	SeeAlso string   `yaml:"see-also"`
	More    Sentence `yaml:"more" blanks:"number"`
	Find    string   `yaml:"find"`
	Go      string   `yaml:"go"`
	Found   Sentence `yaml:"found" blanks:"number"`
	None    string   `yaml:"none"`
	Nearest string   `yaml:"nearest"`
	Here    string   `yaml:"here"` // in the index of another language: the way to this one
}

func (t *TermsWords) scriptWords() map[wire.Word]string {
	return map[wire.Word]string{wire.FindWord: t.Find, wire.FindGo: t.Go, wire.FoundWords: t.Found.pattern()}
}

// Terms is the index of terms of a language.
type Terms struct {
	Page    Page
	Letters []Letter
}

// A Letter is the terms that begin with it; the empty one is those that begin with a digit or a sign.
type Letter struct {
	Head  string
	Terms []Term
}

// A Term is a word of the index, with the places that it leads to.
type Term struct {
	ID     string // where other terms lead to it; "" where none does
	Text   string
	Places []Link
	More   int // places that are not shown
	Under  []Term
	See    []Link
}

// Terms writes the index of terms.
func (r *Renderer) Terms(w *bytes.Buffer, t *Terms) {
	words := &r.words.Terms
	r.write(w, &filling{page: &t.Page, index: true, main: func(w *bytes.Buffer) {
		head(w, &t.Page, nil)
		class := "terms"
		if t.isLong() {
			class = "terms long"
		}
		r.find(w, t)
		w.WriteString("<div")
		attribute(w, "class", class)
		w.WriteString(" id=\"terms\">\n<nav")
		attribute(w, "aria-label", words.Letters)
		w.WriteByte('>')
		for i, l := range t.Letters {
			if i > 0 {
				w.WriteByte(' ')
			}
			link(w, "", "#"+letterID(l.Head), cmp.Or(l.Head, words.Digits))
		}
		w.WriteString("</nav>\n")
		for _, l := range t.Letters {
			w.WriteString("<section>\n<h2")
			attribute(w, "id", letterID(l.Head))
			w.WriteByte('>')
			text(w, cmp.Or(l.Head, words.Digits))
			w.WriteString("</h2>\n<ul>\n")
			for i := range l.Terms {
				r.term(w, &l.Terms[i])
			}
			w.WriteString("</ul>\n</section>\n")
		}
		w.WriteString("</div>\n")
	}})
}

// find writes the place of the box to find a word, and below it what the script has to say. It shows the ways to the
// index in other languages, with the word in them, when this one does not have it.
func (r *Renderer) find(w *bytes.Buffer, t *Terms) {
	w.WriteString("<div class=\"find\">\n<div></div>\n<div role=\"status\">\n<p></p>\n<p hidden>")
	text(w, r.words.Terms.None)
	w.WriteByte(' ')
	for _, l := range t.Page.Languages {
		if !l.Current && l.Lacks == "" {
			languageLink(w, l.Href, l.Code, l.Index)
			w.WriteByte(' ')
		}
	}
	w.WriteString("</p>\n<p hidden>")
	text(w, r.words.Terms.Nearest)
	w.WriteString("</p>\n</div>\n</div>\n")
}

// isLong says whether there is more in the index than a browser lays out at once without a wait.
func (t *Terms) isLong() bool {
	const most = 1000 // words: a tenth of a second of a processor
	n := 0
	for _, l := range t.Letters {
		n += len(l.Terms)
	}
	return n > most
}

func letterID(head string) string { return "letter_" + cmp.Or(head, "0") }

// term writes a word, then its places, then what is more narrow below it. A word that is the name of its one place
// leads there itself.
func (r *Renderer) term(w *bytes.Buffer, t *Term) {
	w.WriteString("<li")
	if t.ID != "" {
		attribute(w, "id", t.ID)
	}
	w.WriteString("><b>")
	places := t.Places
	if len(places) == 1 && places[0].Text == t.Text {
		link(w, "", places[0].Href, t.Text)
		places = nil
	} else {
		text(w, t.Text)
	}
	w.WriteString("</b>")
	if len(t.Places)+len(t.Under) == 0 {
		r.see(w, r.words.Terms.See, t.See)
		w.WriteString("</li>\n")
		return
	}
	if len(places)+len(t.Under) > 0 {
		w.WriteString("\n<ul>\n")
		for _, p := range places {
			w.WriteString("<li>")
			link(w, "", p.Href, p.Text)
			w.WriteString("</li>\n")
		}
		if t.More > 0 {
			w.WriteString("<li>")
			r.words.Terms.More.write(w, func(string) { text(w, strconv.Itoa(t.More)) })
			w.WriteString("</li>\n")
		}
		for i := range t.Under {
			r.term(w, &t.Under[i])
		}
		w.WriteString("</ul>")
	}
	r.see(w, r.words.Terms.SeeAlso, t.See)
	w.WriteString("</li>\n")
}

func (r *Renderer) see(w *bytes.Buffer, say string, list []Link) {
	for i, to := range list {
		if i == 0 {
			w.WriteByte(' ')
			element(w, "i", "", say)
		} else {
			w.WriteByte(',')
		}
		w.WriteByte(' ')
		link(w, "", to.Href, to.Text)
	}
}
