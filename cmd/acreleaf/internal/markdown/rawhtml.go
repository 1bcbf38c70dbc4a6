package markdown

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// htmlBlockParser and rawHTMLParser stand around goldmark's parsers of HTML. It is recognised, as CommonMark has it,
// and then shown as the text that the author typed: it never becomes markup. Its comments are for authors, and are left
// out.
type htmlBlockParser struct{ parser.BlockParser }

func newHTMLBlockParser() parser.BlockParser { return htmlBlockParser{parser.NewHTMLBlockParser()} }

func (p htmlBlockParser) Close(node ast.Node, reader text.Reader, pc parser.Context) {
	p.BlockParser.Close(node, reader, pc)
	n, r := node.(*ast.HTMLBlock), readingOf(pc)
	first := n.Lines().At(0)
	first = first.TrimLeftSpace(reader.Source())
	first = first.TrimRightSpace(reader.Source())
	text := false
	closed := shown(n, reader.Source(), func(from, to int) {
		text = text || len(bytes.TrimSpace(reader.Source()[from:to])) > 0
	})
	if text {
		r.adviseHTML(r.span(first.Start, first.Stop))
	}
	if !closed {
		r.openComment(first.Start, "this comment has no end, and the rest of the page is in it", "write --> where it ends")
	}
}

type rawHTMLParser struct{ parser.InlineParser }

func newRawHTMLParser() parser.InlineParser { return rawHTMLParser{parser.NewRawHTMLParser()} }

func (p rawHTMLParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	line, at := block.PeekLine()
	node := p.InlineParser.Parse(parent, block, pc)
	r := readingOf(pc)
	if node == nil {
		if bytes.HasPrefix(line, commentOpens) && r.unclosed != parent { // once in a paragraph
			r.unclosed = parent
			r.openComment(at.Start, "this comment has no end in its paragraph",
				`write --> where it ends; one over several paragraphs begins on a line of its own, and \<!-- shows the marks`)
		}
		return nil
	}
	if n := node.(*ast.RawHTML); !isComment(n, block.Source()) {
		r.adviseHTML(r.span(n.Segments.At(0).Start, n.Segments.At(n.Segments.Len()-1).Stop))
	}
	return node
}

func (r *reading) adviseHTML(at message.Span) {
	r.advise("html", at, "HTML is shown as text", "write it in Markdown, or put it between backticks to show it")
}

func (r *reading) openComment(at int, text, note string) {
	r.fault("comment-open", r.span(at, at+len(commentOpens)), text, note)
}

func printHTMLBlock(p *printer, node ast.Node) {
	begun := false
	shown(node.(*ast.HTMLBlock), p.source, func(from, to int) {
		if !begun && len(bytes.TrimSpace(p.source[from:to])) == 0 {
			return
		}
		if !begun {
			p.w.WriteString("<p>")
			begun = true
		}
		p.escapeBytes(p.source[from:to])
	})
	if begun {
		p.w.WriteString("</p>\n")
	}
}

func printRawHTML(p *printer, node ast.Node) {
	n := node.(*ast.RawHTML)
	if isComment(n, p.source) {
		return
	}
	for i := range n.Segments.Len() {
		segment := n.Segments.At(i)
		p.escapeBytes(segment.Value(p.source))
	}
}
