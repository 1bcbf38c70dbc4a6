package markdown

import (
	"net/url"
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
)

// The schemes of figures: a number that a worksheet works out, one that a publication gives, one of the author's own
// records and prices, and a plain size.
const (
	worked   = "worked"
	sourced  = "source"
	recorded = "record"
	sized    = "size"
)

var figureSchemes = []string{worked, sourced, recorded, sized}

// cutFigure tells whether a destination is a figure's, and gives what follows the colon. Schemes count without case.
func cutFigure(destination string) (scheme, target string, ok bool) {
	scheme, target, ok = strings.Cut(destination, ":")
	if !ok {
		return "", "", false
	}
	for _, known := range figureSchemes {
		if strings.EqualFold(scheme, known) {
			return known, target, true
		}
	}
	return "", "", false
}

// checkFigure refuses what would be lost: the text of a figure is written anew for the reader's own numbers.
func (r *reading) checkFigure(n *ast.Link, f *Figure) {
	written := r.cut(f.TargetSpan)
	if prefix := len(f.Scheme) + len(":"); len(written) >= prefix && strings.EqualFold(written[:prefix], f.Scheme+":") {
		f.TargetSpan.Start += prefix
	}
	said := len(r.messages)
	plain, err := url.PathUnescape(f.Target)
	switch {
	case holds(n, ast.KindImage, ast.KindAutoLink, extast.KindFootnoteLink):
		r.fault("figure-content", f.Span, "a figure holds only text",
			"move the image, address or footnote's mark out of its brackets")
	case f.Scheme == sized && f.Target != "":
		r.fault("figure-target", f.TargetSpan, "a plain size is tied to nothing, and this says "+f.Target,
			figureExample(f.Scheme))
	case f.Scheme != sized && strings.TrimSpace(f.Target) == "":
		r.fault("figure-target", f.Span, "this figure says “"+f.Scheme+":” and nothing after it",
			figureExample(f.Scheme))
	case err == nil && plain != f.Target:
		r.fault("figure-target", f.TargetSpan, "the name of a figure has no codes such as %2E in it",
			"write "+f.Scheme+":"+plain)
	case strings.TrimSpace(f.Text) == "":
		r.fault("figure-text", f.Span, "this figure has no text", figureExample(f.Scheme))
	}
	f.Faulty = len(r.messages) > said
}

func figureExample(scheme string) string {
	switch scheme {
	case worked:
		return "write the number and what works it out: [48 lb/ac](worked:soil.nitrogen)"
	case recorded:
		return `write the number, its day and what it is: [23.4 lb](record:2026-09-14 "the scale ticket of block 3")`
	case sized:
		return "write the size and nothing behind the colon: [12 in](size:)"
	}
	return `write the number and where it is from: [68 lb](source:handbook "what it is of")`
}
