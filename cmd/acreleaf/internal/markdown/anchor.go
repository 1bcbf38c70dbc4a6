package markdown

import (
	"slices"

	"github.com/yuin/goldmark/ast"

	"acreleaf/cmd/acreleaf/internal/message"
)

// anchor is a figure or a link by the offset of its node. One of the two pointers is set.
type anchor struct {
	at     int
	figure *Figure
	link   *Link
	safe   bool // the destination may be printed
}

// addAnchor keeps a link and checks its scheme.
func (r *reading) addAnchor(at int, l *Link) {
	r.doc.anchors = append(r.doc.anchors, anchor{at: at, link: l, safe: r.checkScheme(l)})
}

// destinationSpan is where a destination stands, for a reference link in its definition. Without that knowledge it
// is the whole link.
func (r *reading) destinationSpan(destination []byte, link message.Span) message.Span {
	if at, ok := offsetIn(r.doc.text, destination); ok {
		return r.span(at, at+len(destination))
	}
	return link
}

// finishAnchors puts figures and links in the order of the source and numbers them.
func (r *reading) finishAnchors() {
	byPosition(r.doc.anchors, func(a anchor) int { return a.at })
	for _, a := range r.doc.anchors {
		if a.figure != nil {
			a.figure.Index = len(r.doc.Figures)
			a.figure.Passage, a.figure.Case = r.doc.caseAt(a.figure.Span)
			r.doc.Figures = append(r.doc.Figures, a.figure)
		} else {
			a.link.Index = len(r.doc.Links)
			r.doc.Links = append(r.doc.Links, a.link)
		}
	}
}

func (d *Document) anchorOf(n ast.Node) anchor {
	i, ok := slices.BinarySearchFunc(d.anchors, n.Pos(), func(a anchor, at int) int { return a.at - at })
	if !ok {
		panic("a link that was not read")
	}
	return d.anchors[i]
}
