package rows

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// enough is how many bytes are written at once.
const enough = 1 << 16

// An output gathers lines.
type output struct {
	line    []byte // what is not written yet; it ends with the line that is being made
	lineEnd string
}

// endLine ends the line that is being made.
func (o *output) endLine(to io.Writer) error {
	o.line = append(o.line, o.lineEnd...)
	if len(o.line) < enough {
		return nil
	}
	return o.flush(to)
}

// flush writes what is not written yet.
func (o *output) flush(to io.Writer) error {
	_, err := to.Write(o.line)
	o.line = o.line[:0]
	if path := (*fs.PathError)(nil); errors.As(err, &path) {
		err = path.Err
	}
	if err != nil {
		return fmt.Errorf("the rows could not be written: %w", err)
	}
	return nil
}

// writeHeader names the columns of the output. A name of ours that the input has already gets a number.
func (w *work) writeHeader() {
	w.writeCells()
	taken := slices.Clone(w.names)
	for _, name := range w.added() {
		unique := name
		for n := 2; slices.Contains(taken, unique); n++ {
			unique = fmt.Sprintf("%s %d", name, n)
		}
		taken = append(taken, unique)
		w.writeText(unique)
	}
}

// added are the columns that the output has behind those of the input.
func (w *work) added() []string {
	var names []string
	for _, r := range w.answers {
		name := r.Name
		if !r.Date && r.Unit.String() != "" {
			name += " (" + r.Unit.String() + ")"
		}
		names = append(names, name)
	}
	return append(names, "notes", "cautions", "error")
}

// writeCells writes the cells of the row as they came, one for each column.
func (w *work) writeCells() {
	s := &w.scanner
	for i := range w.columns {
		if i > 0 {
			w.out.line = append(w.out.line, s.separator)
		}
		if i >= len(s.cells) {
			continue
		}
		c := s.cells[i]
		text := s.row[c.start:c.end]
		if c.quoted && !(s.broken && i == len(s.cells)-1) {
			w.out.line = append(w.out.line, bytes.ToValidUTF8(text, replacement)...)
		} else {
			w.out.line = appendText(w.out.line, string(bytes.ToValidUTF8(text, replacement)), s.separator)
		}
	}
}

// replacement takes the place of what is not UTF-8, so that the output is.
var replacement = []byte("\uFFFD")

// writeOutcome writes what was worked out for a row.
func (w *work) writeOutcome(o sheet.Outcome) {
	for _, r := range w.answers {
		w.out.line = append(w.out.line, w.scanner.separator)
		if o.There(r.Name) {
			w.out.line = appendRange(w.out.line, o.Range(r.Name), r.Date)
		}
	}
	var notes, cautions []string
	for _, g := range w.Sheet.Givens {
		if sentence := g.Treated(w.entries[g.Name]); sentence != "" {
			notes = append(notes, sentence)
		}
	}
	for _, said := range o.Said() {
		if said.Signal == sheet.Note {
			notes = append(notes, said.Text)
		} else {
			cautions = append(cautions, said.Signal.String()+": "+said.Text)
		}
	}
	w.writeText(strings.Join(notes, " "))
	w.writeText(strings.Join(cautions, " "))
	w.writeText("")
}

// writeNothing leaves the answers of a row empty, and says why if it has a fault.
func (w *work) writeNothing() {
	for range len(w.answers) + 2 { // and no notes and no cautions
		w.writeText("")
	}
	w.writeText(w.fault)
}

// writeText writes one more cell.
func (w *work) writeText(text string) {
	w.out.line = append(w.out.line, w.scanner.separator)
	w.out.line = appendText(w.out.line, text, w.scanner.separator)
}

// appendText writes the text of a cell, in quotation marks if it needs them.
func appendText(to []byte, text string, separator byte) []byte {
	if !strings.ContainsAny(text, "\"\r\n") && strings.IndexByte(text, separator) < 0 {
		return append(to, text...)
	}
	to = append(to, '"')
	to = append(to, strings.ReplaceAll(text, `"`, `""`)...)
	return append(to, '"')
}

// appendRange writes an answer with all its digits, without its unit.
func appendRange(to []byte, r unit.Range, date bool) []byte {
	to = appendNumber(to, r.Low, date)
	if r.Low == r.High {
		return to
	}
	return appendNumber(append(to, " to "...), r.High, date)
}

// appendNumber writes a number as JSON has it: in full, but with an exponent if it is very large or very small.
func appendNumber(to []byte, value float64, date bool) []byte {
	if date {
		return append(to, sheet.ISODate(value)...)
	}
	form := byte('f')
	if size := math.Abs(value); size != 0 && (size < 1e-6 || size >= 1e21) {
		form = 'e'
	}
	return strconv.AppendFloat(to, value, form, -1, 64)
}
