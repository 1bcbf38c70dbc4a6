package markdown

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/yamltext"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"
)

// Passage is a text that speaks for the reader's numbers, by cases. Its body is a list of YAML; the text of a case is
// Markdown, which goldmark reads where it stands.
type Passage struct {
	Index  int
	Span   message.Span // the line that opens it, from its fence
	Cases  []PassageCase
	Unread bool // a line could not be read, so what is missing may be there
}

// PassageCase is a condition with what is said when it is answered yes. The last case of a passage has none.
type PassageCase struct {
	When     string       // the condition; "" for the last case
	WhenSpan message.Span // where it stands, letter for letter if it is as long as the condition
	Text     message.Span // the first letter of what is said to the last
}

// The keys of a passage.
const (
	keyWhen      = "when"
	keySay       = "say"
	keyOtherwise = "otherwise"
)

var passageKeys = []string{keyWhen, keySay, keyOtherwise}

// PassageKeys lists the keys of a passage.
func PassageKeys() []string { return slices.Clone(passageKeys) }

const caseExample = "write a case as two lines: “- when: soil.nitrogen > \"40 lb N/ac\"”, " +
	"and below it “  say:” and the text"

// passageEntry is a key of a passage with the pieces of lines that are its value.
type passageEntry struct {
	key         string
	keySpan     message.Span
	column      int            // where the key begins in its line
	opens       bool           // a dash comes before it
	style       byte           // how the value is written: '>', '|', '"', '\'', or 0 for plain
	pieces      []text.Segment // of the text that goldmark reads
	first, last int            // its lines, from 0
}

// readPassage reads the body of a passage, and puts the text of each case into the tree for goldmark to read.
func (r *reading) readPassage(f *fence, node *blockNode) {
	p := &Passage{Index: len(r.doc.Passages), Span: f.opening}
	r.doc.Passages = append(r.doc.Passages, p)
	node.passage = p
	if len(f.words) > 1 {
		r.refuseName(construct.Passage, f.words[1:])
	}
	if !f.closed {
		p.Unread = true // the rest of the page may be in it
		return
	}
	lines := f.node.Lines()
	if last := lines.Len() - 1; last >= 0 && lines.At(last).Stop-lines.At(0).Start > bodyLimit {
		p.Unread = true
		r.fault("block-too-long", f.opening, fmt.Sprintf("this passage is longer than %d bytes", bodyLimit),
			"look for its closing fence, or split it")
		return
	}
	before := len(r.messages)
	b := &passageBody{reading: r, lines: lines}
	entries := b.entries()
	for i := range entries {
		b.checkValue(&entries[i])
	}
	p.Unread = len(r.messages) > before
	b.cases(p, node, entries)
}

// passageBody is one run of readPassage.
type passageBody struct {
	*reading
	lines *text.Segments
}

// line gives a line without its end, and how far it is set in.
func (b *passageBody) line(i int) (line []byte, indent int) {
	s := b.lines.At(i)
	line = bytes.TrimRight(b.doc.text[s.Start:s.Stop], " \n")
	return line, len(line) - len(bytes.TrimLeft(line, " "))
}

// entries parts the body into its keys. A line that is set in further than the key before it goes on with its value.
func (b *passageBody) entries() []passageEntry {
	var found []passageEntry
	for i := range b.lines.Len() {
		line, indent := b.line(i)
		if len(line) == 0 {
			continue
		}
		start := b.lines.At(i).Start
		if n := len(found); n > 0 && indent > found[n-1].column {
			found[n-1].goOn(i, text.NewSegment(start+indent, b.lines.At(i).Stop))
			continue
		}
		if line[indent] == '#' {
			continue
		}
		e, ok := b.entry(i, line, indent)
		if n := len(found); ok && !e.opens && (n == 0 || e.column != found[n-1].column) {
			ok = false
		}
		if !ok {
			b.fault("passage-line", b.span(start+indent, start+len(line)), "this is not a line of a passage", caseExample)
			continue
		}
		found = append(found, e)
	}
	return found
}

func (e *passageEntry) goOn(line int, piece text.Segment) {
	e.pieces = append(e.pieces, piece)
	e.last = line
}

var (
	keyLine    = regexp.MustCompile(`^(- +)?([A-Za-z][A-Za-z-]*) *:(?: +|$)`)
	blockStyle = regexp.MustCompile(`^[>|][-+]?$`)
)

// entry reads a line that begins with a key.
func (b *passageBody) entry(i int, line []byte, indent int) (passageEntry, bool) {
	start := b.lines.At(i).Start
	at := keyLine.FindSubmatchIndex(line[indent:])
	if at == nil {
		return passageEntry{}, false
	}
	e := passageEntry{
		key: string(line[indent+at[4] : indent+at[5]]), keySpan: b.span(start+indent+at[4], start+indent+at[5]),
		column: indent + at[4], opens: at[2] >= 0, first: i, last: i,
	}
	value := line[indent+at[1]:]
	switch {
	case len(value) == 0:
	case blockStyle.Match(value):
		e.style = value[0]
	default:
		if value[0] == '"' || value[0] == '\'' {
			e.style = value[0]
		}
		e.pieces = append(e.pieces, text.NewSegment(start+indent+at[1], b.lines.At(i).Stop))
	}
	return e, true
}

// value is the text of an entry on one line.
func (b *passageBody) value(e *passageEntry) string {
	var words []string
	for _, piece := range e.pieces {
		words = append(words, strings.Fields(string(piece.Value(b.doc.text)))...)
	}
	return strings.Join(words, " ")
}

