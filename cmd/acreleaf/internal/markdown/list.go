package markdown

import (
	"strconv"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
)

func newListParser() parser.BlockParser { return nestingParser{parser.NewListParser()} }

func printList(p *printer, node ast.Node) {
	n := node.(*ast.List)
	if !n.IsOrdered() {
		p.w.WriteString("<ul>\n")
		p.children(n)
		p.w.WriteString("</ul>\n")
		return
	}
	p.w.WriteString("<ol")
	if n.Start != 1 {
		p.attribute("start", strconv.Itoa(n.Start))
	}
	p.w.WriteString(">\n")
	p.children(n)
	p.w.WriteString("</ol>\n")
}

func printListItem(p *printer, n ast.Node) {
	p.w.WriteString("<li>")
	if first := n.FirstChild(); first != nil && first.Kind() != ast.KindTextBlock {
		p.w.WriteByte('\n')
	}
	p.children(n)
	p.w.WriteString("</li>\n")
}
