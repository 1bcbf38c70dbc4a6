package markdown

import (
	"slices"
	"sync"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Prose is what a reader reads in one paragraph, heading, cell, caption or aside, with the place of every letter. Code
// in a line, blocks and figures are no part of the text around them: one sign stands for each.
type Prose struct {
	Text    string
	Aside   Aside          // what it is, where no figure can be in it
	Running bool           // it is a paragraph, of a list or a quotation too: no heading, cell, caption or aside
	Caption bool           // it is the caption of a table
	Signal  string         // the signal word in English of the quotation that it is in, or ""
	Figures []ProseFigure  // in the order of the text
	Links   []message.Span // places in Text that are inside an ordinary link

	doc     *Document
	dropped []int // see unixEnds
	pieces  []piece
}

// ProseFigure is a figure in prose, where the text has a Stand for it.
type ProseFigure struct {
	At int
	*Figure
}

// Stand is the sign in Prose that stands for code or a figure.
const Stand = "\uFFFC"

// A piece is a stretch of a text and where it is from. Its sizes differ where a reference was resolved.
type piece struct{ at, size, from, to int }

// Prose visits the text of the page, paragraph by paragraph. What a visit is given holds until it returns, but for the
// text, which it may keep.
func (d *Document) Prose(visit func(*Prose)) {
	d = d.Awake()
	_, dropped := unixEnds(d.Source.Text[d.body:])
	w := proseWalks.Get().(*proseWalk)
	w.doc, w.visit, w.at.doc, w.at.dropped = d, visit, d, dropped
	w.text = make([]byte, 0, len(d.text)) // a visit may keep a text
	w.blocks(d.root)
	w.doc, w.visit, w.at.doc, w.at.dropped, w.at.Text, w.text = nil, nil, nil, nil, "", nil
	clear(w.at.Figures[:cap(w.at.Figures)])
	clear(w.asides[:cap(w.asides)])
	proseWalks.Put(w)
}

// Span is the place in the source of a part of the text.
func (p *Prose) Span(start, end int) message.Span {
	first, last := p.pieceAt(start), p.pieceAt(max(start, end-1))
	from, to := first.from, last.to
	if first.size == first.to-first.from {
		from += start - first.at
	}
	if last.size == last.to-last.from {
		to = last.from + end - last.at
	}
	body := p.doc.body
	return message.Span{Start: body + beforeDropping(from, p.dropped), End: body + beforeDropping(to, p.dropped)}
}

// Place gives Span for use after the visit has returned.
func (p *Prose) Place() func(start, end int) message.Span {
	kept := *p
	kept.pieces = slices.Clone(p.pieces)
	return kept.Span
}

func (p *Prose) pieceAt(at int) piece {
	i, found := slices.BinarySearchFunc(p.pieces, at, func(c piece, at int) int { return c.at - at })
	if !found {
		i--
	}
	return p.pieces[i]
}

// proseWalk is one run of Document.Prose. All texts are in one buffer that only grows.
type proseWalk struct {
	doc    *Document
	visit  func(*Prose)
	text   []byte
	start  int // where the text at hand begins in the buffer
	at     Prose
	asides []aside // those of the text at hand, which are visited after it
}

var proseWalks = sync.Pool{New: func() any { return &proseWalk{} }}

func (w *proseWalk) blocks(n ast.Node) {
	if q, ok := n.(*quote); ok && q.signal != "" {
		outer := w.at.Signal
		w.at.Signal = q.signal
		defer func() { w.at.Signal = outer }()
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch first := c.FirstChild(); {
		case c.Type() == ast.TypeInline:
		case first == nil:
			w.lines(c)
		case first.Type() == ast.TypeInline:
			w.run(c, w.inline, "")
			w.visitAsides()
		default:
			w.blocks(c)
		}
	}
}

// run visits the text of one node, which add puts together.
func (w *proseWalk) run(n ast.Node, add func(ast.Node), is Aside) {
	w.start = len(w.text)
	w.at.Aside = is
	w.at.Running = is == "" && (n.Kind() == ast.KindParagraph || n.Kind() == ast.KindTextBlock)
	w.at.Caption = n.Kind() == kindCaption
	w.at.pieces, w.at.Figures, w.at.Links = w.at.pieces[:0], w.at.Figures[:0], w.at.Links[:0]
	add(n)
	w.at.Text = util.BytesToReadOnlyString(w.text[w.start:])
	if w.at.Text != "" {
		w.visit(&w.at)
	}
}

func (w *proseWalk) inline(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Text:
			w.addText(c)
		case *ast.Link:
			w.link(c)
		case *ast.Image:
			if _, _, figure := cutFigure(unescape(c.Destination)); !figure { // that is reported, and is no description
				w.asides = append(w.asides, aside{c, Description}, aside{c, Title})
			}
		case *ast.Emphasis:
			w.inline(c)
		case *extast.FootnoteLink, *extast.FootnoteBacklink:
		case *ast.RawHTML:
			w.rawHTML(c)
		case *ast.CodeSpan:
			w.asides = append(w.asides, aside{c, Code})
			w.stand(c.Pos())
		default:
			w.stand(c.Pos())
		}
	}
}

func (w *proseWalk) link(n *ast.Link) {
	if a := w.doc.anchorOf(n); a.figure != nil {
		w.at.Figures = append(w.at.Figures, ProseFigure{At: len(w.text) - w.start, Figure: a.figure})
		w.stand(n.Pos())
		return
	}
	from := len(w.text) - w.start
	w.inline(n)
	w.at.Links = append(w.at.Links, message.Span{Start: from, End: len(w.text) - w.start})
	w.asides = append(w.asides, aside{n, Title})
}

// stand puts the sign for what is no prose.
func (w *proseWalk) stand(from int) { w.add([]byte(Stand), from, from+1) }

func (w *proseWalk) add(text []byte, from, to int) {
	w.at.pieces = append(w.at.pieces, piece{len(w.text) - w.start, len(text), from, to})
	w.text = append(w.text, text...)
}

// addText adds the text of a node.
func (w *proseWalk) addText(n *ast.Text) {
	value := n.Segment.Value(w.doc.text)
	if n.IsRaw() {
		w.addPlain(value, n.Segment.Start)
	} else {
		w.addResolved(value, n.Segment.Start)
	}
	if n.SoftLineBreak() || n.HardLineBreak() {
		w.add([]byte{'\n'}, n.Segment.Stop, n.Segment.Stop+1)
	}
}

// addResolved adds text in which backslash escapes and character references are resolved.
func (w *proseWalk) addResolved(value []byte, from int) {
	plain := 0
	for i := 0; i < len(value); {
		resolved, size := value[i:], 0
		switch {
		case value[i] == '\\' && i+1 < len(value) && util.IsPunct(value[i+1]):
			resolved, size = value[i+1:i+2], 2
		case value[i] == '&':
			resolved, size = reference(value[i:])
		}
		if size == 0 {
			i++
			continue
		}
		w.addPlain(value[plain:i], from+plain)
		w.add(resolved, from+i, from+i+size)
		i += size
		plain = i
	}
	w.addPlain(value[plain:], from+plain)
}

func (w *proseWalk) addPlain(text []byte, from int) {
	if len(text) > 0 {
		w.add(text, from, from+len(text))
	}
}
