package markdown

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
)

// An Aside is what a piece of prose is where no figure can be in it, in the words of a message.
type Aside string

// The asides.
const (
	Description Aside = "the description of this image"
	Title       Aside = "this title"                         // of a link or an image
	Code        Aside = "this text between backticks"        // in a line
	Listing     Aside = "this listing"                       // one that names no language: indented, or with a bare fence
	HTML        Aside = "this HTML, shown as it is written," // several lines of it
)

// aside is a text of a node that is visited after the text which the node is in.
type aside struct {
	node ast.Node
	is   Aside
}

func (w *proseWalk) visitAsides() {
	for i := 0; i < len(w.asides); i++ { // a link in a description brings another
		switch a := w.asides[i]; a.is {
		case Description:
			w.run(a.node, w.inline, a.is)
		case Title:
			w.run(a.node, w.title, a.is)
		case Code:
			w.run(a.node, w.code, a.is)
		}
	}
	w.asides = w.asides[:0]
}

// lines visits a block of lines that reaches readers as it was typed. A fence with a word is there to be typed.
func (w *proseWalk) lines(n ast.Node) {
	switch n := n.(type) {
	case *ast.HTMLBlock:
		w.run(n, w.html, HTML)
	case *ast.CodeBlock:
		w.run(n, w.listing, Listing)
	case *ast.FencedCodeBlock:
		if len(n.Language(w.doc.text)) == 0 {
			w.run(n, w.listing, Listing)
		}
	}
}

func (w *proseWalk) listing(n ast.Node) {
	for i := range n.Lines().Len() {
		line := n.Lines().At(i)
		w.addPlain(line.Value(w.doc.text), line.Start)
	}
}

func (w *proseWalk) html(n ast.Node) {
	shown(n.(*ast.HTMLBlock), w.doc.text, func(from, to int) { w.addPlain(w.doc.text[from:to], from) })
}

// rawHTML adds a tag, which readers see. They do not see a comment.
func (w *proseWalk) rawHTML(n *ast.RawHTML) {
	if isComment(n, w.doc.text) {
		return
	}
	for i := range n.Segments.Len() {
		tag := n.Segments.At(i)
		w.addPlain(tag.Value(w.doc.text), tag.Start)
	}
}

func (w *proseWalk) code(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if part, ok := c.(*ast.Text); ok {
			w.addPlain(bytes.ReplaceAll(part.Segment.Value(w.doc.text), []byte("\n"), []byte(" ")), part.Segment.Start)
		}
	}
}

// title adds the title of a link or an image.
func (w *proseWalk) title(n ast.Node) {
	var title []byte
	switch n := n.(type) {
	case *ast.Link:
		title = n.Title
	case *ast.Image:
		title = n.Title
	}
	if len(title) == 0 {
		return
	}
	if at := bytes.Index(w.doc.text[n.Pos():], title); at >= 0 {
		w.addResolved(title, n.Pos()+at)
	} else {
		w.add([]byte(unescape(title)), n.Pos(), n.Pos()+1) // over lines of a quotation
	}
}
