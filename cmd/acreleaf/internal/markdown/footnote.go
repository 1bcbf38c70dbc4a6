package markdown

import (
	"strconv"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
)

// Footnotes have the ids note_1, and their marks in the text note_1_text, note_1_text_2 and so on.

func noteID(index int) string { return "note_" + strconv.Itoa(index) }

func markID(index, reference int) string {
	id := noteID(index) + "_text"
	if reference > 0 {
		id += "_" + strconv.Itoa(reference+1)
	}
	return id
}

func printFootnoteMark(p *printer, node ast.Node) {
	n := node.(*extast.FootnoteLink)
	number := strconv.Itoa(n.Index)
	p.w.WriteString("<sup")
	p.attribute("id", markID(n.Index, n.RefIndex))
	p.w.WriteString(`><a class="note"`)
	p.attribute("href", "#"+noteID(n.Index))
	p.w.WriteString(` role="doc-noteref"`)
	p.attribute("aria-label", p.words.Note+" "+number)
	p.w.WriteByte('>')
	p.w.WriteString(number)
	p.w.WriteString("</a></sup>")
}

func printFootnoteBack(p *printer, node ast.Node) {
	n := node.(*extast.FootnoteBacklink)
	label := p.words.BackToText + ", " + p.words.Note + " " + strconv.Itoa(n.Index)
	if n.RefCount > 1 {
		label += ", " + strconv.Itoa(n.RefIndex+1)
	}
	p.w.WriteString(` <a class="back"`)
	p.attribute("href", "#"+markID(n.Index, n.RefIndex))
	p.w.WriteString(` role="doc-backlink"`)
	p.attribute("aria-label", label)
	p.w.WriteString(">↩</a>")
}

func printFootnote(p *printer, node ast.Node) {
	p.w.WriteString("<li")
	p.attribute("id", noteID(node.(*extast.Footnote).Index))
	p.w.WriteString(">\n")
	p.children(node)
	p.w.WriteString("</li>\n")
}

func printFootnoteList(p *printer, node ast.Node) {
	p.w.WriteString(`<section class="notes" role="doc-endnotes"`)
	p.attribute("aria-label", p.words.Notes)
	p.w.WriteString(">\n<ol>\n")
	p.children(node)
	p.w.WriteString("</ol>\n</section>\n")
}
