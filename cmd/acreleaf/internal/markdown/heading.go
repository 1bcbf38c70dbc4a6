package markdown

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// headingParser stands around one of goldmark's two parsers of headings and reads an id at the heading's end:
// ## Soil {#soil}. goldmark's own attributes are not used: they would let a style or any other attribute in.
type headingParser struct{ parser.BlockParser }

func newHeadingParser(inner parser.BlockParser) parser.BlockParser { return headingParser{inner} }

func (p headingParser) Close(node ast.Node, reader text.Reader, pc parser.Context) {
	p.BlockParser.Close(node, reader, pc)
	if node.Parent() == nil { // it was no heading after all
		return
	}
	r := readingOf(pc)
	h := &Heading{node: node.(*ast.Heading), Level: node.(*ast.Heading).Level}
	lines := node.Lines()
	if lines.Len() == 0 {
		start := r.marksBefore(node.Pos(), h.Level)
		h.Span = r.span(start, start+h.Level)
	} else {
		h.Span = r.span(lines.At(0).Start, lines.At(lines.Len()-1).Stop)
		r.takeID(h, lines)
	}
	r.doc.Headings = append(r.doc.Headings, h)
}

// marksBefore finds the marks of an empty heading. goldmark's position of it counts the spaces that part of a tab
// stands for, so the marks are there or a little before.
func (r *reading) marksBefore(at, level int) int {
	marks := bytes.Repeat([]byte("#"), level)
	return max(0, bytes.LastIndex(r.doc.text[:min(at+level, len(r.doc.text))], marks))
}

// takeID cuts an id off the heading's last line.
func (r *reading) takeID(h *Heading, lines *text.Segments) {
	segment := lines.At(lines.Len() - 1)
	line := segment.Value(r.doc.text)
	if len(line) == 0 || line[len(line)-1] != '}' {
		return
	}
	open := bytes.LastIndexByte(line, '{')
	if open < 0 || line[open+1] != '#' || open > 0 && line[open-1] != ' ' && line[open-1] != '\t' {
		return
	}
	start := segment.Stop - len(line) + open + len("{#")
	at := r.span(start, segment.Stop-len("}"))
	id := string(line[open+len("{#") : len(line)-len("}")])
	segment.Stop = start - len("{#")
	segment = segment.TrimRightSpace(r.doc.text)
	lines.Set(lines.Len()-1, segment)
	h.Span.End = r.offset(segment.Stop)
	if folded := foldID(id); id == "" || folded != id {
		note := "use small letters a to z, digits and hyphens, and nothing else between the braces"
		if folded != "" {
			note += ": {#" + folded + "}"
		}
		r.fault("heading-id", at, "“"+id+"” cannot be the id of a heading", note)
		return
	}
	h.ID, h.explicit = id, at
}

// printHeading writes the heading and, beside it and not in it, its link to itself: inside, the link's name would be
// read out as part of the heading.
func printHeading(p *printer, n ast.Node) {
	h := p.headingOf(n)
	level := "0123456"[h.Level]
	p.w.WriteString(`<div class="heading"><h`)
	p.w.WriteByte(level)
	p.attribute("id", h.ID)
	p.w.WriteByte('>')
	p.children(n)
	p.w.WriteString("</h")
	p.w.WriteByte(level)
	p.w.WriteString(`><a class="self" href="#`)
	p.w.WriteString(h.ID)
	p.w.WriteByte('"')
	name := p.name(n)
	p.attribute("aria-label", p.words.SelfLink+": "+name)
	p.w.WriteString(">§</a></div>\n")
	p.notes()
	p.heading = name
}

// headingOf finds the heading of a node. Headings are printed in the order of the source but for footnotes, so the
// next one is nearly always the one.
func (p *printer) headingOf(n ast.Node) *Heading {
	headings := p.doc.Headings
	for range headings {
		if p.nextHeading == len(headings) {
			p.nextHeading = 0
		}
		h := headings[p.nextHeading]
		p.nextHeading++
		if h.node == n {
			return h
		}
	}
	panic("a heading that was not read")
}
