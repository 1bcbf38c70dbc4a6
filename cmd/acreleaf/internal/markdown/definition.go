package markdown

import (
	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
)

func printDefinitionList(p *printer, node ast.Node) {
	p.w.WriteString("<dl>\n")
	p.children(node)
	p.w.WriteString("</dl>\n")
}

func printDefinitionTerm(p *printer, node ast.Node) {
	p.w.WriteString("<dt>")
	p.children(node)
	p.w.WriteString("</dt>\n")
}

func printDefinition(p *printer, node ast.Node) {
	p.w.WriteString("<dd>")
	if !node.(*extast.DefinitionDescription).IsTight {
		p.w.WriteByte('\n')
	}
	p.children(node)
	p.w.WriteString("</dd>\n")
}
