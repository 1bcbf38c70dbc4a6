package render

import (
	"bytes"
	"encoding/json"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// ProgressWords is for what a learner did in a course: what its page is printed with, and what the script writes.
type ProgressWords struct {
	Again    string `yaml:"again"`
	AgainWhy string `yaml:"again-why"`
	Record   string `yaml:"record"`
	Name     string `yaml:"name"`
	NameNote string `yaml:"name-note"`
	Table    string `yaml:"table"`
	Lesson   string `yaml:"lesson"`
	Finished string `yaml:"finished"`
	Right    string `yaml:"right"`
	Code     string `yaml:"code"`
	CodeNote string `yaml:"code-note"`
	Print    string `yaml:"print"`
	Save     string `yaml:"save"`
	Load     string `yaml:"load"`
	Clear    string `yaml:"clear"`
	NotKept  string `yaml:"not-kept"`
	NotRead  string `yaml:"not-readable"`
	Stays    string `yaml:"stays"`
	Where    string `yaml:"where"`
	AllDone  string `yaml:"all-done"`
	Not      string `yaml:"unfinished"`
	Loaded   string `yaml:"loaded"`
	Cleared  string `yaml:"cleared"`
	IsBack   string `yaml:"is-back"`

	Card       Sentence `yaml:"card" blanks:"card,right,all"`
	CardOpen   Sentence `yaml:"card-open" blanks:"card,right,all,open"`
	CardOf     Sentence `yaml:"card-of" blanks:"card"`
	BackToday  Sentence `yaml:"back-today" blanks:"card"`
	BackOn     Sentence `yaml:"back-on" blanks:"date"`
	OpenedOn   Sentence `yaml:"opened-on" blanks:"date"`
	FinishedOn Sentence `yaml:"finished-on" blanks:"date"`
	Begun      Sentence `yaml:"begun" blanks:"count,all"`
	Score      Sentence `yaml:"score" blanks:"right,all"`
	GoOn       Sentence `yaml:"go-on" blanks:"lesson"`
	Due        Sentence `yaml:"due" blanks:"exercise,card"`
	Through    Sentence `yaml:"through" blanks:"count,all"`
	RightOf    Sentence `yaml:"right-of" blanks:"right,all"`
	Saved      Sentence `yaml:"saved" blanks:"name"`
	Large      Sentence `yaml:"large" blanks:"name"`
	Damaged    Sentence `yaml:"damaged" blanks:"name"`
	Newer      Sentence `yaml:"newer" blanks:"name"`
	Other      Sentence `yaml:"other" blanks:"name"`
	Edition    Sentence `yaml:"edition" blanks:"name"`
}

func (w *ProgressWords) scriptWords() map[wire.Word]string {
	return map[wire.Word]string{
		wire.NotKept: w.NotKept, wire.NotReadable: w.NotRead, wire.Stays: w.Stays, wire.Where: w.Where,
		wire.AllDone: w.AllDone, wire.Unfinished: w.Not, wire.Loaded: w.Loaded, wire.RecordClear: w.Cleared,
		wire.RecordIsBack: w.IsBack, wire.OnCard: w.Card.pattern(), wire.OnCardOpen: w.CardOpen.pattern(),
		wire.CardOf: w.CardOf.pattern(), wire.BackToday: w.BackToday.pattern(), wire.BackOn: w.BackOn.pattern(),
		wire.OpenedOn: w.OpenedOn.pattern(), wire.FinishedOn: w.FinishedOn.pattern(), wire.Begun: w.Begun.pattern(),
		wire.Score: w.Score.pattern(), wire.GoOn: w.GoOn.pattern(), wire.Due: w.Due.pattern(),
		wire.Through: w.Through.pattern(), wire.RightOf: w.RightOf.pattern(), wire.Saved: w.Saved.pattern(),
		wire.FileLarge: w.Large.pattern(), wire.FileDamaged: w.Damaged.pattern(), wire.FileNewer: w.Newer.pattern(),
		wire.FileOther: w.Other.pattern(), wire.FileEdition: w.Edition.pattern(),
	}
}

// told writes the line in which the script tells what was kept of a lesson.
func told(w *bytes.Buffer, l *Lesson) {
	w.WriteString(`<p class="told" hidden`)
	attribute(w, wire.Course, l.Course)
	attribute(w, wire.Lesson, l.Name)
	w.WriteString("></p>\n")
}

// again writes what the script fills with the cards that come back today.
func (r *Renderer) again(w *bytes.Buffer) {
	words := &r.words.Progress
	w.WriteString("<section class=\"again\" hidden aria-labelledby=\"course_again\">\n<h2 id=\"course_again\">")
	text(w, words.Again)
	w.WriteString("</h2>\n")
	element(w, "p", "", words.AgainWhy)
	w.WriteString("\n<ul></ul>\n</section>\n")
}

// record writes the learner's record, which the script fills and shows, and the data of the course for it.
func (r *Renderer) record(w *bytes.Buffer, c *Course) {
	if c == nil || len(c.Lessons) == 0 {
		return
	}
	words := &r.words.Progress
	w.WriteString("<section class=\"record\" hidden aria-labelledby=\"course_record\">\n<h2 id=\"course_record\">")
	text(w, words.Record)
	w.WriteString("</h2>\n<p class=\"where\"></p>\n<p class=\"name\"><label for=\"course_name\">")
	text(w, words.Name)
	w.WriteString("</label> <input type=\"text\" id=\"course_name\" autocomplete=\"name\" " +
		"aria-describedby=\"course_name_note\"> <small id=\"course_name_note\">")
	text(w, words.NameNote)
	w.WriteString("</small></p>\n<table><caption>")
	text(w, words.Table)
	w.WriteString("</caption><thead><tr>")
	for _, head := range []string{words.Lesson, words.Finished, words.Right} {
		w.WriteString("<th scope=\"col\">")
		text(w, head)
		w.WriteString("</th>")
	}
	w.WriteString("</tr></thead><tbody></tbody></table>\n<p class=\"sum\"></p>\n<p>")
	text(w, words.Code)
	w.WriteString(" <b class=\"letters\"></b></p>\n")
	element(w, "p", "", words.CodeNote)
	w.WriteString("\n<p class=\"buttons\">")
	for _, button := range [][2]string{
		{"print", words.Print}, {"save", words.Save}, {"load", words.Load}, {"clear", words.Clear},
	} {
		w.WriteString(`<button type="button"`)
		attribute(w, "class", button[0])
		w.WriteByte('>')
		text(w, button[1])
		w.WriteString("</button> ")
	}
	w.WriteString(`<input type="file" hidden accept=".json,application/json"`)
	attribute(w, "aria-label", words.Load)
	w.WriteString("></p>\n<p role=\"status\"></p>\n</section>\n<script type=\"application/json\" id=\"course\">")
	data, err := json.Marshal(c.Syllabus)
	if err != nil {
		panic(err) // names and numbers have a JSON
	}
	w.Write(data) // in which every "<" is written as JSON's own escape
	w.WriteString("</script>\n")
}
