package worksheet

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// A Reference is a block that prints a table which calculations take their figures from.
type Reference struct {
	Table   calc.Reference
	Columns []string // those to print, after the one that names the row
	Title   string   // the author's own; "" for the table's
}

// The keys of a reference.
const (
	keyTable = "table"
	keyShow  = "show"
)

var referenceKeys = []string{keyTable, keyShow, keyTitle}

// ReferenceKeys lists the keys of a reference.
func ReferenceKeys() []string { return slices.Clone(referenceKeys) }

// Reference gives what a block was bound to. It is nil for a block with a fault, and for any that is no reference.
func (p *Page) Reference(block *markdown.Block) *Reference { return p.references[block.Index] }

// addReference binds a block that prints a table.
func (b *binder) addReference(block *markdown.Block) {
	before, written := len(b.messages), map[string]markdown.Entry{}
	for _, entry := range block.Entries {
		if !slices.Contains(referenceKeys, entry.Key) {
			b.fault(entry.KeySpan, "key-unknown", fmt.Sprintf("a reference has no key %q", entry.Key),
				write("", entry.Key, referenceKeys))
			continue
		}
		written[entry.Key] = entry
	}
	table, ok := b.referenceTable(block, written)
	if !ok {
		return
	}
	columns := table.Columns[1:]
	if show, is := written[keyShow]; is {
		columns = b.shownColumns(table, show)
	}
	if len(b.messages) == before && !block.Unread && len(columns) > 0 {
		b.page.references[block.Index] = &Reference{Table: table, Columns: columns, Title: written[keyTitle].Value}
	}
}

// referenceTable reads which table a reference prints.
func (b *binder) referenceTable(block *markdown.Block, written map[string]markdown.Entry) (calc.Reference, bool) {
	entry, is := written[keyTable]
	table, known := calc.FindReference(entry.Value)
	switch {
	case !is && !block.Unread && len(written) == len(block.Entries):
		b.fault(block.Span, "reference-table", "this reference does not say which table it prints",
			"add a line such as: table: "+calc.ReferenceNames()[0])
	case is && !known && !isEmpty(entry):
		b.fault(entry.ValueSpan, "reference-table", fmt.Sprintf("there is no table %q", entry.Value),
			write("", entry.Value, calc.ReferenceNames()))
	}
	return table, known
}

// shownColumns reads "grade, forms, weight". The column that names the row comes first, wherever it is written.
func (b *binder) shownColumns(table calc.Reference, show markdown.Entry) []string {
	var columns, seen []string
	at := 0
	for _, piece := range strings.Split(show.Value, ",") {
		name := strings.TrimSpace(piece)
		start := at + strings.Index(piece, name)
		at += len(piece) + len(",")
		span := show.Part(start, start+max(1, len(name)))
		switch {
		case isEmpty(show):
		case !slices.Contains(table.Columns, name):
			b.fault(span, "reference-column", fmt.Sprintf("table %s has no column %q", table.Name, name),
				write("", name, table.Columns))
		case slices.Contains(seen, name):
			b.fault(span, "reference-column", fmt.Sprintf("column %s is written twice in this reference", name),
				"take one of the two out")
		case name != table.Columns[0]:
			columns = append(columns, name)
		}
		seen = append(seen, name)
	}
	if len(columns) == 0 && len(seen) == 1 && seen[0] == table.Columns[0] {
		b.fault(show.ValueSpan, "reference-column", "this reference shows nothing but the names of its rows",
			"write one of: "+strings.Join(table.Columns[1:], ", "))
	}
	return columns
}
