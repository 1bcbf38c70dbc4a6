package rows

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A Job is one calculation and the file whose rows it is worked for.
type Job struct {
	Sheet *sheet.Sheet
	Typed map[string]sheet.Entry // the givens that hold for all rows
	Name  string                 // of the input, for messages
	In    io.Reader
	Out   io.Writer

	Report   func(message.Message) // takes each fault as it is found
	Progress func(rows int)        // is told now and then how many rows came out
}

// A Tally counts what a job did.
type Tally struct {
	Rows   int // that came out
	Faulty int // of these, how many have no answers
	Faults int // in rows, or in the file as a whole
}

// progressEvery is how many rows lie between two calls of Job.Progress.
const progressEvery = 1 << 12

var errLong = errors.New("a row is longer than 1 MB; see that each quotation mark that opens a cell is closed, " +
	"and that the file is a CSV file")

// A work is a job that is under way.
type work struct {
	Job
	Tally
	scanner scanner
	bench   *sheet.Bench
	answers []*sheet.Result
	columns []column
	names   []string        // of the columns
	first   *message.Source // the row that names them
	entries map[string]sheet.Entry
	out     output
	fault   string // of the row: the sentences for its last column
}

// Run works the job. Faults of the file and its rows are reported and counted; the error says why the work broke off.
func (j Job) Run() (Tally, error) {
	w := &work{
		Job: j, scanner: scanner{in: j.In}, bench: sheet.NewBench(j.Sheet), answers: j.Sheet.Answers(),
		entries: map[string]sheet.Entry{}, out: output{lineEnd: "\n"},
	}
	maps.Copy(w.entries, j.Typed)
	if err := w.head(); err != nil || w.Faults > 0 {
		return w.Tally, err
	}
	for {
		if err := w.scanner.next(); err == io.EOF {
			break
		} else if err != nil {
			// What is worked is kept, and the error of the reader counts for more than one of the writer.
			_ = w.out.flush(w.Out)
			return w.Tally, w.readError(err)
		}
		if err := w.row(); err != nil {
			return w.Tally, err
		}
		if w.Rows++; w.Rows%progressEvery == 0 {
			w.Progress(w.Rows)
		}
	}
	if w.Rows == 0 {
		w.Faults++
		w.Report(message.Message{ID: "rows-none", Source: w.first, Span: message.Span{End: len(w.first.Text)},
			Text: "there is no row under this one, which names the columns", Note: "add a row for each block"})
	}
	return w.Tally, w.out.flush(w.Out)
}

// head reads the first row, and writes the first row of the output if there is no fault in it.
func (w *work) head() error {
	if text, note := w.start(); text != "" {
		w.report(message.Span{}, "file-unfit", text, note)
		return nil
	}
	if err := w.scanner.next(); err == io.EOF {
		w.report(message.Span{}, "file-empty", "there is nothing in this file",
			"begin it with a row that names the columns, such as "+w.firstRow())
		return nil
	} else if err != nil {
		return w.readError(err)
	}
	w.first = w.source()
	w.header()
	if w.Faults > 0 {
		return nil
	}
	w.writeHeader()
	return w.out.endLine(w.Out)
}

// firstRow is a first row that would do.
func (w *work) firstRow() string {
	names := []string{"block"}
	for _, g := range w.Sheet.Givens {
		if _, typed := w.Typed[g.Name]; !typed && !g.MayBeLeftOut() {
			names = append(names, heading(g))
		}
	}
	return strings.Join(names, ",")
}

// report tells one fault of the row that was read last.
func (w *work) report(span message.Span, id, text, note string) {
	w.Faults++
	w.Report(message.Message{ID: id, Source: w.source(), Span: span, Text: text, Note: note})
}

// source is the row that was read last, for messages. Its text stays when the next one is read.
func (w *work) source() *message.Source {
	return &message.Source{Name: w.Name, Text: bytes.Clone(w.scanner.row), Above: w.scanner.above}
}

// readError says how far the reading came.
func (w *work) readError(err error) error {
	line := w.scanner.above + 1
	if errors.Is(err, errLong) {
		return fmt.Errorf("%s, line %d: %w", w.Name, line, err)
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err // the sentence has the name already
	}
	return fmt.Errorf("%s could not be read from line %d on: %w", w.Name, line, err)
}
