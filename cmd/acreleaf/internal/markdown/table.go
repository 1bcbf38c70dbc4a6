package markdown

import (
	"bytes"
	"fmt"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"acreleaf/cmd/acreleaf/internal/message"
)

// caption is the text straight above a table, with no blank line between.
type caption struct{ ast.BaseBlock }

var kindCaption = ast.NewNodeKind("Caption")

func (*caption) Kind() ast.NodeKind        { return kindCaption }
func (c *caption) Dump(src []byte, at int) { ast.DumpHelper(c, src, at, nil, nil) }

// tableParser stands around goldmark's, which makes tables of paragraphs.
type tableParser struct{ parser.ParagraphTransformer }

func newTableParser() parser.ParagraphTransformer {
	return tableParser{extension.NewTableParagraphTransformer()}
}

func (t tableParser) Transform(node *ast.Paragraph, reader text.Reader, pc parser.Context) {
	if r := readingOf(pc); !r.tableFits(node) {
		return
	}
	before, parent := node.PreviousSibling(), node.Parent()
	t.ParagraphTransformer.Transform(node, reader, pc)
	if node.Parent() == nil { // all of it became the table
		if table, ok := after(before, parent).(*extast.Table); ok {
			readingOf(pc).headsTable(table)
		}
		return
	}
	table, ok := node.NextSibling().(*extast.Table)
	if !ok {
		return
	}
	readingOf(pc).headsTable(table)
	c := &caption{}
	for i := range node.Lines().Len() {
		line := node.Lines().At(i)
		c.Lines().Append(line.TrimLeftSpace(reader.Source()))
	}
	last := c.Lines().Len() - 1
	line := c.Lines().At(last)
	c.Lines().Set(last, line.TrimRightSpace(reader.Source()))
	table.InsertBefore(table, table.FirstChild(), c)
	node.Parent().RemoveChild(node.Parent(), node)
}

// after is the child of a parent that follows another, or the first when there is no other.
func after(before, parent ast.Node) ast.Node {
	if before == nil {
		return parent.FirstChild()
	}
	return before.NextSibling()
}

// headsTable sees that every column has a head. The first may go without: then its cells head the rows.
func (r *reading) headsTable(table *extast.Table) {
	header := table.FirstChild()
	if header.Kind() != extast.KindTableHeader {
		return
	}
	column := 0
	for cell := header.FirstChild(); cell != nil; cell = cell.NextSibling() {
		column++
		if holdsText(cell) || column == 1 && header.ChildCount() > 1 {
			continue
		}
		r.fault("table-head", r.headLine(header), fmt.Sprintf("column %d of this table has no head", column),
			"write in its first row what is in the column, and its unit")
		return
	}
}

// holdsText says whether a cell has text, before its text is parsed.
func holdsText(cell ast.Node) bool {
	if cell.Lines().Len() == 0 {
		return false
	}
	line := cell.Lines().At(0)
	return !line.IsEmpty()
}

// headLine is the first row of a table.
func (r *reading) headLine(header ast.Node) message.Span {
	text, end := r.doc.text, 0
	for cell := header.FirstChild(); cell != nil && cell.Lines().Len() > 0; cell = cell.NextSibling() {
		end = cell.Lines().At(0).Stop
	}
	from := bytes.LastIndexByte(text[:end], '\n') + 1
	to := len(text)
	if size := bytes.IndexByte(text[end:], '\n'); size >= 0 {
		to = end + size
	}
	return r.span(from, to)
}

// tableFits looks at the line that would set a table's width. Short rows are filled up to it, so that a page of a
// hundred kilobytes could ask for billions of cells.
func (r *reading) tableFits(node *ast.Paragraph) bool {
	lines := node.Lines()
	if lines.Len() < 2 {
		return false
	}
	for i := 1; i < lines.Len(); i++ {
		line := r.doc.text[lines.At(i).Start:lines.At(i).Stop]
		columns := bytes.Count(line, []byte("|")) + 1
		if columns*(lines.Len()-i) > tableLimit && len(bytes.Trim(line, "-:| \t\n")) == 0 {
			r.tooMany(lines.At(i).Start, fmt.Sprintf("this table would have more than %d cells", tableLimit),
				"divide it into two, or take columns out")
			return false
		}
	}
	return true
}

func printTable(p *printer, node ast.Node) {
	label := p.heading
	if c, ok := node.FirstChild().(*caption); ok {
		label = p.name(c)
	}
	p.openBox(p.words.Table, label)
	p.w.WriteString("<table>\n")
	p.rowHeads = rowHeads(node)
	p.children(node)
	p.w.WriteString("</table></div>\n")
	p.notes()
}

// rowHeads tells whether the first column names the rows: then its own head is empty.
func rowHeads(table ast.Node) bool {
	for c := table.FirstChild(); c != nil; c = c.NextSibling() {
		if c.Kind() == extast.KindTableHeader {
			return c.ChildCount() > 1 && !c.FirstChild().HasChildren()
		}
	}
	return false
}

func printCaption(p *printer, node ast.Node) {
	p.w.WriteString("<caption>")
	p.children(node)
	p.w.WriteString("</caption>\n")
}

func printTableHeader(p *printer, node ast.Node) {
	p.w.WriteString("<thead>\n<tr>\n")
	p.children(node)
	p.w.WriteString("</tr>\n</thead>\n")
	if node.NextSibling() != nil {
		p.w.WriteString("<tbody>\n")
	}
}

func printTableRow(p *printer, node ast.Node) {
	p.w.WriteString("<tr>\n")
	p.children(node)
	p.w.WriteString("</tr>\n")
	if node.NextSibling() == nil {
		p.w.WriteString("</tbody>\n")
	}
}

// printTableCell writes a cell. A head without text heads nothing, so it is a plain cell.
func printTableCell(p *printer, node ast.Node) {
	tag, scope := "td", ""
	switch {
	case node.Parent().Kind() == extast.KindTableHeader && node.HasChildren():
		tag, scope = "th", ` scope="col"`
	case p.rowHeads && node.PreviousSibling() == nil && node.HasChildren():
		tag, scope = "th", ` scope="row"`
	}
	p.w.WriteByte('<')
	p.w.WriteString(tag)
	p.w.WriteString(scope)
	switch node.(*extast.TableCell).Alignment {
	case extast.AlignLeft:
		p.w.WriteString(` class="left"`)
	case extast.AlignCenter:
		p.w.WriteString(` class="center"`)
	case extast.AlignRight:
		p.w.WriteString(` class="right"`)
	}
	p.w.WriteByte('>')
	p.inCell = true
	p.children(node)
	p.inCell = false
	p.w.WriteString("</")
	p.w.WriteString(tag)
	p.w.WriteString(">\n")
}
