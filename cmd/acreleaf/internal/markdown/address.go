package markdown

import (
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// addressParser stands around goldmark's parser of <https://addresses> and keeps where they stand.
type addressParser struct{ parser.InlineParser }

func newAddressParser() parser.InlineParser { return addressParser{parser.NewAutoLinkParser()} }

func (p addressParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	_, start := block.Position()
	node := p.InlineParser.Parse(parent, block, pc)
	if node == nil {
		return nil
	}
	r := readingOf(pc)
	n := node.(*ast.AutoLink)
	n.SetPos(start.Start)
	label := n.Label(r.doc.text)
	end := start.Start + len("<") + len(label)
	l := &Link{
		Destination: string(label), Text: string(label),
		Span: r.span(start.Start, end+len(">")), DestinationSpan: r.span(start.Start+len("<"), end),
	}
	if n.AutoLinkType == ast.AutoLinkEmail {
		l.Destination = "mailto:" + l.Destination
	}
	r.addAnchor(start.Start, l)
	return node
}

func printAddress(p *printer, node ast.Node) {
	a := p.doc.anchorOf(node)
	if !a.safe || p.inLink {
		p.escape(a.link.Text)
		return
	}
	p.w.WriteString("<a")
	p.address("href", p.fragments.Link(a.link))
	p.w.WriteByte('>')
	p.escape(a.link.Text)
	p.w.WriteString("</a>")
}
