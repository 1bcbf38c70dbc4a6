package rows

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A column is one column of the input.
type column struct {
	given *sheet.Given // nil: it is carried through
	unit  string       // of cells that state none; "" if the first row states none either
	read  map[string]reading
}

// A reading is what a cell of a given says, or why it says nothing.
type reading struct {
	entry sheet.Entry
	err   error
}

// header reads the first row: which column is which given. It reports what is wrong with it.
func (w *work) header() {
	if at, text, note := badByte(w.scanner.row); at >= 0 {
		w.report(message.Span{Start: at, End: at + 1}, "not-utf-8", text, note)
		return
	}
	if w.scanner.broken {
		w.brokenQuote()
		return
	}
	spans := map[*sheet.Given]message.Span{}
	var unknown []int
	for i, c := range w.scanner.cells {
		span := message.Span{Start: c.start, End: c.end}
		col := column{read: map[string]reading{}}
		name, unitText := cutUnit(w.scanner.text(c))
		w.names = append(w.names, strings.TrimSpace(w.scanner.text(c)))
		col.given = w.find(name)
		w.columns = append(w.columns, col)
		if col.given == nil {
			unknown = append(unknown, i)
			continue
		}
		if _, twice := spans[col.given]; twice {
			w.report(span, "column-twice", fmt.Sprintf("there are two columns for %s", col.given.Name), "leave one out")
		}
		if _, typed := w.Typed[col.given.Name]; typed {
			w.report(span, "column-typed", col.given.Name+" has a column here, and is given for all rows too",
				"leave one of the two out")
		}
		spans[col.given] = span
		w.columns[i].unit = unitText
		w.checkUnit(span, col.given, unitText)
	}
	w.findMissing(spans, unknown)
}

// cutUnit parts "nitrate (ppm NO3-N)" into its name and its unit.
func cutUnit(header string) (name, unitText string) {
	header = strings.TrimSpace(header)
	if inner, closed := strings.CutSuffix(header, ")"); closed {
		if at := strings.Index(inner, "("); at > 0 {
			return strings.TrimSpace(header[:at]), strings.TrimSpace(inner[at+1:])
		}
	}
	return header, ""
}

var folding = strings.NewReplacer("_", "-", " ", "-")

// find is the given that a column is named after; nil if there is none.
func (w *work) find(name string) *sheet.Given {
	return w.Sheet.FindGiven(folding.Replace(strings.ToLower(name)))
}

// checkUnit says whether a column may have such a unit.
func (w *work) checkUnit(span message.Span, g *sheet.Given, unitText string) {
	if unitText == "" {
		return
	}
	if g.Date || len(g.Choices) > 0 {
		w.report(span, "column-unit", fmt.Sprintf("%s is not a number, so its column has no unit", g.Name), "write "+g.Name)
		return
	}
	_, err := unit.Parse(unitText)
	if err == nil {
		// Only the kind of the unit counts here: 1 may be more than the calculation takes.
		_, err = g.Read("1 " + unitText)
		if mismatch := (*unit.Mismatch)(nil); !errors.As(err, &mismatch) {
			return
		}
	}
	text, _ := unit.Advice(err)
	w.report(span, "column-unit", g.Name+": "+text, "write for example "+heading(g))
}

// findMissing looks for givens that nobody gave, and for columns that may be meant for them.
func (w *work) findMissing(spans map[*sheet.Given]message.Span, unknown []int) {
	absent := map[string]*sheet.Given{}
	for _, g := range w.Sheet.Givens {
		_, there := spans[g]
		if _, typed := w.Typed[g.Name]; !there && !typed {
			absent[g.Name] = g
		}
	}
	meant := map[string]bool{}
	for _, i := range unknown {
		name, _ := cutUnit(w.names[i])
		near, ok := message.Nearest(name, slices.Collect(maps.Keys(absent)))
		if !ok {
			continue
		}
		meant[near] = true
		c := w.scanner.cells[i]
		w.report(message.Span{Start: c.start, End: c.end}, "column-unknown",
			fmt.Sprintf("%s has no given %q", w.Sheet.Name, name),
			fmt.Sprintf("write %s; if the column is for something else, give it a name less like %s",
				heading(absent[near]), near))
	}
	above := ""
	if len(spans) == 0 {
		above = "take out this row if it is a title, so that the names of the columns come first; else "
	}
	for _, g := range w.Sheet.Givens {
		if absent[g.Name] != nil && !g.MayBeLeftOut() && !meant[g.Name] {
			w.report(message.Span{End: len(w.scanner.row)}, "column-missing", "there is no column for "+g.Name,
				fmt.Sprintf("%sadd a column %s, or give it for all rows: %s='%s'", above, heading(g), g.Name, g.Example()))
			above = ""
		}
	}
}

// heading is the name of the column for a given, with its unit.
func heading(g *sheet.Given) string {
	if g.Date || len(g.Choices) > 0 || g.Unit.String() == "" {
		return g.Name
	}
	return fmt.Sprintf("%s (%s)", g.Name, g.Unit)
}