// checkValue sees that YAML reads a value as the text that is there, and takes the quotes off it.
func (b *passageBody) checkValue(e *passageEntry) {
	if len(e.pieces) == 0 {
		b.fault("value-empty", e.keySpan, fmt.Sprintf("%q has no value", e.key), "write it after the colon and a space")
		return
	}
	last := len(e.pieces) - 1
	e.pieces[last] = e.pieces[last].TrimRightSpace(b.doc.text)
	if e.style == '"' || e.style == '\'' {
		e.pieces[0].Start++
		e.pieces[last].Stop = max(e.pieces[last].Start, e.pieces[last].Stop-1)
	}
	if e.style == 0 && last == 0 && yamltext.PlainValue(e.pieces[0].Value(b.doc.text)) || b.isRead(e) {
		return
	}
	b.fault("passage-text", b.entrySpan(e), "this text has marks that YAML has another use for",
		"write “"+e.key+": >” and the text on the lines below it, indented by four spaces")
}

// isRead says whether YAML reads the lines of an entry as its key and the text that is there.
func (b *passageBody) isRead(e *passageEntry) bool {
	lines := yamltext.New(b.source, e.last-e.first+1, b.lines.At(e.last).Stop-b.lines.At(e.first).Start+1)
	for i := e.first; i <= e.last; i++ {
		line, _ := b.line(i)
		if i == e.first {
			line = append(bytes.Repeat([]byte(" "), e.column), line[e.column:]...)
		}
		lines.AddLine(line, b.offset(b.lines.At(i).Start), 0)
	}
	root, refused, err := lines.Parse()
	if err != nil || len(refused) > 0 || root == nil || len(root.Entries) != 1 {
		return false
	}
	read := root.Entries[0]
	return read.Key.Value == e.key && read.Value.Kind == yamltext.Scalar && !read.Value.Null &&
		strings.Join(strings.Fields(read.Value.Value), " ") == b.value(e)
}

func (b *passageBody) entrySpan(e *passageEntry) message.Span {
	return b.span(e.pieces[0].Start, e.pieces[len(e.pieces)-1].Stop)
}

// cases makes the cases of a passage from its keys.
func (b *passageBody) cases(p *Passage, node *blockNode, entries []passageEntry) {
	for i := 0; i < len(entries); {
		end := i + 1
		for end < len(entries) && !entries[end].opens {
			end++
		}
		b.oneCase(p, node, entries[i:end])
		i = end
	}
	switch last := len(p.Cases) - 1; {
	case p.Unread:
	case last < 0 || p.Cases[last].When != "":
		b.fault("passage-otherwise", p.Span, "this passage does not say what holds when no case does",
			"add a last line to it: “- otherwise:” and a text")
	}
}

// oneCase adds the case of the keys behind one dash.
func (b *passageBody) oneCase(p *Passage, node *blockNode, keys []passageEntry) {
	values, slip := map[string]*passageEntry{}, false
	for i := range keys {
		e := &keys[i]
		switch {
		case !slices.Contains(passageKeys, e.key):
			slip = true
			note := "write one of: " + strings.Join(passageKeys, ", ")
			if near, known := message.Nearest(e.key, passageKeys); known {
				note = "write " + near
			}
			b.fault("passage-key", e.keySpan, "a passage has no “"+e.key+"”", note)
		case values[e.key] != nil:
			slip = true
			b.fault("key-twice", e.keySpan, fmt.Sprintf("%q is written twice in this case", e.key),
				"begin a new case with a dash before it")
		default:
			values[e.key] = e
			slip = slip || len(e.pieces) == 0
		}
	}
	when, say, otherwise := values[keyWhen], values[keySay], values[keyOtherwise]
	switch {
	case slip: // it is told, and what is missing may be meant by it
	case otherwise != nil && (when != nil || say != nil):
		b.fault("passage-case", otherwise.keySpan, "“otherwise” is in a case that has a condition",
			"put a dash before it, at the end of the passage")
	case when == nil && otherwise == nil:
		b.fault("passage-case", say.keySpan, "this text does not say when it holds",
			"write “- when:” and a condition in the line before it")
	case otherwise == nil && say == nil:
		b.fault("passage-case", when.keySpan, "this case says nothing", "write “  say:” and a text in the line below it")
	case len(p.Cases) > 0 && p.Cases[len(p.Cases)-1].When == "":
		b.fault("passage-case", keys[0].keySpan, "this case comes after “otherwise”, and can never hold",
			"move it to before “otherwise”")
	default:
		b.addCase(p, node, when, say, otherwise)
		return
	}
	p.Unread = true
}

func (b *passageBody) addCase(p *Passage, node *blockNode, when, say, otherwise *passageEntry) {
	c := PassageCase{}
	if when != nil {
		c.When, c.WhenSpan = b.value(when), b.entrySpan(when)
	} else {
		say = otherwise
	}
	c.Text = b.entrySpan(say)
	p.Cases = append(p.Cases, c)
	paragraph := ast.NewParagraph()
	for _, piece := range say.pieces {
		paragraph.Lines().Append(piece)
	}
	node.AppendChild(node, paragraph)
}

// caseAt finds the passage and the case that say what is at a place; nil when none does.
func (d *Document) caseAt(at message.Span) (*Passage, int) {
	for _, p := range d.Passages {
		for i, c := range p.Cases {
			if c.Text.Start <= at.Start && at.End <= c.Text.End {
				return p, i
			}
		}
	}
	return nil, 0
}

// passage writes a passage: the cases as the packages above have them, with the text of each.
func (p *printer) passage(node *blockNode) {
	cases := []ast.Node{}
	for c := node.FirstChild(); c != nil; c = c.NextSibling() {
		cases = append(cases, c)
	}
	p.fragments.Passage(p.w, node.passage, func(i int) {
		p.children(cases[i])
		p.fragments.Notes(p.w)
	})
}
