package markdown

import (
	"fmt"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// emphasisParser stands around goldmark's parser of emphasis and counts.
type emphasisParser struct{ parser.InlineParser }

func newEmphasisParser() parser.InlineParser { return emphasisParser{parser.NewEmphasisParser()} }

func (p emphasisParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	r := readingOf(pc)
	r.counts.emphasis++
	if r.counts.emphasis <= emphasisLimit {
		return p.InlineParser.Parse(parent, block, pc)
	}
	_, at := block.Position()
	r.tooMany(at.Start, fmt.Sprintf("this piece of text has more than %d runs of * and _", emphasisLimit),
		"split it into shorter paragraphs, or put a \\ before those that mark nothing")
	return nil
}

// CloseBlock starts the counts anew for the next piece of text.
func (p emphasisParser) CloseBlock(_ ast.Node, _ text.Reader, pc parser.Context) {
	r := readingOf(pc)
	r.counts.emphasis, r.counts.brackets, r.counts.open = 0, 0, 0
}

func printEmphasis(p *printer, node ast.Node) {
	tag := "em>"
	if node.(*ast.Emphasis).Level == 2 {
		tag = "strong>"
	}
	p.w.WriteByte('<')
	p.w.WriteString(tag)
	p.children(node)
	p.w.WriteString("</")
	p.w.WriteString(tag)
}
