package markdown

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
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
	t.ParagraphTransformer.Transform(node, reader, pc)
	if node.Parent() == nil {
		return
	}
	table, ok := node.NextSibling().(*extast.Table)
	if !ok {
		return
	}
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
			r.tooMany(lines.At(i).Start, "this table would have too many cells", "split it, or take columns out")
			return false
		}
	}
	return true
}

func printTable(p *printer, node ast.Node) {
	label := p.heading
	if c, ok := node.FirstChild().(*caption); ok {
		label = plainText(p.source, c)
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
