package worksheet

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A Definition is a calculation that an author wrote, in a block of a page or in a file of its own.
type Definition struct {
	Name     string
	Language string // that it is written in, such as "es"
	Source   *message.Source
	Span     message.Span // of its name; the start of a file that is named so
	Body     message.Span // its YAML
	Sheet    *sheet.Sheet // nil when it could not be made
}

// Text is what the author wrote.
func (d *Definition) Text() string { return string(d.Source.Text[d.Body.Start:d.Body.End]) }

// The keys of a definition, and of the tables in it.
var (
	definitionKeys = []string{"title", "summary", "givens", "constants", "work", "steps", "answers", "sentence",
		"cases", "notes", "checks"}
	givenKeys    = []string{"label", "example", "range", "hint", "units"}
	constantKeys = []string{"label", "value", "source", "note"}
	resultKeys   = []string{"label", "unit", "also"}
	caseKeys     = []string{"when", "say"}
	checkKeys    = []string{"when", "say", "signal", "hazard"}
)

// DefinitionKeys lists the keys of a calculation, and by the key of a table in it those of each entry there.
func DefinitionKeys() (top []string, tables map[string][]string) {
	return slices.Clone(definitionKeys), map[string][]string{
		"givens": givenKeys, "constants": constantKeys, "answers": resultKeys, "steps": resultKeys, "cases": caseKeys,
		"checks": checkKeys,
	}
}

// Define reads a calculation and makes its sheet. What is wrong with it is reported at its place; a text that is
// missing is reported once.
func Define(d *Definition, sources config.Sources, hazards []config.OwnHazard) message.List {
	t := config.ReadTable(d.Source, d.Body, "a calculation", definitionKeys)
	t.PlaceMissing(d.Span)
	r := &definitionReader{table: t, sources: sources, hazards: hazards, definition: d}
	written := r.read()
	messages := t.Messages()
	if len(t.Keys()) == 0 && len(messages) > 0 {
		return messages // the text is no table, so that nothing more can be said of it
	}
	read := len(messages)
	key := d.Name + "\x00" + d.Language + "\x00" + d.Text()
	for _, c := range written.Checks {
		if c.Hazard != nil {
			key += fmt.Sprintf("\x00%+v", *c.Hazard)
		}
	}
	if known, ok := made.Load(key); ok && read == 0 {
		d.Sheet = known.(*sheet.Sheet)
		return nil
	}
	s, faults := formula.Make(written)
	for _, f := range faults {
		told := func(m message.Message) bool { return m.Span == message.Span(f.Span) }
		// a text that is missing, or is no text, has its message; the formula finds nothing in its place
		atName := message.Span(f.Span) == d.Span && f.ID != "calculation-name"
		if slices.ContainsFunc(messages[:read], told) || read > 0 && atName {
			continue
		}
		messages = append(messages, message.Message{
			ID: f.ID, Source: d.Source, Span: message.Span(f.Span), Text: f.Text, Note: f.Note,
		})
	}
	if !message.HasFault(messages) {
		d.Sheet = s
		made.Store(key, s)
	}
	return messages
}

// made holds the sheets that were made, by all that they were made from. The desk makes a site at every save, and what
// other packages remember of a sheet is remembered once.
var made sync.Map

// A definitionReader reads one definition.
type definitionReader struct {
	table      *config.Table
	sources    config.Sources
	hazards    []config.OwnHazard
	definition *Definition
}

func (r *definitionReader) read() *formula.Definition {
	t := r.table
	d := &formula.Definition{
		Name:     formula.Text{Text: r.definition.Name, Span: formula.Span(r.definition.Span)},
		Language: r.definition.Language,
		Title:    t.Need("title", "write what it works out: \"title: Spray on an acre\""),
		Summary:  t.Need("summary", "write what it does in a sentence: \"summary: Turns nozzle flow into gallons an acre.\""),
		Work:     r.texts(t.List("work")),
		Notes:    r.texts(t.List("notes")),

		Sentence: r.text(t, "sentence"),
	}
	r.each("givens", "a given", givenKeys, func(name formula.Text, g *config.Table) {
		r.checkGiven(name)
		d.Givens = append(d.Givens, formula.Given{
			Name: name, Label: needLabel(g), Hint: g.Text("hint"),
			Example: r.need(g, "example", "write an ordinary value with its unit: \"example: 12 in\""),
			Range:   r.need(g, "range", "write the least and the most that is accepted: \"range: 0 to 72\""),
			Units:   r.texts(g.List("units")),
		})
	})
	r.each("constants", "a constant", constantKeys, func(name formula.Text, c *config.Table) {
		d.Constants = append(d.Constants, r.constant(name, c))
	})
	r.each("answers", "an answer", resultKeys, func(name formula.Text, a *config.Table) {
		d.Answers = append(d.Answers, formula.Result{Name: name, Label: needLabel(a), Also: r.text(a, "also"),
			Unit: r.need(a, "unit", "write its unit: \"unit: gal/ac\", or \"unit: number\" for a plain number")})
	})
	r.each("steps", "a step", resultKeys, func(name formula.Text, s *config.Table) {
		d.Steps = append(d.Steps, formula.Result{Name: name, Label: s.Text("label"), Also: r.text(s, "also"),
			Unit: r.text(s, "unit")})
	})
	r.each("cases", "a case", caseKeys, func(_ formula.Text, c *config.Table) {
		d.Cases = append(d.Cases, formula.Check{
			When: r.need(c, "when", `write a question, such as: when: rate < "1 gal/ac"`),
			Say:  r.need(c, "say", "write what the reader is told: \"say: One tank is enough.\""),
		})
	})
	r.each("checks", "a check", checkKeys, func(_ formula.Text, c *config.Table) {
		d.Checks = append(d.Checks, formula.Check{
			When:   r.need(c, "when", `write a question, such as: when: speed > "6 mi/h"`),
			Say:    r.need(c, "say", "write what the reader is told: \"say: Slow down.\""),
			Signal: signal(c), Hazard: r.hazard(c),
		})
	})
	return d
}

