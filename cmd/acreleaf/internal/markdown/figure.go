package markdown

import (
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
)

// The schemes of figures: a number that a worksheet works out, and a number that a publication gives.
const (
	worked  = "worked"
	sourced = "source"
)

// cutFigure tells whether a destination is a figure's, and gives what follows the colon. Schemes count without case.
func cutFigure(destination string) (scheme, target string, ok bool) {
	scheme, target, ok = strings.Cut(destination, ":")
	if !ok {
		return "", "", false
	}
	switch {
	case strings.EqualFold(scheme, worked):
		return worked, target, true
	case strings.EqualFold(scheme, sourced):
		return sourced, target, true
	}
	return "", "", false
}

// checkFigure refuses what would be lost: the text of a figure is written anew for the reader's own numbers.
func (r *reading) checkFigure(n *ast.Link, f *Figure) {
	written := r.cut(f.TargetSpan)
	if prefix := len(f.Scheme) + len(":"); len(written) >= prefix && strings.EqualFold(written[:prefix], f.Scheme+":") {
		f.TargetSpan.Start += prefix
	}
	switch {
	case strings.TrimSpace(f.Target) == "":
		r.fault("figure-target", f.Span, "this figure says “"+f.Scheme+":” and nothing after it",
			figureExample(f.Scheme))
	case strings.TrimSpace(f.Text) == "":
		r.fault("figure-text", f.Span, "this figure has no text", figureExample(f.Scheme))
	}
	if holds(n, ast.KindImage, ast.KindAutoLink, extast.KindFootnoteLink) {
		r.fault("figure-content", f.Span, "a figure holds only text",
			"move the image, address or footnote's mark out of its brackets")
	}
}

func figureExample(scheme string) string {
	if scheme == worked {
		return "write the number and what works it out: [48 lb/ac](worked:soil.nitrogen)"
	}
	return "write the number and where it is from: [68 lb](source:handbook)"
}
