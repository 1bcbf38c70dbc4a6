package render

import (
	"bytes"
	"strconv"
	"strings"
)

// A Cite is a place in a page that rests on a source.
type Cite struct {
	Source int // number of the source in the page's list, from 1
	Use    int // which of all such places of the page it is, from 1
}

// A Reference is a source in the list at the end of a page.
type Reference struct {
	Entry Source
	Href  string // way to the entry of the bibliography; empty when the site has no page for it
	Uses  []Use
}

// A Use is a number of the page that rests on a source.
type Use struct {
	Cite int    // as in Cite.Use
	Text string // "48 lb/ac"
	Lang string // of the text, where it is not that of the page
}

// The ids of sources and of the places that rest on them. The underscore keeps them apart from the ids of headings.

func sourceID(number int) string { return "source_" + strconv.Itoa(number) }

func citeID(use int) string { return "taken_" + strconv.Itoa(use) }

// cite writes the number of a source after what was taken from it. It comes after a dagger: a raised 2 after "43,560
// ft2" would be read as a power.
func (r *Renderer) cite(w *bytes.Buffer, c Cite, source string) {
	w.WriteString(`<a class="cite"`)
	citing(w, c)
	w.WriteString(` aria-label="`)
	r.words.Sources.Numbered.write(w, func(blank string) {
		if blank == "number" {
			integer(w, c.Source)
		} else {
			text(w, source)
		}
	})
	w.WriteString(`">`)
	marked(w, c.Source)
	w.WriteString("</a>")
}

// citeAs writes a link to a source that has its name in it, and its number after that.
func citeAs(w *bytes.Buffer, c Cite, name func()) {
	w.WriteString("<a")
	citing(w, c)
	w.WriteByte('>')
	name()
	w.WriteByte(' ')
	marked(w, c.Source)
	w.WriteString("</a>")
}

// citing writes the attributes of a link to a source.
func citing(w *bytes.Buffer, c Cite) {
	attribute(w, "id", citeID(c.Use))
	attribute(w, "href", "#"+sourceID(c.Source))
	w.WriteString(` role="doc-biblioref"`)
}

// marked writes the number of a source as a mark in the text.
func marked(w *bytes.Buffer, number int) {
	w.WriteString("†")
	integer(w, number)
}

// references writes the list of sources at the end of a page, folded into one line: what a reader needs of a source is
// beside its number already. Each has the ways back to the numbers that rest on it.
func (r *Renderer) references(w *bytes.Buffer, list []Reference) {
	if len(list) == 0 {
		return
	}
	w.WriteString(`<section class="references" role="doc-bibliography" aria-labelledby="source_list">` +
		`<details><summary><h2 id="source_list">`)
	text(w, r.words.Page.Sources)
	w.WriteString("</h2> <small>")
	integer(w, len(list))
	w.WriteString("</small></summary>\n<ol>\n")
	for i := range list {
		w.WriteString("<li")
		attribute(w, "id", sourceID(i+1))
		w.WriteByte('>')
		r.reference(w, &list[i])
		w.WriteString("</li>\n")
	}
	w.WriteString("</ol>\n</details></section>\n")
}

func (r *Renderer) reference(w *bytes.Buffer, f *Reference) {
	w.WriteString("<p>")
	r.citation(w, &f.Entry, f.Href)
	if kind := r.words.Kinds.name(f.Entry.Kind); !strings.EqualFold(kind, f.Entry.Title) {
		w.WriteByte(' ')
		element(w, "i", "", kind)
	}
	w.WriteString("</p>")
	if len(f.Uses) > 0 {
		r.uses(w, f.Uses)
	}
}

// uses writes the ways back to the numbers that rest on a source.
func (r *Renderer) uses(w *bytes.Buffer, uses []Use) {
	w.WriteString("<p>")
	text(w, r.words.Sources.Used)
	for i, use := range uses {
		if usedBefore(uses, i) {
			continue // it comes after the first of its kind
		}
		if i > 0 {
			w.WriteByte(',')
		}
		w.WriteByte(' ')
		wayBack(w, use.Cite, use.Lang, use.Text)
		again(w, use.Text, uses[i+1:])
	}
	w.WriteString("</p>")
}

// again writes the ways back to the other numbers that read like one, counted from the second.
func again(w *bytes.Buffer, like string, uses []Use) {
	count := 1
	for _, other := range uses {
		if other.Text != like {
			continue
		}
		if count++; count == 2 {
			w.WriteString(" (")
		} else {
			w.WriteString(", ")
		}
		wayBack(w, other.Cite, "", strconv.Itoa(count))
	}
	if count > 1 {
		w.WriteByte(')')
	}
}

// usedBefore says whether a number of the same text stands further up in the list.
func usedBefore(uses []Use, at int) bool {
	for _, before := range uses[:at] {
		if before.Text == uses[at].Text {
			return true
		}
	}
	return false
}

func wayBack(w *bytes.Buffer, use int, lang, s string) {
	w.WriteString("<a")
	attribute(w, "href", "#"+citeID(use))
	w.WriteString(` role="doc-backlink">`)
	said(w, lang, s)
	w.WriteString("</a>")
}
