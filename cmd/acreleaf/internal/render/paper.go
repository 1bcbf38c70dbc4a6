package render

import (
	"bytes"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// PaperWords is for what takes a page along: on paper, as a text, in a file. All but the first two are of the script.
type PaperWords struct {
	Take     string `yaml:"take"`
	PrintAll string `yaml:"print-all"`

	Copy      string   `yaml:"copy"`
	Save      string   `yaml:"save"`
	Copied    string   `yaml:"copied"`
	NotCopied string   `yaml:"not-copied"`
	NoAnswer  string   `yaml:"no-answer"`
	Saved     Sentence `yaml:"saved" blanks:"name"`
	Columns   string   `yaml:"columns"` // the heads of a table, with commas between
	About     string   `yaml:"about"`   // what the first column has for facts about the table, and the names of these
	Point     string   `yaml:"point"`

	FromExample string   `yaml:"from-example"`
	FromReader  string   `yaml:"from-reader"`
	FromBlock   Sentence `yaml:"from-block" blanks:"name"`

	Code      string   `yaml:"code"`
	CodePage  string   `yaml:"code-page"`
	CodeFull  Sentence `yaml:"code-full" blanks:"address"`
	NoAddress string   `yaml:"no-address"`
}

func (w *PaperWords) scriptWords() map[wire.Word]string {
	return map[wire.Word]string{
		wire.CopyAnswer:   w.Copy,
		wire.SaveTable:    w.Save,
		wire.AnswerCopied: w.Copied,
		wire.NotCopied:    w.NotCopied,
		wire.NoAnswer:     w.NoAnswer,
		wire.TableSaved:   w.Saved.pattern(),
		wire.Columns:      w.Columns,
		wire.About:        w.About,
		wire.Point:        w.Point,
		wire.FromExample:  w.FromExample,
		wire.FromReader:   w.FromReader,
		wire.FromBlock:    w.FromBlock.pattern(),
		wire.Code:         w.Code,
		wire.CodePage:     w.CodePage,
		wire.CodeFull:     w.CodeFull.pattern(),
		wire.NoAddress:    w.NoAddress,
	}
}

// printAll writes the button that prints a page with all that is folded. It has its place before a script can press it.
func (r *Renderer) printAll(w *bytes.Buffer) {
	w.WriteString(`<button type="button"`)
	flag(w, wire.PrintAll)
	w.WriteByte('>')
	text(w, r.words.Paper.PrintAll)
	w.WriteString("</button>\n")
}
