package markdown

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// references are the bytes that text and attributes cannot hold as they are.
var references = [256]string{'&': "&amp;", '<': "&lt;", '>': "&gt;", '"': "&quot;", 0: "\uFFFD"}

// escape writes text that holds no Markdown.
func (p *printer) escape(text string) {
	start := 0
	for i := range len(text) {
		if references[text[i]] == "" {
			continue
		}
		p.w.WriteString(text[start:i])
		p.w.WriteString(references[text[i]])
		start = i + 1
	}
	p.w.WriteString(text[start:])
}

func (p *printer) escapeBytes(text []byte) { p.escape(util.BytesToReadOnlyString(text)) }

// marks are the bytes that mean something in the text of a paragraph.
var marks = func() (m [256]bool) {
	for _, c := range "\\&<>\"\x00" {
		m[c] = true
	}
	return m
}()

// text writes the text of a paragraph: backslash escapes and character references are resolved.
func (p *printer) text(text []byte) {
	start := 0
	for i := 0; i < len(text); {
		c := text[i]
		if !marks[c] {
			i++
			continue
		}
		p.w.Write(text[start:i])
		switch c {
		case '\\':
			i++
			start = i - 1
			if i < len(text) && util.IsPunct(text[i]) {
				start = i
				p.escapeBytes(text[i : i+1])
				i++
				start = i
			}
		case '&':
			value, size := reference(text[i:])
			if size == 0 {
				p.w.WriteString("&amp;")
				size = 1
			} else {
				p.escapeBytes(value)
			}
			i += size
			start = i
		default:
			p.w.WriteString(references[c])
			i++
			start = i
		}
	}
	p.w.Write(text[start:])
}

// unescape gives the same text as plain text.
func unescape(text []byte) string {
	if !strings.ContainsAny(util.BytesToReadOnlyString(text), "\\&") {
		return string(text)
	}
	var b strings.Builder
	for i := 0; i < len(text); {
		switch {
		case text[i] == '\\' && i+1 < len(text) && util.IsPunct(text[i+1]):
			b.WriteByte(text[i+1])
			i += 2
		case text[i] == '&':
			value, size := reference(text[i:])
			if size == 0 {
				value, size = text[i:i+1], 1
			}
			b.Write(value)
			i += size
		default:
			b.WriteByte(text[i])
			i++
		}
	}
	return b.String()
}

// reference resolves the character reference that text starts with. Its size is 0 when there is none.
func reference(text []byte) (value []byte, size int) {
	end := 1
	for end < len(text) && (util.IsAlphaNumeric(text[end]) || end == 1 && text[end] == '#') {
		end++
	}
	if end == len(text) || text[end] != ';' || end == 1 {
		return nil, 0
	}
	name := util.BytesToReadOnlyString(text[1:end])
	if name[0] != '#' {
		if entity, ok := util.LookUpHTML5EntityByName(name); ok {
			return entity.Characters, end + 1
		}
		return nil, 0
	}
	digits, base, limit := name[1:], 10, 7
	if len(digits) > 0 && (digits[0] == 'x' || digits[0] == 'X') {
		digits, base, limit = digits[1:], 16, 6
	}
	n, err := strconv.ParseUint(digits, base, 32)
	if err != nil || len(digits) > limit {
		return nil, 0
	}
	return utf8.AppendRune(nil, util.ToValidRune(rune(n))), end + 1
}

// oneLine puts a space for every line end.
func oneLine(s string) string { return strings.ReplaceAll(s, "\n", " ") }

// plainText gives the text of a node's children as a reader sees it, on one line.
func plainText(source []byte, n ast.Node) string {
	var b strings.Builder
	appendPlain(&b, source, n, nil)
	return b.String()
}

// name is the text of a node as the name of something, which is read out by itself: without the figures of worksheets,
// which are the example's and have no note there that says so.
func (p *printer) name(n ast.Node) string {
	var b strings.Builder
	appendPlain(&b, p.source, n, func(l *ast.Link) bool {
		f := p.doc.anchorOf(l).figure
		return f != nil && f.Scheme == construct.Worked
	})
	return b.String()
}

// appendPlain adds the text of a node; "…" for the links that are left out.
func appendPlain(b *strings.Builder, source []byte, n ast.Node, leftOut func(*ast.Link) bool) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if l, is := c.(*ast.Link); is && leftOut != nil && leftOut(l) {
			b.WriteString("…")
			continue
		}
		switch c := c.(type) {
		case *ast.Text:
			value := c.Segment.Value(source)
			if c.IsRaw() {
				b.WriteString(oneLine(string(value)))
			} else {
				b.WriteString(unescape(value))
			}
			if c.SoftLineBreak() || c.HardLineBreak() {
				b.WriteByte(' ')
			}
		case *ast.AutoLink:
			b.Write(c.Label(source))
		case *ast.RawHTML:
			if isComment(c, source) {
				continue
			}
			b.WriteString(oneLine(string(c.Segments.Value(source))))
		case *extast.FootnoteLink, *extast.FootnoteBacklink:
		default:
			appendPlain(b, source, c, leftOut)
		}
	}
}

func printText(p *printer, node ast.Node) {
	n := node.(*ast.Text)
	value := n.Segment.Value(p.source)
	if n.IsRaw() {
		p.escapeBytes(value)
		return
	}
	p.text(value)
	if n.HardLineBreak() {
		p.w.WriteString("<br>\n")
	} else if n.SoftLineBreak() {
		p.w.WriteByte('\n')
	}
}
