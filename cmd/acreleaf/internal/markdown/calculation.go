package markdown

import (
	"fmt"
	"strings"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
)

// addCalculation keeps a block that defines a calculation. Its body is YAML with levels, which is read as it is in
// the source: so the block must be at the left margin, where no marks of lists or quotations are between its lines.
func (r *reading) addCalculation(f *fence) {
	b := f.block
	b.Index = len(r.doc.Calculations)
	r.doc.Calculations = append(r.doc.Calculations, b)
	r.nameBlock(b, f.words[1:])
	r.needClosed(f)
	if at := f.opening.Start; at > r.body && r.source.Text[at-1] != '\n' {
		r.fault("calculation-indented", f.opening, "this calculation is indented, or is in a list or a quotation",
			"begin its lines at the left margin")
		return
	}
	if !f.closed {
		return
	}
	lines := f.node.Lines()
	if lines.Len() == 0 {
		b.Body = message.Span{Start: f.opening.End, End: f.opening.End}
		return
	}
	b.Body = r.span(lines.At(0).Start, lines.At(lines.Len()-1).Stop)
	if b.Body.End-b.Body.Start > bodyLimit {
		b.Body = message.Span{}
		r.fault("block-too-long", b.Span, fmt.Sprintf("this %s is longer than %d bytes", b.Construct, bodyLimit),
			"look for its closing fence, or split it")
	}
}

// CalculationAnchor is the id of a calculation in the page that defines it.
func CalculationAnchor(name string) string { return construct.Calculation.String() + "-" + name }

// calculation writes a block that defines a calculation as what it is: a listing, with the fences that make it one.
func (p *printer) calculation(n *blockNode) {
	b := n.block
	opening := string(p.doc.Source.Text[b.Span.Start:b.Span.End])
	var code strings.Builder
	code.WriteString(opening + "\n")
	for i := range n.Lines().Len() {
		line := n.Lines().At(i)
		code.Write(line.Value(p.source))
	}
	code.WriteString(opening[:len(opening)-len(strings.TrimLeft(opening, opening[:1]))])
	p.w.WriteString("<div")
	p.attribute("id", CalculationAnchor(b.Name))
	p.w.WriteString(">\n")
	p.openBox(p.words.Code, b.Name)
	if err := p.highlight(lexerOf("yaml"), code.String()); err != nil && p.err == nil {
		p.err = err
	}
	p.w.WriteString("</div>\n</div>\n")
}
