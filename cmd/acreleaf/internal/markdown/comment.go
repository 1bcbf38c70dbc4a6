package markdown

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
)

var commentOpens, commentCloses = []byte("<!--"), []byte("-->")

// isComment says whether raw HTML in a line is a comment, which never reaches the site.
func isComment(n *ast.RawHTML, source []byte) bool {
	first := n.Segments.At(0)
	return bytes.HasPrefix(first.Value(source), commentOpens)
}

// shown gives the stretches of a block of HTML that reach readers, all but its comments, and says whether each comment
// has its end.
func shown(n *ast.HTMLBlock, source []byte, piece func(from, to int)) (closed bool) {
	inside := false
	line := func(from, to int) {
		for from < to {
			mark := commentOpens
			if inside {
				mark = commentCloses
			}
			at := bytes.Index(source[from:to], mark)
			if !inside && at != 0 {
				end := to
				if at > 0 {
					end = from + at
				}
				piece(from, end)
			}
			if at < 0 {
				return
			}
			from += at + len(mark)
			inside = !inside
			if whole := wholeComment(source[from:to]); inside && whole > 0 {
				inside, from = false, from+whole
			}
		}
	}
	for i := range n.Lines().Len() {
		l := n.Lines().At(i)
		line(l.Start, l.Stop)
	}
	if n.HasClosure() {
		line(n.ClosureLine.Start, n.ClosureLine.Stop)
	}
	return !inside
}

// wholeComment gives the length of what ends a comment right behind "<!--", as in <!-->, 0 when nothing does.
func wholeComment(rest []byte) int {
	for _, end := range []string{">", "->"} {
		if bytes.HasPrefix(rest, []byte(end)) {
			return len(end)
		}
	}
	return 0
}
