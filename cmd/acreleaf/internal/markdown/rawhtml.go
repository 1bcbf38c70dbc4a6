package markdown

import (
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// htmlBlockParser and rawHTMLParser stand around goldmark's parsers of HTML. It is recognised, as CommonMark has it,
// and then shown as the text that the author typed: it never becomes markup and is never dropped.
type htmlBlockParser struct{ parser.BlockParser }

func newHTMLBlockParser() parser.BlockParser { return htmlBlockParser{parser.NewHTMLBlockParser()} }

func (p htmlBlockParser) Close(node ast.Node, reader text.Reader, pc parser.Context) {
	p.BlockParser.Close(node, reader, pc)
	n := node.(*ast.HTMLBlock)
	first := n.Lines().At(0)
	first = first.TrimLeftSpace(reader.Source())
	first = first.TrimRightSpace(reader.Source())
	r := readingOf(pc)
	r.adviseHTML(r.span(first.Start, first.Stop))
}

type rawHTMLParser struct{ parser.InlineParser }

func newRawHTMLParser() parser.InlineParser { return rawHTMLParser{parser.NewRawHTMLParser()} }

func (p rawHTMLParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	node := p.InlineParser.Parse(parent, block, pc)
	if node == nil {
		return nil
	}
	segments := node.(*ast.RawHTML).Segments
	r := readingOf(pc)
	r.adviseHTML(r.span(segments.At(0).Start, segments.At(segments.Len()-1).Stop))
	return node
}

func (r *reading) adviseHTML(at message.Span) {
	r.advise("html", at, "HTML is shown as text", "write it in Markdown, or put it between backticks to show it")
}

func printHTMLBlock(p *printer, node ast.Node) {
	n := node.(*ast.HTMLBlock)
	p.w.WriteString("<p>")
	for i := range n.Lines().Len() {
		line := n.Lines().At(i)
		p.escapeBytes(line.Value(p.source))
	}
	if n.HasClosure() {
		p.escapeBytes(n.ClosureLine.Value(p.source))
	}
	p.w.WriteString("</p>\n")
}

func printRawHTML(p *printer, node ast.Node) {
	segments := node.(*ast.RawHTML).Segments
	for i := range segments.Len() {
		segment := segments.At(i)
		p.escapeBytes(segment.Value(p.source))
	}
}
