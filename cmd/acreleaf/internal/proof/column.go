package proof

import (
	"bytes"
	"cmp"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
)

// columns remembers the units in the heads of a table while its cells are visited, since "30" below "Rate (lb/ac)" is a
// figure too. A cell's column is the number of bars before it in its line.
type columns struct {
	heads map[int]string // the unit of a column; nil outside of tables
	line  int            // where the line of the last cell begins
	row   string         // the unit in the first cell of the row

	headWords map[int]string // the heads themselves
	rowWords  string         // the first cell of the row
	caption   string         // the unit in the caption
	pending   string         // the unit in a caption whose table is still to come
	headLine  int            // where the line of the heads begins
	inCell    bool           // the prose at hand is a cell below the heads
	around    string         // the head of its column and of its row
}

// cell gives the unit that the heads of a cell say, "" for none and for a text that is no cell.
func (t *columns) cell(c *figureCheck, p *markdown.Prose) string {
	t.around = ""
	if p.Caption {
		t.pending = c.language.ColumnUnit(p.Text)
		return ""
	}
	text := c.page.Source.Text
	at := p.Span(0, len(p.Text)).Start
	line := bytes.LastIndexByte(text[:at], '\n') + 1
	bars := text[line:at]
	column := bytes.Count(bars, []byte("|")) - bytes.Count(bars, []byte(`\|`))
	if !bytes.HasPrefix(bytes.TrimLeft(bars, " \t>"), []byte("|")) {
		column++
	}
	if line != t.line {
		t.line, t.row, t.rowWords = line, "", ""
		below := lineAfter(text, at)
		switch {
		case rulesColumns(below):
			if t.headLine != line {
				t.heads, t.headWords = map[int]string{}, map[int]string{}
				t.caption, t.pending, t.headLine = t.pending, "", line
			}
		case column == 1 && !bytes.Contains(lineOf(text, at), []byte("|")):
			t.heads = nil
		}
	}
	if t.heads == nil {
		return ""
	}
	if rulesColumns(lineAfter(text, at)) {
		t.heads[column], t.headWords[column] = c.language.ColumnUnit(p.Text), p.Text
		return ""
	}
	t.inCell, t.around = true, t.headWords[column]+" "+t.rowWords
	if u := t.heads[column]; u != "" || column > 1 {
		return cmp.Or(u, t.row, t.caption)
	}
	t.row, t.rowWords = c.language.ColumnUnit(p.Text), p.Text
	return ""
}

func lineOf(text []byte, at int) []byte {
	from := bytes.LastIndexByte(text[:at], '\n') + 1
	line, _, _ := bytes.Cut(text[from:], []byte("\n"))
	return line
}

// lineAfter gives the line after the one that a place is in.
func lineAfter(text []byte, at int) []byte {
	_, below, _ := bytes.Cut(text[at:], []byte("\n"))
	line, _, _ := bytes.Cut(below, []byte("\n"))
	return line
}

// rulesColumns says whether a line is the rule between the heads of a table and its cells: "| --- | --: |".
func rulesColumns(line []byte) bool {
	return bytes.Contains(line, []byte("-")) && bytes.Contains(line, []byte("|")) &&
		len(bytes.Trim(line, " \t\r>|:-")) == 0
}

// cell reports a number in a table whose unit is in a head of its column or row.
func (c *figureCheck) cell(p *markdown.Prose) {
	unit := c.table.cell(c, p)
	if unit == "" || !strings.ContainsAny(p.Text, "0123456789") || strings.Contains(p.Text, markdown.Stand) ||
		len(c.language.Find(p.Text)) > 0 {
		return
	}
	text := oneLine(p.Text) + " " + unit
	if found := c.language.Find(text); len(found) == 1 && found[0].End == len(text) {
		c.loose(found[0], text[found[0].Start:], c.around(p, 0, len(p.Text)), p.Span(0, len(p.Text)))
	}
}
