package markdown

import (
	"bytes"
	"strconv"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"acreleaf/cmd/acreleaf/internal/message"
)

// exampleWord is the word after the fence of an example: Markdown that the page shows as it was written and, beside it,
// as what becomes of it. What is in it is part of the page like all else.
const exampleWord = "example"

// exampleFence is the least that an example begins with, so that the fences of blocks in it are shorter.
const exampleFence = "````"

// exampleNode is an example in the tree. What is written in it are its children, and its text for the listing.
type exampleNode struct {
	ast.BaseBlock
	fence      int          // backticks of its own fence
	opening    message.Span // the opening line, from the fence to its last character
	names      []message.Span
	start, end int // offsets in the text that goldmark reads, of the text between its fences
	closed     bool
	misplaced  bool // it is set in, or is in another block
}

var kindExample = ast.NewNodeKind("Example")

func (*exampleNode) Kind() ast.NodeKind        { return kindExample }
func (e *exampleNode) Dump(src []byte, at int) { ast.DumpHelper(e, src, at, nil, nil) }

// exampleParser reads examples. A line of as many backticks as open one ends it, whatever is open inside it.
type exampleParser struct{}

func (exampleParser) Trigger() []byte { return []byte{'`'} }

func (exampleParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	line, segment := reader.PeekLine()
	at := pc.BlockOffset()
	if at < 0 {
		return nil, parser.NoChildren
	}
	rest := bytes.TrimLeft(line[at:], "`")
	fence := len(line) - at - len(rest)
	words := bytes.Fields(rest)
	if fence < len(exampleFence) || len(words) == 0 || string(words[0]) != exampleWord || bytes.IndexByte(rest, '`') >= 0 {
		return nil, parser.NoChildren
	}
	r := readingOf(pc)
	start := segment.Start - segment.Padding + at
	end := start + len(bytes.TrimRight(line[at:], " \t\n"))
	e := &exampleNode{fence: fence, opening: r.span(start, end), start: segment.Stop, end: segment.Stop}
	e.names = r.words(r.span(start+fence, end))[1:]
	r.examples = append(r.examples, e)
	e.misplaced = parent.Kind() != ast.KindDocument || pc.BlockIndent() > 0
	if e.misplaced {
		r.fault("example-place", e.opening, "this example is set in, or stands in a list, a quotation or another example",
			"begin its lines at the left margin, with a blank line before it")
	}
	reader.AdvanceToEOL()
	return e, parser.HasChildren
}

func (exampleParser) Continue(node ast.Node, reader text.Reader, pc parser.Context) parser.State {
	e := node.(*exampleNode)
	line, segment := reader.PeekLine()
	indent, at := util.IndentWidth(line, reader.LineOffset())
	rest := bytes.TrimLeft(line[at:], "`")
	if indent > 3 || len(line)-at-len(rest) < e.fence || !util.IsBlank(rest) {
		e.end = segment.Stop
		return parser.Continue | parser.HasChildren
	}
	e.closed = true
	readingOf(pc).cutFence(e, pc.LastOpenedBlock().Node)
	reader.AdvanceToEOL()
	return parser.Close
}

func (exampleParser) Close(ast.Node, text.Reader, parser.Context) {}

func (exampleParser) CanInterruptParagraph() bool { return true }

func (exampleParser) CanAcceptIndentedLine() bool { return false }

// cutFence reports a block whose fence is as long as that of the example it stands in: the line that was to close the
// block has closed the example. The fence that was to close the example opens a listing then, which nobody meant.
func (r *reading) cutFence(e *exampleNode, last ast.Node) {
	if b, ok := last.(*blockNode); ok {
		last = b.FencedCodeBlock
	}
	if len(r.fences) == 0 || ast.Node(r.fences[len(r.fences)-1].node) != last {
		return
	}
	f := r.fences[len(r.fences)-1]
	if size := len(r.closingFence(f)); size >= e.fence {
		f.closed, r.fenceCut = true, true
		r.fault("example-cut", f.opening, "the fence of this block is as long as that of the example around it, "+
			"so that the example ends here", "begin and end the example on line "+strconv.Itoa(r.source.Line(e.opening.Start))+
			" with "+strconv.Itoa(size+1)+" backticks")
	}
}

// finishExamples says what is wrong with examples as a whole.
func (r *reading) finishExamples() {
	for _, e := range r.examples {
		if e.misplaced {
			continue // where it ends is not what its author thinks
		}
		if !e.closed {
			r.fault("example-open", e.opening, "this example has no closing fence",
				"write a line of "+string(bytes.Repeat([]byte("`"), e.fence))+" below it")
		}
		if util.IsBlank(r.doc.text[e.start:e.end]) {
			r.fault("example-empty", e.opening, "there is nothing in this example",
				"write Markdown between its fences, or take it out")
		}
		if len(e.names) > 0 {
			at := message.Span{Start: e.names[0].Start, End: e.names[len(e.names)-1].End}
			r.fault("block-name", at, "an example has no name", "take this out")
		}
	}
}

// adviseFence tells why a listing that is called an example is none.
func (r *reading) adviseFence(f *fence) {
	r.advise("example-fence", f.opening, "this is shown as a listing: an example begins with four backticks or more",
		"begin and end it with "+exampleFence+", and leave the fences inside it as they are")
}

// printExample writes what was written and what it becomes. Each part has its name for readers who see the page and for
// those who hear it, who need to be told where it ends.
func printExample(p *printer, node ast.Node) {
	e := node.(*exampleNode)
	p.examples++
	p.w.WriteString(`<div class="example" role="group"`)
	p.attribute("aria-label", p.words.Example+" "+strconv.Itoa(p.examples))
	p.w.WriteString(">\n")
	p.openPart("written", p.words.Written)
	p.openBox(p.words.Code, "Markdown")
	p.written(string(p.source[e.start:e.end]))
	p.w.WriteString("</div>\n</div>\n")
	p.openPart("made", p.words.Made)
	p.children(e)
	p.w.WriteString("</div>\n</div>\n")
}

func (p *printer) openPart(class, name string) {
	p.w.WriteString(`<div class="` + class + `" role="group"`)
	p.attribute("aria-label", name)
	p.w.WriteString(`><p class="part" aria-hidden="true">`)
	p.escape(name)
	p.w.WriteString("</p>\n")
}
