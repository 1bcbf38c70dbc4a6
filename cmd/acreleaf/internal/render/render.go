package render

import (
	"bytes"
	"io/fs"
	"slices"
	"strings"

	"acreleaf/calc/words"
)

// A Renderer makes the pages of one language of a site. It is safe for use by several goroutines at once.
type Renderer struct {
	site    Site
	words   *Words
	general *words.General
	frame   form
}

// New reads the words of the site's language and the page frame from the theme's files.
func New(files fs.FS, site Site) (*Renderer, error) {
	interfaceWords, err := LoadWords(files, site.Language)
	if err != nil {
		return nil, err
	}
	frame, err := newForm(files, site, interfaceWords)
	if err != nil {
		return nil, err
	}
	general := words.InGeneral(site.Language)
	return &Renderer{site: site, words: interfaceWords, general: general, frame: frame}, nil
}

// Words gives the interface words of the renderer's language.
func (r *Renderer) Words() *Words { return r.words }

// A filling is one page in the frame: its facts and what fills the blanks that only some pages have.
type filling struct {
	page      *Page
	script    bool // the page carries a module
	exercises bool // the page has exercises, which bring a script and a style
	course    bool // the page is of a course, which brings a style
	block     bool // the page is about one block, which brings a style and a script
	drawings  bool // the page has drawings, which bring a style and a script
	index     bool // the page is an index of terms
	led       bool // the page is for who leads a workshop, and has a script of its own for its exercises
	main      func(w *bytes.Buffer)
	turn      func(w *bytes.Buffer)
	cite      func(w *bytes.Buffer)
}

// write fills in the frame.
func (r *Renderer) write(w *bytes.Buffer, f *filling) {
	for i, fixed := range r.frame.pieces {
		w.WriteString(fixed)
		if i < len(r.frame.blanks) {
			r.fill(w, f, r.frame.blanks[i])
		}
	}
}

func (r *Renderer) fill(w *bytes.Buffer, f *filling, blank int) {
	switch blank {
	case blankRoot:
		text(w, f.page.Root)
	case blankTitle:
		text(w, f.page.Title)
	case blankSummary:
		text(w, f.page.Summary)
	case blankAddress:
		r.address(w, f.page)
	case blankScript:
		r.script(w, f)
		r.ownStyles(w, f)
	case blankHome:
		text(w, f.page.Home)
	case blankUp:
		if f.page.Up != nil {
			w.WriteByte(' ')
			link(w, "", f.page.Up.Href, f.page.Up.Text)
		}
	case blankSources:
		if f.page.Sources != "" {
			w.WriteByte(' ')
			link(w, "", f.page.Sources, r.words.Page.Sources)
		}
	case blankTerms:
		text(w, f.page.Terms)
	case blankLanguages:
		r.languages(w, f.page)
	case blankMain:
		optional(w, f.main)
	case blankTurn:
		optional(w, f.turn)
	case blankCite:
		optional(w, f.cite)
	}
}

// head writes the title of a page, the summary under it, and the facts that are in the margin beside them.
func head(w *bytes.Buffer, p *Page, facts func()) {
	w.WriteString("<header class=\"head\">\n<div>")
	inLanguage(w, "h1", p.TitleLang, p.Title)
	w.WriteByte('\n')
	if p.Summary != "" {
		w.WriteString("<p class=\"summary\"")
		language(w, p.SummaryLang)
		w.WriteByte('>')
		text(w, p.Summary)
		w.WriteString("</p>")
	}
	w.WriteString("</div>\n")
	if facts != nil {
		facts()
	}
	w.WriteString("</header>\n")
}

func optional(w *bytes.Buffer, part func(w *bytes.Buffer)) {
	if part != nil {
		part(w)
	}
}

// address writes what needs the site's absolute address: the canonical place of the page, its twins in other
// languages and what a message that links to it shows. Without a base address nothing is guessed.
func (r *Renderer) address(w *bytes.Buffer, p *Page) {
	if p.Unlisted {
		w.WriteString("<meta name=\"robots\" content=\"noindex\">\n")
		return
	}
	if r.site.Base == "" {
		return
	}
	here := r.site.Base + p.Address
	w.WriteString(`<link rel="canonical"`)
	place(w, here)
	w.WriteString(">\n")
	alternate := func(code, address string) {
		w.WriteString(`<link rel="alternate"`)
		attribute(w, "hreflang", code)
		place(w, r.site.Base+address)
		w.WriteString(">\n")
	}
	there := slices.DeleteFunc(slices.Clone(p.Languages), func(l Language) bool { return l.Lacks != "" })
	if len(there) > 1 { // for those who read neither: the main language of the site
		alternate("x-default", there[0].Address)
	}
	for _, l := range there {
		alternate(l.Code, l.Address)
	}
	if p.Feed != "" {
		w.WriteString(`<link rel="alternate" type="application/atom+xml"`)
		place(w, r.site.Base+p.Feed)
		w.WriteString(">\n")
	}
	property(w, "og:type", "article")
	property(w, "og:title", p.Title)
	property(w, "og:description", p.Summary)
	property(w, "og:url", here)
	property(w, "og:site_name", r.site.Office)
	property(w, "og:locale", locale(r.site.Language))
	for _, l := range there {
		if !l.Current {
			property(w, "og:locale:alternate", locale(l.Code))
		}
	}
	if r.site.Card != "" {
		property(w, "og:image", r.site.Base+r.site.Card)
		property(w, "og:image:alt", r.site.Office)
	}
}

