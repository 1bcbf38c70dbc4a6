package rows

import (
	"errors"
	"fmt"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/message"
)

// row works the row that was read last, and writes it. The error is that of the writer.
func (w *work) row() error {
	w.fault = ""
	switch blank := w.blank(); {
	case blank:
		w.writeCells()
		w.writeNothing()
	case w.wellFormed() && w.readGivens():
		outcome, err := w.bench.Work(w.entries)
		if err != nil {
			w.refuse(err)
			break
		}
		w.writeCells()
		w.writeOutcome(outcome)
	}
	if w.fault != "" {
		w.Faulty++
		w.writeCells()
		w.writeNothing()
	}
	return w.out.endLine(w.Out)
}

// blank says whether the row is nothing but separators, as spreadsheets write rows that were emptied.
func (w *work) blank() bool {
	for _, c := range w.scanner.cells {
		if c.start != c.end {
			return false
		}
	}
	return true
}

// wellFormed says whether the cells of the row are those of the columns.
func (w *work) wellFormed() bool {
	s := &w.scanner
	if at, text, note := badByte(s.row); at >= 0 {
		w.rowFault(message.Span{Start: at, End: at + 1}, "not-utf-8", text, note)
		return false
	}
	if s.broken {
		w.brokenQuote()
		return false
	}
	have, want := len(s.cells), len(w.columns)
	span := message.Span{Start: s.cells[have-1].end, End: s.cells[have-1].end}
	switch {
	case have < want:
		w.rowFault(span, "row-ragged", fmt.Sprintf("this row has %s, and the first row %d", cells(have), want),
			"write the cells that are missing, or leave them empty between their separators")
	case have > want:
		span.Start = s.cells[want].start
		w.rowFault(span, "row-ragged", fmt.Sprintf("this row has %s, and the first row %d", cells(have), want),
			fmt.Sprintf("put a cell that has a %q in it in quotation marks", string(s.separator)))
	}
	return have == want
}

func cells(n int) string {
	if n == 1 {
		return "1 cell"
	}
	return fmt.Sprintf("%d cells", n)
}

// brokenQuote reports the last cell of a row.
func (w *work) brokenQuote() {
	c := w.scanner.cells[len(w.scanner.cells)-1]
	w.rowFault(message.Span{Start: c.start, End: c.end}, "cell-quoted",
		"this cell begins with a quotation mark, and does not end with one",
		`end it with one, and write two for one that is part of the text: "12"" pipe"`)
}

// readGivens reads the cells that are givens. It says whether there is a number, a date or an option for each.
func (w *work) readGivens() bool {
	for i := range w.columns {
		c := &w.columns[i]
		if c.given == nil {
			continue
		}
		at := w.scanner.cells[i]
		entry, there, err := c.entry(w.scanner.text(at), w.scanner.separator)
		switch {
		case err != nil:
			text, note := unit.Advice(err)
			w.rowFault(message.Span{Start: at.start, End: at.end}, "cell-unfit", c.given.Name+": "+text, note)
		case there:
			w.entries[c.given.Name] = entry
		case c.given.MayBeLeftOut():
			delete(w.entries, c.given.Name)
		default:
			w.rowFault(message.Span{Start: at.start, End: at.end}, "cell-empty", c.given.Name+" is empty in this row",
				"write for example "+c.given.Example())
		}
	}
	return w.fault == ""
}

// refuse reports what a calculation says of the givens of a row together.
func (w *work) refuse(err error) {
	text, note := err.Error(), ""
	if refused := (*sheet.Refused)(nil); !errors.As(err, &refused) {
		text, note = unit.Advice(err)
	}
	w.rowFault(message.Span{End: w.scanner.cells[len(w.scanner.cells)-1].end}, "row-refused",
		"this row has no answer: "+text, note)
}

// rowFault reports a fault of the row, and keeps it for the last column.
func (w *work) rowFault(span message.Span, id, text, note string) {
	w.report(span, id, text, note)
	sentence := text
	if note != "" {
		sentence += "; " + note
	}
	if !strings.ContainsAny(sentence[len(sentence)-1:], ".?") {
		sentence += "."
	}
	if w.fault != "" {
		w.fault += " "
	}
	w.fault += sentence
}
