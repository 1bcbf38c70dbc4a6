package markdown

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// linkParser stands around goldmark's parser of links and images. goldmark keeps where a link starts; where its text
// and the link end is known only at the moment of parsing, from the reader.
type linkParser struct {
	parser.InlineParser
	closer parser.CloseBlocker
}

func newLinkParser() parser.InlineParser {
	inner := parser.NewLinkParser()
	return linkParser{inner, inner.(parser.CloseBlocker)}
}

func (p linkParser) CloseBlock(parent ast.Node, block text.Reader, pc parser.Context) {
	p.closer.CloseBlock(parent, block, pc)
}

func (p linkParser) Parse(parent ast.Node, block text.Reader, pc parser.Context) ast.Node {
	r := readingOf(pc)
	line, bracket := block.PeekLine()
	if !r.mayLink(line, bracket.Start) {
		return nil
	}
	node := p.InlineParser.Parse(parent, block, pc)
	switch n := node.(type) {
	case nil:
		if bytes.HasPrefix(line, []byte("](")) {
			r.inVain(parent, bracket.Start)
		}
	case *ast.Link:
		r.addLink(n, place{bracket: bracket.Start, end: r.linkEnd(block)}, n.Destination, n.Title)
	case *ast.Image:
		r.addImage(n, place{bracket: bracket.Start, end: r.linkEnd(block)})
	}
	return node
}

// mayLink holds the limits.
func (r *reading) mayLink(line []byte, at int) bool {
	switch {
	case line[0] == ']':
		r.counts.open = max(0, r.counts.open-1)
	case line[0] == '[' || bytes.HasPrefix(line, []byte("![")):
		r.counts.brackets++
		r.counts.open++
	}
	switch {
	case r.counts.brackets > bracketLimit:
		r.tooMany(at, fmt.Sprintf("this piece of text has more than %d brackets", bracketLimit),
			"split it into shorter paragraphs, or put a \\ before those that mark nothing")
		return false
	case r.counts.open > openLimit:
		r.tooMany(at, fmt.Sprintf("more than %d brackets are inside each other here", openLimit),
			"close them, or put a \\ before those that mark nothing")
		return false
	}
	return r.mayLook(at)
}

// place is where the parser found the end of a link's text, at its closing bracket, and the end of the link.
type place struct{ bracket, end int }

// linkEnd is the offset after the link just read: the reader is there, or at the start of a later line.
func (r *reading) linkEnd(block text.Reader) int {
	_, position := block.Position()
	end := position.Start
	for end > 0 && r.doc.text[end-1] != ')' && r.doc.text[end-1] != ']' {
		end--
	}
	return end
}

func (r *reading) addLink(n *ast.Link, at place, destination, title []byte) {
	start := n.Pos()
	span := r.span(start, at.end)
	target := r.destinationSpan(destination, span)
	address := unescape(destination)
	if scheme, rest, ok := cutFigure(address); ok {
		f := &Figure{
			Scheme: scheme, Target: rest, Text: plainText(r.doc.text, n), Title: oneLine(unescape(title)),
			TextSpan: r.span(start+len("["), at.bracket), Span: span,
			TargetSpan: target,
		}
		r.checkFigure(n, f)
		r.doc.anchors = append(r.doc.anchors, anchor{at: start, figure: f})
		return
	}
	l := &Link{Destination: address, Text: plainText(r.doc.text, n), Span: span, DestinationSpan: target}
	r.addAnchor(start, l)
	if strings.TrimSpace(l.Text) == "" {
		r.advise("link-text", span, "this link has no text to follow",
			"write between the brackets what the reader finds there")
	}
	r.checkMarks(n, span)
}

// checkMarks refuses the mark of a footnote inside a link or an image: it could not be followed.
func (r *reading) checkMarks(n ast.Node, at message.Span) {
	if holds(n, extast.KindFootnoteLink) {
		r.fault("footnote-in-link", at, "a footnote's mark is inside these brackets", "move the mark after them")
	}
}

// holds tells whether a node of one of the kinds stands anywhere inside n.
func holds(n ast.Node, kinds ...ast.NodeKind) bool {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if slices.Contains(kinds, c.Kind()) || holds(c, kinds...) {
			return true
		}
	}
	return false
}

func printLink(p *printer, node ast.Node) {
	a := p.doc.anchorOf(node)
	if a.figure != nil {
		p.fragments.Figure(p.w, a.figure)
		return
	}
	if !a.safe {
		p.children(node)
		return
	}
	p.w.WriteString("<a")
	p.address("href", p.fragments.Link(a.link))
	p.title(node.(*ast.Link).Title)
	p.w.WriteByte('>')
	inLink := p.inLink
	p.inLink = true
	p.children(node)
	p.inLink = inLink
	p.w.WriteString("</a>")
}

// title writes the title of a link or an image, which may be empty.
func (p *printer) title(title []byte) {
	if title != nil {
		p.attribute("title", unescape(title))
	}
}