// locale is a language as Open Graph has it.
func locale(language string) string { return strings.ReplaceAll(language, "-", "_") }

func property(w *bytes.Buffer, name, value string) {
	if value == "" {
		return
	}
	w.WriteString("<meta")
	attribute(w, "property", name)
	attribute(w, "content", value)
	w.WriteString(">\n")
}

// script writes the tag of the script, and in a template those of the scripts that it loads later. The page for a
// missing address has none: its ways may not lead to it.
func (r *Renderer) script(w *bytes.Buffer, f *filling) {
	tag := func(start, script string) {
		w.WriteString(start)
		attribute(w, "src", f.page.Root+script)
		w.WriteString("></script>")
	}
	if f.script && r.site.Script != "" {
		r.liveScripts(w, f, tag)
		w.WriteByte('\n')
	}
	if f.course && r.site.CourseScript != "" {
		tag("<script defer", r.site.CourseScript)
		w.WriteByte('\n')
	}
	find := "<script defer"
	if f.index {
		find = "<script" // it runs before the list is drawn
	}
	for _, script := range [][2]string{{"<script defer", r.site.Offline}, {find, r.site.Find}} {
		if script[1] != "" && !f.page.Astray {
			tag(script[0], script[1])
			w.WriteByte('\n')
		}
	}
	if len(f.page.Languages) > 0 && r.site.LanguageScript != "" {
		tag("<script defer", r.site.LanguageScript)
		w.WriteByte('\n')
	}
}

// liveScripts writes the tags of what makes a page live.
func (r *Renderer) liveScripts(w *bytes.Buffer, f *filling, tag func(start, script string)) {
	tag("<script defer", r.site.Script)
	if r.site.Ranges == "" {
		return
	}
	tag("\n<template><script", r.site.Ranges)
	tag("<script", r.site.After)
	tag("<script", r.site.Paper)
	if f.block {
		tag("<script", r.site.BlocksScript)
	} else {
		tag("<script", r.site.BlockScript)
	}
	if f.drawings {
		tag("<script", r.site.DrawingScript)
	}
	switch {
	case f.exercises && f.led:
		tag("<script", r.site.Wall)
	case f.exercises:
		tag("<script", r.site.Practice)
	}
	w.WriteString("</template>")
}

// ownStyles writes the tags of the styles that not every page has.
func (r *Renderer) ownStyles(w *bytes.Buffer, f *filling) {
	style := func(has bool, path string) {
		if has && path != "" {
			w.WriteString("<link rel=\"stylesheet\"")
			attribute(w, "href", f.page.Root+path)
			w.WriteString(">\n")
		}
	}
	style(f.exercises, r.site.CardStyle)
	style(f.course, r.site.CourseStyle)
	style(f.block, r.site.BlockStyle)
	style(f.drawings, r.site.DrawingStyle)
	style(f.exercises && f.led, r.site.WallStyle)
}

func (r *Renderer) languages(w *bytes.Buffer, p *Page) {
	if len(p.Languages) == 0 {
		return
	}
	w.WriteString(`<nav class="languages"`)
	attribute(w, "aria-label", r.words.Page.Languages)
	w.WriteByte('>')
	for i, l := range p.Languages {
		if i > 0 {
			w.WriteByte(' ')
		}
		if l.Current {
			w.WriteString(`<span aria-current="true">`)
			text(w, l.Name)
			w.WriteString("</span>")
			continue
		}
		if l.Lacks != "" {
			w.WriteString("<span")
			attribute(w, "lang", l.Code)
			w.WriteByte('>')
			text(w, l.Lacks)
			w.WriteByte(' ')
			link(w, "", l.Href, l.Name)
			w.WriteString("</span>")
			continue
		}
		languageLink(w, l.Href, l.Code, l.Name)
	}
	w.WriteString("</nav>\n")
}

// languageLink writes a link to a page in another language, with its text in that language.
func languageLink(w *bytes.Buffer, href, code, s string) {
	w.WriteString("<a")
	place(w, href)
	attribute(w, "hreflang", code)
	attribute(w, "lang", code)
	w.WriteByte('>')
	text(w, s)
	w.WriteString("</a>")
}
