package markdown

import (
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// emphasisLimit bounds the runs of * and _ in one piece of text. goldmark compares every run with all before it, so
// that a page of nothing else would take minutes. No real paragraph comes near.
const emphasisLimit = 4000

// emphasisParser stands around goldmark's parser of emphasis and counts.
type emphasisParser struct{ parser.InlineParser }

func newEmphasisParser() parser.InlineParser { return emphasisParser{parser.NewEmphasisParser()} }

func (p emphasisParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	r := readingOf(pc)
	r.runs++
	if r.runs <= emphasisLimit {
		return p.InlineParser.Parse(parent, block, pc)
	}
	if r.runs == emphasisLimit+1 {
		_, at := block.Position()
		r.fault("too-many-marks", r.span(at.Start, at.Start+1),
			"this piece of text has too many * and _ marks to tell which belong together",
			"split it into shorter paragraphs, or put the marks between backticks to show them")
	}
	return nil
}

// CloseBlock starts the count anew for the next piece of text.
func (p emphasisParser) CloseBlock(_ ast.Node, _ text.Reader, pc parser.Context) {
	readingOf(pc).runs = 0
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
