package markdown

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// The signal words of ANSI Z535.6, from the gravest down, and those of labels in Spanish (as the EPA's Label Review
// Manual has the first three).
var signalWords = []string{"DANGER", "WARNING", "CAUTION", "NOTICE", "PELIGRO", "ADVERTENCIA", "PRECAUCIÓN", "AVISO"}

// inEnglish gives the signal word that one in Spanish stands for.
var inEnglish = map[string]string{
	"PELIGRO": "DANGER", "ADVERTENCIA": "WARNING", "PRECAUCIÓN": "CAUTION", "AVISO": "NOTICE",
}

// quote is a block quotation, and the signal word that it started with.
type quote struct {
	*ast.Blockquote
	signal string // one of the signal words in English, or ""
}

// quoteParser stands around goldmark's parser of block quotations.
type quoteParser struct{ parser.BlockParser }

func newQuoteParser() parser.BlockParser {
	return quoteParser{nestingParser{parser.NewBlockquoteParser()}}
}

func (p quoteParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	node, state := p.BlockParser.Open(parent, reader, pc)
	if node == nil {
		return nil, state
	}
	q := &quote{Blockquote: node.(*ast.Blockquote)}
	r := readingOf(pc)
	r.quotes = append(r.quotes, q)
	return q, state
}

// finishQuotes looks for a signal word at the start of every quotation: strong text that is nothing else.
func (r *reading) finishQuotes() {
	for _, q := range r.quotes {
		paragraph, ok := q.FirstChild().(*ast.Paragraph)
		if !ok {
			continue
		}
		strong, ok := paragraph.FirstChild().(*ast.Emphasis)
		if !ok || strong.Level != 2 || strong.ChildCount() != 1 {
			continue
		}
		word, ok := strong.FirstChild().(*ast.Text)
		if !ok {
			continue
		}
		r.readSignal(q, strong, strings.TrimRight(string(word.Segment.Value(r.doc.text)), ":."), word.Segment)
	}
}

func (r *reading) readSignal(q *quote, strong ast.Node, word string, at text.Segment) {
	if !slices.Contains(signalWords, word) {
		near, ok := message.Nearest(word, signalWords)
		if ok && (strings.EqualFold(near, word) || strings.ToUpper(word) == word) {
			r.advise("signal-word", r.span(at.Start, at.Start+len(word)),
				"“"+word+"” makes no signal of this quotation", "write **"+near+"**, in capitals, to mark it as one")
		}
		return
	}
	q.signal = cmp.Or(inEnglish[word], word)
	paragraph := strong.Parent()
	if t, ok := strong.NextSibling().(*ast.Text); ok {
		value := t.Segment.Value(r.doc.text)
		t.Segment = t.Segment.WithStart(t.Segment.Stop - len(cutSeparator(value)))
		if t.Segment.IsEmpty() {
			paragraph.RemoveChild(paragraph, t)
		}
	}
	paragraph.RemoveChild(paragraph, strong)
	if !paragraph.HasChildren() {
		q.RemoveChild(paragraph.Parent(), paragraph)
	}
}

// cutSeparator cuts off what parts a signal word from its text: spaces, and a colon, full stop or dash with a space or
// the end after it. “-5 °F” and “.5 lb” keep theirs.
func cutSeparator(text []byte) []byte {
	text = bytes.TrimLeft(text, " \t")
	for _, mark := range []string{":", ".", "-", "–", "—"} {
		rest, found := bytes.CutPrefix(text, []byte(mark))
		if found && (len(rest) == 0 || rest[0] == ' ' || rest[0] == '\t') {
			return bytes.TrimLeft(rest, " \t")
		}
	}
	return text
}

func (w *Words) signal(word string) string {
	switch word {
	case "DANGER":
		return w.Danger
	case "WARNING":
		return w.Warning
	case "CAUTION":
		return w.Caution
	}
	return w.Notice
}

// printQuote writes a quotation, or a signal: an aside that is no landmark, so that it may be anywhere in the text.
func printQuote(p *printer, node ast.Node) {
	q, ok := node.(*quote)
	if !ok || q.signal == "" {
		p.w.WriteString("<blockquote>\n")
		p.children(node)
		p.w.WriteString("</blockquote>\n")
		return
	}
	word := p.words.signal(q.signal)
	p.w.WriteString(`<aside class="signal `)
	p.w.WriteString(strings.ToLower(q.signal))
	p.w.WriteString(`" role="note"`)
	p.attribute("aria-label", word)
	p.w.WriteString(`><p class="signal-word">`)
	p.escape(word)
	p.w.WriteString("</p>\n")
	p.children(node)
	p.w.WriteString("</aside>\n")
}
