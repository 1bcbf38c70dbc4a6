package markdown

import (
	"bytes"
	"fmt"
	"strconv"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// footnote is a footnote's text as the page has it: [^label]: ...
type footnote struct {
	node *extast.Footnote
	at   message.Span // its label
}

// footnoteParser stands around goldmark's parser of footnotes, which drops those that no mark in the text leads to.
type footnoteParser struct{ parser.BlockParser }

func newFootnoteParser() parser.BlockParser {
	return footnoteParser{nestingParser{extension.NewFootnoteBlockParser()}}
}

func (p footnoteParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	line, segment := reader.Position()
	start := segment.Start - segment.Padding + max(pc.BlockOffset(), 0) + len("[^")
	node, state := p.BlockParser.Open(parent, reader, pc)
	if node == nil {
		return nil, state
	}
	r, n := readingOf(pc), node.(*extast.Footnote)
	if len(r.footnotes) == footnoteLimit {
		r.tooMany(start, fmt.Sprintf("this page has more than %d footnotes", footnoteLimit),
			"divide the page into two, and link them")
		reader.SetPosition(line, segment)
		return nil, parser.NoChildren
	}
	r.footnotes = append(r.footnotes, footnote{n, r.span(start, start+len(n.Ref))})
	return n, state
}

// markParser stands around goldmark's parser of the marks in the text, [^label], which leaves one that leads nowhere
// as it is.
type markParser struct{ parser.InlineParser }

func newMarkParser() parser.InlineParser { return markParser{extension.NewFootnoteParser()} }

func (p markParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	line, segment := block.PeekLine()
	node := p.InlineParser.Parse(parent, block, pc)
	if node != nil || !bytes.HasPrefix(line, []byte("[^")) {
		return node
	}
	label := line[len("[^"):]
	end := bytes.IndexAny(label, "[] \t\n`")
	if end > 0 && label[end] == ']' && !bytes.HasPrefix(label[end:], []byte("](")) {
		r := readingOf(pc)
		name := string(label[:end])
		r.advise("footnote-missing", r.span(segment.Start, segment.Start+len("[^]")+end),
			"there is no footnote “"+name+"” on this page, so this is shown as it is",
			"add a line for it: [^"+name+"]: its text")
	}
	return nil
}

// finishFootnotes names the footnotes that are not shown.
func (r *reading) finishFootnotes() {
	byPosition(r.footnotes, func(f footnote) int { return f.at.Start })
	first := make(map[string]message.Span, len(r.footnotes))
	for _, f := range r.footnotes {
		name := string(f.node.Ref)
		if before, twice := first[name]; twice {
			r.fault("footnote-twice", f.at, "the footnote “"+name+"” is written twice on this page",
				"change one of the names; the first is on line "+strconv.Itoa(r.source.Line(before.Start)))
			continue
		}
		first[name] = f.at
		if f.node.Index < 0 {
			r.fault("footnote-unused", f.at, "no mark in the text leads to this footnote, so it is not shown",
				"put [^"+name+"] where it belongs, or take the footnote out")
		}
	}
}

// Footnotes have the ids note_1, and their marks in the text note_1_text, note_1_text_2 and so on. The underscore
// keeps them apart from the ids of headings.

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
	if p.inLink {
		p.w.WriteString(number)
		return
	}
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
