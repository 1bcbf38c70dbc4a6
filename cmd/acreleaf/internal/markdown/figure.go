package markdown

import (
	"net/url"
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// cutFigure tells whether a destination is a figure's, and gives what follows the colon. Schemes count without case.
func cutFigure(destination string) (scheme construct.Scheme, target string, ok bool) {
	word, target, ok := strings.Cut(destination, ":")
	if !ok {
		return construct.NoFigure, "", false
	}
	scheme, ok = construct.SchemeOf(word)
	return scheme, target, ok
}

// checkFigure refuses what would be lost: the text of a figure is written anew for the reader's own numbers.
func (r *reading) checkFigure(n *ast.Link, f *Figure) {
	written := r.cut(f.TargetSpan)
	row, start := f.Scheme.Row(), f.Scheme.String()+":"
	if len(written) >= len(start) && strings.EqualFold(written[:len(start)], start) {
		f.TargetSpan.Start += len(start)
	}
	said := len(r.messages)
	plain, err := url.PathUnescape(f.Target)
	switch {
	case holds(n, ast.KindImage, ast.KindAutoLink, extast.KindFootnoteLink):
		r.fault("figure-content", f.Span, "a figure holds only text",
			"move the image, address or footnote's mark out of its brackets")
	case !row.Target && f.Target != "":
		r.fault("figure-target", f.TargetSpan, "a plain size is tied to nothing, and this says "+f.Target,
			row.Example)
	case row.Target && strings.TrimSpace(f.Target) == "":
		r.fault("figure-target", f.Span, "this figure says “"+start+"” and nothing after it",
			row.Example)
	case err == nil && plain != f.Target:
		r.fault("figure-target", f.TargetSpan, "the name of a figure has no codes such as %2E in it",
			"write "+start+plain)
	case strings.TrimSpace(f.Text) == "":
		r.fault("figure-text", f.Span, "this figure has no text", row.Example)
	}
	f.Faulty = len(r.messages) > said
}
