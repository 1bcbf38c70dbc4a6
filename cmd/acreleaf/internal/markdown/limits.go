package markdown

import (
	"fmt"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// goldmark takes time that grows with the square of the length of some texts that no author writes: thousands of marks
// in one paragraph, or of quotations in each other. Every such text is cut off at a limit that no real page comes near,
// and a message names the line. What is past the limit is shown as plain text. The limits are where the square still
// counts for little: TestDoubling goes up to each.
const (
	emphasisLimit = 200     // runs of * and _ in one piece of text
	bracketLimit  = 500     // brackets that may open a link, in one piece of text
	openLimit     = 40      // of them that are open at once
	wasteLimit    = 8 << 10 // bytes looked at in vain for the ends of links and of text in backticks, on one page
	nestingLimit  = 40      // quotations, lists and footnotes in each other
	footnoteLimit = 300     // footnotes of one page
	tableLimit    = 100_000 // cells of one table
	bodyLimit     = 20_000  // bytes of the body of one block of ours
	listingLimit  = 20_000  // bytes of the listings of one page that are still highlighted
	lineLimit     = 400     // bytes of a line of a listing that is still highlighted
)

// counts are compared with the limits.
type counts struct {
	emphasis, brackets, open, waste int
}

// tooMany says once a page that something is past its limit.
func (r *reading) tooMany(at int, text, note string) {
	if r.limits == nil {
		r.limits = map[string]bool{}
	}
	if !r.limits[text] {
		r.limits[text] = true
		r.fault("too-many", r.span(at, at+1), text, note)
	}
}

// inVain counts the rest of a piece of text, which was looked through for an end that is not there.
func (r *reading) inVain(piece ast.Node, from int) {
	lines := piece.Lines()
	r.counts.waste += lines.At(lines.Len()-1).Stop - from
}

// mayLook says whether ends are still looked for on this page.
func (r *reading) mayLook(at int) bool {
	if r.counts.waste <= wasteLimit {
		return true
	}
	r.tooMany(at, "too many links and texts in backticks of this page have no end",
		"close them, or put a \\ before those that mark nothing")
	return false
}

// nestingParser stands around a parser of blocks that hold others.
type nestingParser struct{ parser.BlockParser }

func (p nestingParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	if parent.Kind() != ast.KindList && tooDeep(reader, pc) { // a list is asked before each of its items too
		return nil, parser.NoChildren
	}
	return p.BlockParser.Open(parent, reader, pc)
}

func tooDeep(reader text.Reader, pc parser.Context) bool {
	open := 0
	for _, b := range pc.OpenedBlocks() {
		if b.Node.Kind() != ast.KindListItem {
			open++
		}
	}
	if open < nestingLimit {
		return false
	}
	_, segment := reader.PeekLine()
	readingOf(pc).tooMany(segment.Start,
		fmt.Sprintf("more than %d lists and quotations are inside each other here", nestingLimit),
		"take some of the marks at the start of this line out")
	return true
}
