package markdown

import (
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"
)

func (r *reading) addImage(n *ast.Image, at place) {
	span := r.span(n.Pos(), at.end)
	l := &Link{
		Image: true, Destination: unescape(n.Destination), Text: plainText(r.doc.text, n), Span: span,
		DestinationSpan: r.destinationSpan(n.Destination, span),
	}
	if strings.TrimSpace(l.Text) == "" {
		r.fault("image-text", span, "this image has no text for those who cannot see it",
			"write between the brackets what it shows")
	}
	r.checkMarks(n, span)
	if scheme, _, ok := cutFigure(l.Destination); ok {
		r.fault("figure-image", span, "an image cannot be a “"+scheme.String()+":” figure", "take out the “!” before the “[”")
		r.doc.anchors = append(r.doc.anchors, anchor{at: n.Pos(), link: l})
		return
	}
	r.addAnchor(n.Pos(), l)
}

func printImage(p *printer, node ast.Node) {
	a := p.doc.anchorOf(node)
	if !a.safe {
		p.escape(a.link.Text)
		return
	}
	p.w.WriteString("<img")
	p.address("src", p.fragments.Link(a.link))
	p.attribute("alt", a.link.Text)
	if width, height := p.fragments.Size(a.link); width > 0 {
		p.attribute("width", strconv.Itoa(width))
		p.attribute("height", strconv.Itoa(height))
		p.w.WriteString(` loading="lazy"`)
	}
	p.title(node.(*ast.Image).Title)
	p.w.WriteByte('>')
}
