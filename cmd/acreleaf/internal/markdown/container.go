package markdown

import (
	"bytes"
	"strconv"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
)

// containerFence is the least that a container begins with, so that the fences of blocks in it are shorter.
const containerFence = "````"

// containerNode is a fence with Markdown in it in the tree: an example, which the page shows as it was written and,
// beside it, as what becomes of it; or leader's notes, which are on a page of their own. What is written in it are its
// children, and its text for the listing of an example.
type containerNode struct {
	ast.BaseBlock
	is         construct.Container
	fence      int          // backticks of its own fence
	opening    message.Span // the opening line, from the fence to its last character
	names      []message.Span
	start, end int // offsets in the text that goldmark reads, of the text between its fences
	closed     bool
	misplaced  bool // it is set in, or is in another block
}

var kindContainer = ast.NewNodeKind("Container")

func (*containerNode) Kind() ast.NodeKind        { return kindContainer }
func (e *containerNode) Dump(src []byte, at int) { ast.DumpHelper(e, src, at, nil, nil) }

// containerParser reads containers. A line of as many backticks as open one ends it, whatever is open inside it.
type containerParser struct{}

func (containerParser) Trigger() []byte { return []byte{'`'} }

func (containerParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	line, segment := reader.PeekLine()
	at := pc.BlockOffset()
	if at < 0 {
		return nil, parser.NoChildren
	}
	rest := bytes.TrimLeft(line[at:], "`")
	fence := len(line) - at - len(rest)
	words := bytes.Fields(rest)
	if fence < len(containerFence) || len(words) == 0 || bytes.IndexByte(rest, '`') >= 0 {
		return nil, parser.NoChildren
	}
	is := construct.ContainerOf(string(words[0]))
	if is == construct.NoContainer {
		return nil, parser.NoChildren
	}
	r := readingOf(pc)
	start := segment.Start - segment.Padding + at
	end := start + len(bytes.TrimRight(line[at:], " \t\n"))
	e := &containerNode{is: is, fence: fence, opening: r.span(start, end), start: segment.Stop, end: segment.Stop}
	e.names = r.words(r.span(start+fence, end))[1:]
	r.containers = append(r.containers, e)
	e.misplaced = parent.Kind() != ast.KindDocument || pc.BlockIndent() > 0
	if e.misplaced {
		r.fault(wordings[is].place.ID, e.opening, wordings[is].place.Text,
			"begin its lines at the left margin, with a blank line before it")
	}
	reader.AdvanceToEOL()
	return e, parser.HasChildren
}

func (containerParser) Continue(node ast.Node, reader text.Reader, pc parser.Context) parser.State {
	e := node.(*containerNode)
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

func (containerParser) Close(ast.Node, text.Reader, parser.Context) {}

func (containerParser) CanInterruptParagraph() bool { return true }

func (containerParser) CanAcceptIndentedLine() bool { return false }

// cutFence reports a block whose fence is as long as that of the example it is in: the line that was to close the
// block has closed the example. The fence that was to close the example opens a listing then, which nobody meant.
func (r *reading) cutFence(e *containerNode, last ast.Node) {
	if b, ok := last.(*blockNode); ok {
		last = b.FencedCodeBlock
	}
	if len(r.fences) == 0 || ast.Node(r.fences[len(r.fences)-1].node) != last {
		return
	}
	f := r.fences[len(r.fences)-1]
	if size := len(r.closingFence(f)); size >= e.fence {
		f.closed, r.fenceCut = true, true
		r.fault(wordings[e.is].cut.ID, f.opening, wordings[e.is].cut.Text,
			"begin and end the "+wordings[e.is].noun+" on line "+strconv.Itoa(r.source.Line(e.opening.Start))+
				" with "+strconv.Itoa(size+1)+" backticks")
	}
}

// finishContainers says what is wrong with containers as a whole.
func (r *reading) finishContainers() {
	for _, e := range r.containers {
		if e.misplaced {
			continue // where it ends is not what its author thinks
		}
		w := wordings[e.is]
		if !e.closed {
			r.fault(w.open.ID, e.opening, w.open.Text,
				"write a line of "+string(bytes.Repeat([]byte("`"), e.fence))+" below it")
		}
		if util.IsBlank(r.doc.text[e.start:e.end]) {
			r.fault(w.empty.ID, e.opening, w.empty.Text,
				"write Markdown between its fences, or take it out")
		}
		if len(e.names) > 0 {
			at := message.Span{Start: e.names[0].Start, End: e.names[len(e.names)-1].End}
			r.fault("block-name", at, w.article+w.noun+" has no name", "take this out")
		}
		if e.is == construct.Leader {
			r.finishLeader(e)
		}
	}
}

// A wording is what messages call a container, and the messages on it.
type wording struct {
	noun, article                   string
	place, cut, open, empty, listed worded
}

// worded is a message by its name, and what it says.
type worded struct{ ID, Text string }

var wordings = [construct.Containers]wording{
	construct.Example: {noun: "example", article: "an ",
		place: worded{ID: "example-place",
			Text: "this example is indented, or is in a list, a quotation or another fence"},
		cut: worded{ID: "example-cut", Text: "the fence of this block is as long as that of the example around it, " +
			"so that the example ends here"},
		open:  worded{ID: "example-open", Text: "this example has no closing fence"},
		empty: worded{ID: "example-empty", Text: "there is nothing in this example"},
		listed: worded{ID: "example-fence",
			Text: "this is shown as a listing: an example begins with four backticks or more"}},
	construct.Leader: {noun: "part for the leader", article: "a ",
		place: worded{ID: "leader-place",
			Text: "this part for the leader is indented, or is in a list, a quotation or another fence"},
		cut: worded{ID: "leader-cut", Text: "the fence of this block is as long as that of the part for the leader " +
			"around it, so that the part for the leader ends here"},
		open:  worded{ID: "leader-open", Text: "this part for the leader has no closing fence"},
		empty: worded{ID: "leader-empty", Text: "there is nothing in this part for the leader"},
		listed: worded{ID: "leader-fence",
			Text: "this is shown as a listing: a part for the leader begins with four backticks or more"}},
}

// adviseFence tells why a listing that is called a container is none.
func (r *reading) adviseFence(f *fence, is construct.Container) {
	r.advise(wordings[is].listed.ID, f.opening, wordings[is].listed.Text,
		"begin and end it with "+containerFence+", and leave the fences inside it as they are")
}

// printContainer writes an example. Leader's notes are on a page of their own, and are printed by LeaderHTML alone.
func printContainer(p *printer, node ast.Node) {
	if e := node.(*containerNode); e.is == construct.Example {
		printExample(p, e)
	}
}

// printExample writes what was written and what it becomes. Each part has its name for readers who see the page and for
// those who hear it, who need to be told where it ends.
func printExample(p *printer, e *containerNode) {
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
