package markdown

import (
	"bytes"
	"sort"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
)

// finishLeader keeps the place of leader's notes, and reports what cannot be in them: what has a part on the page of
// participants, or takes numbers from it.
func (r *reading) finishLeader(e *containerNode) {
	notes := message.Span{Start: e.opening.Start, End: r.offset(e.end)}
	r.doc.Leader = append(r.doc.Leader, notes)
	misfit := func(at message.Span, what string) {
		r.fault("leader-block", at, what+" cannot be in leader's notes",
			"move it out of the fence, or write a plain sentence with a link to it")
	}
	first := firstFrom(r.fences, notes.Start, func(f *fence) int { return f.opening.Start })
	for _, f := range r.fences[first:] {
		if !begins(notes, f.opening) {
			break
		}
		if f.block != nil && len(r.closingFence(f)) < e.fence { // else it ended the notes
			misfit(f.opening, f.block.Construct.One())
		}
	}
	note := false
	_ = ast.Walk(e, func(n ast.Node, enters bool) (ast.WalkStatus, error) {
		_, is := n.(*extast.FootnoteLink)
		note = note || is
		return ast.WalkContinue, nil // it has no error to give
	})
	for _, f := range r.footnotes {
		note = note || begins(notes, f.at)
	}
	if note {
		misfit(e.opening, "a footnote")
	}
}

// ForLeader says whether a place is in leader's notes, and so not on the page for participants.
func (d *Document) ForLeader(at message.Span) bool {
	after := firstFrom(d.Leader, at.Start+1, func(notes message.Span) int { return notes.Start })
	return after > 0 && begins(d.Leader[after-1], at)
}

// firstFrom is the place of the first in a list that starts at an offset or after it. What is in the list is in the
// order of the source.
func firstFrom[T any](list []T, offset int, start func(T) int) int {
	return sort.Search(len(list), func(i int) bool { return start(list[i]) >= offset })
}

// begins says whether a span begins in another.
func begins(in, at message.Span) bool { return in.Start <= at.Start && at.Start < in.End }

// LeaderHTML writes the leader's notes, as HTML writes the rest of the page's text.
func (d *Document) LeaderHTML(w *bytes.Buffer, f Fragments, words *Words) error {
	d = d.Awake()
	p := printer{w: w, source: d.text, doc: d, fragments: f, words: words, funcs: printFuncs()}
	for c := d.root.FirstChild(); c != nil; c = c.NextSibling() {
		if e, is := c.(*containerNode); is && e.is == construct.Leader {
			p.children(e)
		}
	}
	p.notes()
	return p.err
}
