package markdown

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// codeSpanParser stands around goldmark's parser of text in backticks, which looks through the rest of the paragraph
// for their end, and counts.
type codeSpanParser struct{ parser.InlineParser }

func newCodeSpanParser() parser.InlineParser { return codeSpanParser{parser.NewCodeSpanParser()} }

func (p codeSpanParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	r := readingOf(pc)
	_, at := block.Position()
	if !r.mayLook(at.Start) {
		return nil
	}
	node := p.InlineParser.Parse(parent, block, pc)
	if _, is := node.(*ast.CodeSpan); !is {
		r.inVain(parent, at.Start)
	}
	return node
}

// printCodeSpan writes a code span; a line end in it is a space.
func printCodeSpan(p *printer, n ast.Node) {
	p.w.WriteString("<code>")
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		value := c.(*ast.Text).Segment.Value(p.source)
		if p.inCell {
			value = bytes.ReplaceAll(value, []byte(`\|`), []byte("|"))
		}
		line, ended := bytes.CutSuffix(value, []byte("\n"))
		p.escapeBytes(line)
		if ended {
			p.w.WriteByte(' ')
		}
	}
	p.w.WriteString("</code>")
}
