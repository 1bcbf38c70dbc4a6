package markdown

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
)

// readers has what reads each kind of block when the page is read. The text of a passage is read before, for goldmark.
var readers = [construct.Kinds]func(*reading, *fence){
	construct.Calculation: (*reading).addCalculation,
	construct.Drawing:     (*reading).addBlock,
	construct.Exercise:    (*reading).addBlock,
	construct.Passage:     (*reading).needClosed,
	construct.Reckoner:    (*reading).addBlock,
	construct.Reference:   (*reading).addBlock,
	construct.Worksheet:   (*reading).addBlock,
}

// printers has what prints each kind of block. It is a function because a passage has text in it, and so print again.
func printers() [construct.Kinds]func(*printer, *blockNode) {
	return [construct.Kinds]func(*printer, *blockNode){
		construct.Calculation: (*printer).calculation,
		construct.Drawing:     (*printer).fragment,
		construct.Exercise:    (*printer).fragment,
		construct.Passage:     (*printer).passage,
		construct.Reckoner:    (*printer).fragment,
		construct.Reference:   (*printer).fragment,
		construct.Worksheet:   (*printer).fragment,
	}
}

// fence is a fenced block that is being read.
type fence struct {
	node    *ast.FencedCodeBlock
	opening message.Span   // the opening line, from the fence to its last character
	words   []message.Span // the words after the fence
	closed  bool
	block   *Block // nil for a listing
}

// blockNode is a fenced block of ours in the tree. goldmark's node in it keeps the lines.
type blockNode struct {
	*ast.FencedCodeBlock
	block   *Block
	passage *Passage // of a passage, whose text is its children
}

var kindBlock = ast.NewNodeKind("Block")

func (*blockNode) Kind() ast.NodeKind { return kindBlock }

// fenceParser stands around goldmark's parser of fenced blocks.
type fenceParser struct{ parser.BlockParser }

func newFenceParser() parser.BlockParser { return fenceParser{parser.NewFencedCodeBlockParser()} }

func (p fenceParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	node, state := p.BlockParser.Open(parent, reader, pc)
	if node == nil {
		return nil, state
	}
	r := readingOf(pc)
	line, segment := reader.PeekLine()
	start := segment.Start - segment.Padding
	end := start + len(bytes.TrimRight(line, " \t\n"))
	f := &fence{node: node.(*ast.FencedCodeBlock), opening: r.span(start+pc.BlockOffset(), end)}
	r.fences = append(r.fences, f)
	makeRoom(f.node, reader.Source()[segment.Stop:], line[pc.BlockOffset()])
	if f.node.Info != nil {
		f.words = r.words(r.span(f.node.Info.Segment.Start, f.node.Info.Segment.Stop))
	}
	if len(f.words) == 0 {
		return node, state
	}
	kind, ours := construct.Of(r.cut(f.words[0]))
	if !ours {
		return node, state
	}
	f.block = &Block{Construct: kind, Span: f.opening}
	return &blockNode{FencedCodeBlock: f.node, block: f.block}, state
}

// makeRoom gives a block room for its lines: those to the next fence, of a block of ours that is not too long. A slice
// that grows line by line is copied again and again, in all two to five times as many bytes.
func makeRoom(node *ast.FencedCodeBlock, below []byte, fence byte) {
	if end := bytes.Index(below, []byte{fence, fence, fence}); end >= 0 {
		below = below[:end]
	}
	lines := min(bodyLimit, bytes.Count(below, []byte("\n")))
	node.Lines().AppendAll(make([]text.Segment, lines))
	node.Lines().SetSliced(0, 0)
}

func (p fenceParser) Continue(node ast.Node, reader text.Reader, pc parser.Context) parser.State {
	r := readingOf(pc)
	f := r.fences[len(r.fences)-1] // no block can open inside a fenced one
	state := p.BlockParser.Continue(f.node, reader, pc)
	f.closed = state&parser.Close != 0
	return state
}

