package render

import "bytes"

// A ReferenceTable is a table that calculations take their figures from: a row for each thing.
type ReferenceTable struct {
	Index   int
	Table   string   // its name: "material"
	Caption string   // the author's own; "" for the table's
	Columns []string // by name, the one that names the row first
	Rows    []ReferenceRow
}

// A ReferenceRow is what is known of one thing.
type ReferenceRow struct {
	Name  string // "UAN-32"
	Cells []ReferenceCell
}

// A ReferenceCell is a few short parts, with the numbers of the sources that they rest on.
type ReferenceCell struct {
	Parts   []ReferencePart
	Sources []int
}

// A ReferencePart is a text with a signal word before it, or in a sentence of the interface.
type ReferencePart struct {
	Signal string // "DANGER"; "" for none
	Words  ReferenceWord
	Text   string
}

// ReferenceWord is the sentence that the text of a part is in.
type ReferenceWord uint8

// The sentences. Plain is the text alone.
const (
	Plain ReferenceWord = iota
	Nitrate
	Ammonium
	Urea
	OnLabel
	Dry
	OnTicket
	LowersPH
	RaisesPH
	NothingListed
	referenceWords
)

// ReferenceWords is for the tables of the calculations.
type ReferenceWords struct {
	Material string      `yaml:"material"`
	Columns  ColumnWords `yaml:"columns"`
	Nitrate  Sentence    `yaml:"nitrate" blanks:"share"`
	Ammonium Sentence    `yaml:"ammonium" blanks:"share"`
	Urea     Sentence    `yaml:"urea" blanks:"share"`
	OnLabel  string      `yaml:"on-label"`
	Dry      string      `yaml:"dry"`
	OnTicket string      `yaml:"on-ticket"`
	Lowers   Sentence    `yaml:"lowers" blanks:"lime"`
	Raises   Sentence    `yaml:"raises" blanks:"lime"`
	None     string      `yaml:"none"`
	Lime     string      `yaml:"lime"`
	Unlisted string      `yaml:"unlisted"`
}

// ColumnWords are the heads of the columns of the tables.
type ColumnWords struct {
	Grade    string `yaml:"grade"`
	Name     string `yaml:"name"`
	Nitrogen string `yaml:"nitrogen"`
	Forms    string `yaml:"forms"`
	Weight   string `yaml:"weight"`
	Lime     string `yaml:"lime"`
	Apart    string `yaml:"apart"`
	Note     string `yaml:"note"`
}

// caption is what a table is called where its author does not say.
func (w *ReferenceWords) caption(table string) string {
	return map[string]string{"material": w.Material}[table]
}

// head is the head of a column.
func (w *ReferenceWords) head(column string) string {
	return map[string]string{
		"grade": w.Columns.Grade, "name": w.Columns.Name, "nitrogen": w.Columns.Nitrogen, "forms": w.Columns.Forms,
		"weight": w.Columns.Weight, "lime": w.Columns.Lime, "apart": w.Columns.Apart, "note": w.Columns.Note,
	}[column]
}

// legend is what a column needs said below the table; "" for most.
func (w *ReferenceWords) legend(column string) string {
	return map[string]string{"lime": w.Lime, "apart": w.Unlisted}[column]
}

// sentence is the sentence of a part, and text the words that have no blank.
func (w *ReferenceWords) sentence(words ReferenceWord) (s *Sentence, text string) {
	return [referenceWords]*Sentence{
			Nitrate: &w.Nitrate, Ammonium: &w.Ammonium, Urea: &w.Urea, LowersPH: &w.Lowers, RaisesPH: &w.Raises,
		}[words], [referenceWords]string{
			OnLabel: w.OnLabel, Dry: w.Dry, OnTicket: w.OnTicket, NothingListed: w.None,
		}[words]
}

// ReferenceTable writes a table that is wide on a wide screen and on paper. On a narrow screen the style makes a card
// of each row, with the heads in it, which a screen reader has from the table.
func (r *Renderer) ReferenceTable(w *bytes.Buffer, t *ReferenceTable) {
	words := &r.words.Reference
	caption := t.Caption
	if caption == "" {
		caption = words.caption(t.Table)
	}
	w.WriteString(`<figure class="reckoner reference"><figcaption`)
	referenceID(w, "id", t)
	w.WriteByte('>')
	text(w, caption)
	w.WriteString("</figcaption>\n<table")
	referenceID(w, "aria-labelledby", t)
	w.WriteString(">\n<thead><tr>")
	for _, column := range t.Columns {
		w.WriteString(`<th scope="col">`)
		text(w, words.head(column))
		w.WriteString("</th>")
	}
	w.WriteString("</tr></thead>\n<tbody>\n")
	for i := range t.Rows {
		r.referenceRow(w, t, &t.Rows[i])
	}
	w.WriteString("</tbody>\n</table>\n")
	for _, column := range t.Columns {
		element(w, "p", "", words.legend(column))
	}
	w.WriteString("</figure>\n")
}

func referenceID(w *bytes.Buffer, name string, t *ReferenceTable) {
	w.WriteByte(' ')
	w.WriteString(name)
	w.WriteString(`="reference-`)
	integer(w, t.Index)
	w.WriteByte('"')
}

func (r *Renderer) referenceRow(w *bytes.Buffer, t *ReferenceTable, row *ReferenceRow) {
	w.WriteString(`<tr><th scope="row">`)
	text(w, row.Name)
	w.WriteString("</th>")
	for i := range row.Cells {
		w.WriteString(`<td><b aria-hidden="true">`)
		text(w, r.words.Reference.head(t.Columns[i+1]))
		w.WriteString("</b><span>")
		for j := range row.Cells[i].Parts {
			if j > 0 {
				w.WriteString("; ")
			}
			r.referencePart(w, &row.Cells[i].Parts[j])
		}
		sourceNumbers(w, row.Cells[i].Sources)
		w.WriteString("</span></td>")
	}
	w.WriteString("</tr>\n")
}

func (r *Renderer) referencePart(w *bytes.Buffer, part *ReferencePart) {
	if part.Signal != "" {
		element(w, "strong", "", r.words.Signals.word(part.Signal))
		w.WriteByte(' ')
	}
	sentence, words := r.words.Reference.sentence(part.Words)
	switch {
	case sentence != nil:
		sentence.write(w, func(string) { text(w, part.Text) })
	case words != "":
		text(w, words)
	default:
		text(w, part.Text)
	}
}
