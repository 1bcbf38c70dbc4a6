package render

import (
	"bytes"
	"html/template"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// A Block is what the page about one block has before its text: what is asked, and the answers of its worksheets.
type Block struct {
	Groups   []FactGroup
	Refusals []SheetNotes // why a worksheet has no answers
	Answers  []BlockAnswer
	Feeds    *BlockFeeds   // nil for a page that sets no days
	Cautions []SheetNotes  // the gravest first in each worksheet
	Text     template.HTML // what the page says below its worksheets: cautions that are always in view
}

// A FactGroup is a part of the form.
type FactGroup struct {
	ID, Title string
	Folded    bool     // it is another way to know what is asked elsewhere
	Tells     *Telling // what it comes to; nil for a part that is asked for itself
	Facts     []Asking
}

// An Asking is one thing that is asked of a block.
type Asking struct {
	Sheet     int // that the field belongs to
	ID        string
	Given     Given
	Unknown   string // what it counts as while nobody knows it, as it is typed; "" for what has no such
	UnknownIn string // the unit of that
	Later     string // what it counts as in older trees; "" for the same
	Lacking   string // what is missing then
	First     bool   // that is for first leaf: of older trees it counts as empty
	Instead   string // what counts while it is empty; "" for what cannot be, or needs no sentence
	Empty     bool   // it is, in the example
	Tells     *Telling
}

// A Telling is the answer that says what something comes to.
type Telling struct {
	Sheet  int
	Answer Answer
}

// SheetNotes are sentences of one worksheet.
type SheetNotes struct {
	Sheet int
	Notes []Note

	Fact     string // the fact without which nobody knows whether they hold; "" for none
	Untested string // what is said in their place while it is not known
}

// A BlockAnswer is a line of the answers, with the guide that explains it.
type BlockAnswer struct {
	Sheet  int
	Answer Answer
	Guide  *Link // nil where no guide does, and where an answer above has it
}

// BlockFeeds are the days of the feeds, with what is put on each day: for an acre, and for the block.
type BlockFeeds struct {
	Sheet  int
	Days   []Answer
	Of     Answer // the material, since pounds on a wall are of nothing without it
	Acre   []Answer
	Blocks int // the worksheet that answers for the block; -1 for none
	Block  []Answer
}

// block writes what the page about one block has before its text.
func (r *Renderer) block(w *bytes.Buffer, b *Block) {
	if b == nil {
		return
	}
	w.WriteString("<div class=\"sides\">")
	r.blockForm(w, b)
	w.WriteString("<div>")
	r.blockAnswers(w, b)
	if len(b.Cautions) > 0 || len(b.Text) > 0 {
		w.WriteString("<section class=\"cautions\">")
		element(w, "h2", "", r.words.Block.Cautions)
		w.WriteByte('\n')
		if len(b.Text) > 0 {
			w.WriteString("<div class=\"always\">")
			w.WriteString(string(b.Text))
			w.WriteString("</div>\n")
		}
		for i := range b.Cautions {
			r.sheetNotes(w, "signals", &b.Cautions[i])
		}
		w.WriteString("</section>\n")
	}
	w.WriteString("</div></div>\n")
	r.blocks(w)
	w.WriteString("<section class=\"room\" aria-hidden=\"true\">")
	element(w, "h2", "", r.words.Block.Notes)
	w.WriteString("<p></p></section>\n")
}

// blocks writes where a reader keeps blocks, which the script shows, and what is said where that script did not come.
func (r *Renderer) blocks(w *bytes.Buffer) {
	words := &r.words.Block
	w.WriteString("<p class=\"lost\" hidden>")
	text(w, words.Lost)
	w.WriteString("</p>\n<section class=\"blocks\" hidden>")
	element(w, "h2", "", words.Blocks)
	element(w, "p", "hint", words.KeptHere)
	w.WriteString("\n<div class=\"field\"><label for=\"block-chosen\">")
	text(w, words.Chosen)
	w.WriteString("</label><select id=\"block-chosen\"><option>")
	text(w, words.Example)
	w.WriteString("</option></select></div>\n<div class=\"field\"><label for=\"block-name\">")
	text(w, words.Name)
	w.WriteString("</label><div class=\"entry\"><input type=\"text\" id=\"block-name\" maxlength=\"50\"" +
		" autocomplete=\"off\"></div></div>\n<p role=\"status\"></p>\n<div class=\"ways\">")
	for _, way := range [...]struct{ class, text string }{
		{"keep", words.Keep}, {"copy of-block", words.Copy}, {"rename of-block", words.Rename},
		{"remove of-block", words.Remove}, {"save", words.Save}, {"load", words.Load},
	} {
		w.WriteString("<button type=\"button\"")
		attribute(w, "class", way.class)
		w.WriteByte('>')
		text(w, way.text)
		w.WriteString("</button>")
	}
	w.WriteString("<button type=\"button\"")
	flag(w, wire.Link)
	w.WriteByte('>')
	text(w, r.words.Kept.Link)
	w.WriteString("</button></div><input type=\"file\" accept=\".json\" hidden>\n</section>\n")
}

// blockForm writes what is asked.
func (r *Renderer) blockForm(w *bytes.Buffer, b *Block) {
	w.WriteString("<section class=\"known\" id=\"known\" aria-labelledby=\"known-title\">")
	w.WriteString("<h2 id=\"known-title\">")
	text(w, r.words.Block.Known)
	w.WriteString("</h2>\n")
	element(w, "p", "hint", r.words.Block.KnownWhy)
	w.WriteByte('\n')
	for i := range b.Groups {
		r.factGroup(w, &b.Groups[i])
	}
	w.WriteString("</section>\n")
}

// factGroup writes a part of the form.
func (r *Renderer) factGroup(w *bytes.Buffer, g *FactGroup) {
	if g.Folded {
		w.WriteString("<details><summary>")
		text(w, g.Title)
		w.WriteString("</summary>\n")
	} else {
		w.WriteString("<div role=\"group\"")
		attribute(w, "aria-labelledby", "known-"+g.ID)
		w.WriteString("><h3")
		attribute(w, "id", "known-"+g.ID)
		w.WriteByte('>')
		text(w, g.Title)
		w.WriteString("</h3>\n")
	}
	for i := range g.Facts {
		r.asking(w, &g.Facts[i])
	}
	if g.Tells != nil {
		w.WriteString("<p class=\"told\">")
		comesTo(w, g.Tells)
		w.WriteString("</p>")
	}
	if g.Folded {
		w.WriteString("</details>\n")
	} else {
		w.WriteString("</div>\n")
	}
}

// asking writes the field of a fact. It belongs to a worksheet that is below.
func (r *Renderer) asking(w *bytes.Buffer, a *Asking) {
	g := &a.Given
	w.WriteString(`<div class="field`)
	if g.Kind == KindChoice && g.wide() {
		w.WriteString(" wide")
	}
	w.WriteByte('"')
	numbered(w, wire.Sheet, a.Sheet)
	attribute(w, wire.Fact, a.ID)
	if a.Unknown != "" {
		attribute(w, wire.Unknown, a.Unknown)
		if len(g.Units) > 0 {
			attribute(w, wire.UnknownIn, a.UnknownIn)
		}
		if a.Later != "" {
			attribute(w, wire.Later, a.Later)
		}
		if a.First {
			flag(w, wire.First)
		}
	}
	w.WriteByte('>')
	r.label(w, g)
	if g.Kind == KindChoice {
		r.choice(w, g)
	} else {
		r.number(w, g)
	}
	if a.Unknown != "" {
		r.lacking(w, a)
	}
	if a.Instead != "" {
		w.WriteString(`<p class="hint instead"`)
		if !a.Empty {
			w.WriteString(" hidden")
		}
		w.WriteString("><span>")
		text(w, a.Instead+" ")
		w.WriteString("</span>")
		comesTo(w, a.Tells)
		w.WriteString("<span>.</span></p>") // on paper the number is alone
	}
	if a.Unknown != "" {
		r.notKnown(w, g)
	}
	w.WriteString("</div>\n")
}

// notKnown writes the button for a fact that nobody knows. Its place is kept until the page is live.
func (r *Renderer) notKnown(w *bytes.Buffer, g *Given) {
	w.WriteString(`<button type="button"`)
	flag(w, wire.LiveOnly)
	attribute(w, "aria-describedby", g.ID)
	w.WriteByte('>')
	text(w, r.words.Block.NotKnown)
	w.WriteString("</button>")
}

// comesTo writes what something comes to.
func comesTo(w *bytes.Buffer, t *Telling) {
	w.WriteString("<span")
	numbered(w, wire.Sheet, t.Sheet)
	w.WriteString("><span>")
	said(w, t.Answer.Lang, t.Answer.Label)
	w.WriteString(": </span><b>")
	figure(w, &t.Answer.Shown)
	w.WriteString("</b></span>")
}

// lacking writes what the field counts as while nobody knows it, and what that comes to. The script shows it then.
func (r *Renderer) lacking(w *bytes.Buffer, a *Asking) {
	w.WriteString(`<p class="hint lacking" hidden>`)
	r.words.Block.CountedAs.write(w, func(blank string) {
		if blank == "lacking" {
			text(w, a.Lacking)
			return
		}
		element(w, "span", "", a.Unknown)
		if a.UnknownIn != "" {
			text(w, " "+a.UnknownIn)
		}
	})
	if a.Tells != nil {
		w.WriteByte(' ')
		comesTo(w, a.Tells)
		w.WriteByte('.')
	}
	w.WriteString("</p>")
}

// blockAnswers writes the answers, the feeds after the last answer about them, and then what these come from.
func (r *Renderer) blockAnswers(w *bytes.Buffer, b *Block) {
	w.WriteString("<section class=\"plan\" id=\"plan\" aria-labelledby=\"plan-title\">")
	w.WriteString("<h2 id=\"plan-title\">")
	text(w, r.words.Block.Answers)
	w.WriteString("</h2><p class=\"sheet-name\"></p>\n")
	for i := range b.Refusals {
		r.sheetNotes(w, "remarks", &b.Refusals[i])
	}
	first := b.Answers
	if b.Feeds != nil {
		first = b.Answers[:b.Feeds.after(b.Answers)]
	}
	r.answerLines(w, first)
	if b.Feeds != nil {
		r.blockFeeds(w, b.Feeds)
	}
	if reasons := b.Answers[len(first):]; len(reasons) > 0 {
		element(w, "h3", "", r.words.Block.Reasons)
		r.answerLines(w, reasons)
	}
	w.WriteString("</section>\n")
}

// after is how many answers come before the days: all up to the last one about the feeds.
func (f *BlockFeeds) after(answers []BlockAnswer) int {
	for i := len(answers); i > 0; i-- {
		if of := answers[i-1].Sheet; of == f.Sheet || of == f.Blocks {
			return i
		}
	}
	return len(answers)
}

func (r *Renderer) answerLines(w *bytes.Buffer, answers []BlockAnswer) {
	w.WriteString("<dl>\n")
	for i := range answers {
		r.blockAnswer(w, &answers[i])
	}
	w.WriteString("</dl>\n")
}

func (r *Renderer) blockAnswer(w *bytes.Buffer, a *BlockAnswer) {
	w.WriteString("<div")
	numbered(w, wire.Sheet, a.Sheet)
	w.WriteString("><dt")
	language(w, a.Answer.Lang)
	if a.Answer.There >= 0 {
		when(w, a.Answer.There, !a.Answer.Out)
	}
	w.WriteByte('>')
	text(w, a.Answer.Label)
	w.WriteString("</dt><dd")
	if a.Answer.There >= 0 {
		when(w, a.Answer.There, !a.Answer.Out)
	}
	w.WriteByte('>')
	total(w, &a.Answer.Shown)
	if a.Guide != nil {
		w.WriteByte(' ')
		link(w, "why", a.Guide.Href, a.Guide.Text)
	}
	w.WriteString("</dd></div>\n")
}

// blockFeeds writes the days of the feeds as a list with a box to tick for each.
func (r *Renderer) blockFeeds(w *bytes.Buffer, f *BlockFeeds) {
	w.WriteString("<div class=\"feeds\"")
	numbered(w, wire.Sheet, f.Sheet)
	w.WriteByte('>')
	element(w, "h3", "", r.words.Block.Feeds)
	w.WriteString("\n<p>")
	text(w, f.Of.Label)
	w.WriteString(": <b>")
	figure(w, &f.Of.Shown)
	w.WriteString("</b></p>\n<ol>\n")
	for i := range f.Days {
		day := &f.Days[i]
		w.WriteString("<li")
		when(w, day.There, !day.Out)
		w.WriteString("><span class=\"box\" aria-hidden=\"true\"></span> <b>")
		figure(w, &day.Shown)
		w.WriteString("</b> ")
		amounts(w, f.Acre)
		if len(f.Block) > 0 {
			w.WriteString("<span")
			numbered(w, wire.Sheet, f.Blocks)
			w.WriteString("> ")
			r.words.Block.ForBlock.write(w, func(string) { amounts(w, f.Block) })
			w.WriteString("</span>")
		}
		w.WriteString("</li>\n")
	}
	w.WriteString("</ol></div>\n")
}

// amounts writes an amount, and in parentheses what else it is.
func amounts(w *bytes.Buffer, list []Answer) {
	for i := range list {
		a := &list[i]
		w.WriteString("<span")
		if a.There >= 0 {
			when(w, a.There, !a.Out)
		}
		w.WriteByte('>')
		if i > 0 {
			w.WriteString(" (")
		}
		figure(w, &a.Shown)
		if i > 0 {
			w.WriteString(")")
		}
		w.WriteString("</span>")
	}
}
