package markdown

import (
	"bytes"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Our constructs, as the first word after the fence.
const (
	worksheet = "worksheet"
	reckoner  = "reckoner"
)

var constructs = []string{reckoner, worksheet}

// fence is a fenced block: goldmark's node, which also keeps the lines, and what we know of the block on top.
type fence struct {
	*ast.FencedCodeBlock
	opening message.Span // the opening line, from the fence to its last character
	closed  bool
	block   *Block // nil for a listing
}

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
	start := segment.Start - segment.Padding + pc.BlockOffset()
	f := &fence{
		FencedCodeBlock: node.(*ast.FencedCodeBlock),
		opening:         r.span(start, segment.Start-segment.Padding+len(bytes.TrimRight(line, " \t\r\n"))),
	}
	r.fences = append(r.fences, f)
	return f, state
}

func (p fenceParser) Continue(node ast.Node, reader text.Reader, pc parser.Context) parser.State {
	f := node.(*fence)
	state := p.BlockParser.Continue(f.FencedCodeBlock, reader, pc)
	f.closed = state&parser.Close != 0
	return state
}

func (p fenceParser) Close(node ast.Node, reader text.Reader, pc parser.Context) {
	p.BlockParser.Close(node.(*fence).FencedCodeBlock, reader, pc)
}

// finishFences tells our blocks from listings and reads their bodies.
func (r *reading) finishFences() {
	for _, f := range r.fences {
		words := r.infoWords(f)
		construct := ""
		if len(words) > 0 {
			construct = string(r.source.Text[words[0].Start:words[0].End])
		}
		if slices.Contains(constructs, construct) {
			r.addBlock(f, construct, words[1:])
			continue
		}
		if near, ok := message.Nearest(construct, constructs); ok {
			r.advise("construct-unknown", words[0], "“"+construct+"” is shown as a listing, it is no block of ours",
				"for a worked example write “"+near+"” after the fence")
		}
		if !f.closed {
			r.advise("fence-open", f.opening, "this listing has no closing fence, so it runs to the end of its part",
				"write a line of "+closingFence(r, f)+" below it")
		}
	}
}

// infoWords gives the places of the words after the fence.
func (r *reading) infoWords(f *fence) []message.Span {
	if f.Info == nil {
		return nil
	}
	var words []message.Span
	start := r.body + f.Info.Segment.Start
	for i := start; i < r.body+f.Info.Segment.Stop; {
		word := bytes.IndexAny(r.source.Text[i:r.body+f.Info.Segment.Stop], " \t")
		if word < 0 {
			word = r.body + f.Info.Segment.Stop - i
		}
		if word > 0 {
			words = append(words, message.Span{Start: i, End: i + word})
		}
		i += word + 1
	}
	return words
}

func (r *reading) addBlock(f *fence, construct string, names []message.Span) {
	f.block = &Block{Index: len(r.doc.Blocks), Construct: construct, Span: f.opening}
	r.doc.Blocks = append(r.doc.Blocks, f.block)
	if !f.closed {
		r.fault("block-open", f.opening, "this "+construct+" has no closing fence",
			"write a line of "+closingFence(r, f)+" below it")
	}
	r.nameBlock(f.block, names)
	f.block.Entries = r.entries(f.Lines(), f.block.Span)
}

func (r *reading) nameBlock(b *Block, names []message.Span) {
	if len(names) == 0 {
		b.NameSpan = message.Span{Start: b.Span.End, End: b.Span.End}
		if b.Construct == worksheet {
			r.fault("block-name-missing", b.Span, "this worksheet has no name",
				"write one word after it: worksheet soil")
		}
		return
	}
	b.NameSpan = names[0]
	b.Name = string(r.source.Text[names[0].Start:names[0].End])
	if folded := foldID(b.Name); folded != b.Name {
		note := "use small letters a to z, digits and hyphens"
		if folded != "" {
			note += ": " + b.Construct + " " + folded
		}
		r.fault("block-name", b.NameSpan, "“"+b.Name+"” cannot be the name of a "+b.Construct, note)
	}
	if len(names) > 1 {
		rest := message.Span{Start: names[1].Start, End: names[len(names)-1].End}
		r.fault("block-name", rest, "a "+b.Construct+" has one word for its name",
			"take this out, or join the words with hyphens")
	}
}

// closingFence is the fence that would close a block.
func closingFence(r *reading, f *fence) string {
	line := r.source.Text[f.opening.Start:f.opening.End]
	return strings.Repeat(string(line[:1]), len(line)-len(bytes.TrimLeft(line, string(line[:1]))))
}

func printFence(p *printer, n ast.Node) {
	f, ok := n.(*fence)
	if ok && f.block != nil {
		p.fragments.Block(p.w, f.block)
		return
	}
	p.listing(n)
}