// each reads the tables under a key, by their names.
func (r *definitionReader) each(key, what string, known []string, read func(formula.Text, *config.Table)) {
	if !slices.Contains(r.table.Keys(), key) {
		return
	}
	t := r.table.Table(key, "the list of "+key, nil)
	if t == nil {
		return
	}
	for _, name := range t.Keys() {
		if inside := t.Table(name, what, known); inside != nil {
			read(formula.Text{Text: name, Span: formula.Span(t.KeySpan(name))}, inside)
		}
	}
}

// checkGiven refuses a name that a worksheet or a reckoner has another use for.
func (r *definitionReader) checkGiven(name formula.Text) {
	if taken := append([]string{keyCalculation, keyTitle}, tableKeys...); slices.Contains(taken, name.Text) {
		r.fault(message.Span(name.Span), "calculation-name", "“"+name.Text+"” is a word of worksheets and reckoners",
			"choose another name, such as block-"+name.Text)
	}
}

func (r *definitionReader) fault(span message.Span, id, text, note string) {
	r.table.FaultAt(span, id, text, note)
}

func (r *definitionReader) constant(name formula.Text, c *config.Table) formula.Constant {
	id := c.Need("source", "write the id of a source in sources.yaml; for what the trade does: "+
		"\"source: common-practice\"; if nobody wrote it down: \"source: memory\"")
	if _, known := r.sources[id]; !known && id != "" {
		r.fault(c.Span("source"), "calculation-source", "there is no source “"+id+"” in sources.yaml", r.nearest(id))
	}
	return formula.Constant{
		Name: name, Label: needLabel(c), Note: c.Text("note"), Source: id,
		Value: r.need(c, "value", "write a number and its unit: \"value: 8.34 lb water/gal\""),
	}
}

// nearest says what to write for a source that is not there.
func (r *definitionReader) nearest(id string) string {
	if near, ok := message.Nearest(id, r.sources.IDs()); ok {
		return "write " + near
	}
	return "add it to that file and write its id here; for what the trade does write \"source: common-practice\", and " +
		"if nobody wrote it down \"source: memory\""
}

// The signals of a check, from the mildest to the one that withholds the answers.
var signalNames = []string{"note", "notice", "caution", "warning", "danger", "refuse"}

// signal reads how strongly a check speaks; a caution when it does not say.
func signal(c *config.Table) sheet.Signal {
	word := c.Text("signal")
	if word == "" {
		return sheet.Caution
	}
	i := slices.Index(signalNames, strings.ToLower(word))
	if i < 0 {
		c.Fault("signal", "calculation-signal", "“"+word+"” is not a signal",
			"write one of: "+strings.Join(signalNames, ", "))
		return sheet.Note
	}
	return sheet.Signal(i)
}

func needLabel(t *config.Table) string {
	return t.Need("label", "write what the reader sees beside the number: \"label: Depth of water\"")
}

// need is a text that must be there, with its place.
func (r *definitionReader) need(t *config.Table, key, note string) formula.Text {
	return r.placed(t.Need(key, note), t.Span(key))
}

func (r *definitionReader) text(t *config.Table, key string) formula.Text {
	return r.placed(t.Text(key), t.Span(key))
}

func (r *definitionReader) texts(values []config.Value) []formula.Text {
	var list []formula.Text
	for _, v := range values {
		list = append(list, r.placed(v.Text, v.Span))
	}
	return list
}

// placed is a text with its place. Quotes around it and wide gaps in it do not keep a fault from its letter.
func (r *definitionReader) placed(text string, span message.Span) formula.Text {
	if text == "" {
		return formula.Text{Span: formula.Span(span)} // white space alone is nothing, too
	}
	written := string(r.definition.Source.Text[span.Start:span.End])
	if len(written) > 1 && (written[0] == '"' || written[0] == '\'') && written[len(written)-1] == written[0] {
		written, span = written[1:len(written)-1], message.Span{Start: span.Start + 1, End: span.End - 1}
	}
	gap := func(c rune) bool { return c == ' ' || c == '\t' }
	if strings.Join(strings.FieldsFunc(written, gap), " ") == text {
		text = written
	}
	return formula.Text{Text: text, Span: formula.Span(span)}
}

// SignalNames lists how strongly a check may speak.
func SignalNames() []string { return slices.Clone(signalNames) }