func (p fenceParser) Close(node ast.Node, reader text.Reader, pc parser.Context) {
	b, ok := node.(*blockNode)
	if ok {
		node = b.FencedCodeBlock
	}
	p.BlockParser.Close(node, reader, pc)
	if r := readingOf(pc); ok && b.block.Construct == construct.Passage {
		r.readPassage(r.fences[len(r.fences)-1], b)
	}
}

// words gives the places of the words in a span.
func (r *reading) words(in message.Span) []message.Span {
	var words []message.Span
	for at := in.Start; at < in.End; {
		size := bytes.IndexAny(r.source.Text[at:in.End], " \t")
		if size < 0 {
			size = in.End - at
		}
		if size > 0 {
			words = append(words, message.Span{Start: at, End: at + size})
		}
		at += size + 1
	}
	return words
}

// finishFences reads the bodies of our blocks, and looks for listings that were meant to be blocks.
func (r *reading) finishFences() {
	for _, f := range r.fences {
		if f.block != nil {
			readers[f.block.Construct](r, f)
			continue
		}
		if len(f.words) > 0 {
			word := r.cut(f.words[0])
			if is := construct.ContainerOf(word); is != construct.NoContainer {
				r.adviseFence(f, is)
			} else if near, ok := message.Nearest(word, append(construct.Words(), construct.ContainerWords()...)); ok {
				r.advise("construct-unknown", f.words[0],
					"“"+word+"” is not a kind of block, so this is shown as a listing", "did you mean “"+near+"”?")
			}
		}
		if !f.closed && !r.fenceCut {
			r.advise("fence-open", f.opening, "this listing has no closing fence, so all that follows is in it",
				"write a line of "+r.closingFence(f)+" below it")
		}
	}
}

func (r *reading) addBlock(f *fence) {
	f.block.Index = len(r.doc.Blocks)
	r.doc.Blocks = append(r.doc.Blocks, f.block)
	r.nameBlock(f.block, f.words[1:])
	r.needClosed(f)
	f.block.Entries = r.entries(f)
}

func (r *reading) needClosed(f *fence) {
	if !f.closed {
		r.fault("block-open", f.opening, "this "+f.block.Construct.String()+" has no closing fence",
			"write a line of "+r.closingFence(f)+" below it")
	}
}

func (r *reading) nameBlock(b *Block, names []message.Span) {
	if len(names) == 0 {
		b.NameSpan = message.Span{Start: b.Span.End, End: b.Span.End}
		if b.Construct.Row().Naming == construct.Named {
			r.fault("block-name-missing", b.Span, fmt.Sprintf("this %s has no name", b.Construct),
				fmt.Sprintf("write one word after it: %s soil", b.Construct))
		}
		return
	}
	b.NameSpan = names[0]
	if b.Construct.Row().Naming == construct.Nameless {
		r.refuseName(b.Construct, names)
		return
	}
	b.Name = r.cut(names[0])
	if folded := foldID(b.Name); folded != b.Name {
		note := "use small letters a to z, digits and hyphens"
		if folded != "" {
			note += fmt.Sprintf(": %s %s", b.Construct, folded)
		}
		r.fault("block-name", b.NameSpan, fmt.Sprintf("“%s” cannot be the name of %s", b.Name, b.Construct.One()), note)
	}
	if len(names) > 1 {
		rest := message.Span{Start: names[1].Start, End: names[len(names)-1].End}
		r.fault("block-name", rest, fmt.Sprintf("%s has one word for its name", b.Construct.One()),
			"take this out, or join the words with hyphens")
	}
}

// refuseName reports words after one that has none.
func (r *reading) refuseName(kind construct.Kind, names []message.Span) {
	at := message.Span{Start: names[0].Start, End: names[len(names)-1].End}
	r.fault("block-name", at, kind.One()+" has no name", "take this out")
}

// closingFence is the fence that would close a block.
func (r *reading) closingFence(f *fence) string {
	line := r.cut(f.opening)
	return line[:len(line)-len(strings.TrimLeft(line, line[:1]))]
}

func printBlock(p *printer, n ast.Node) {
	b := n.(*blockNode)
	printers()[b.block.Construct](p, b)
}

// fragment writes a block whose HTML the packages above make.
func (p *printer) fragment(node *blockNode) { p.fragments.Block(p.w, node.block) }
