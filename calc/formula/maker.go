package formula

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// Make makes the sheet of a definition, or says everything that is wrong with it. There is a sheet if and only if there
// is no fault.
func Make(d *Definition) (*sheet.Sheet, []Fault) {
	m := &maker{definition: d, parts: map[string]*part{}, figures: map[string]string{}, figureNames: map[string]bool{}}
	s, err := sheet.Build(d.Name.Text, func(s *sheet.Sheet) {
		s.Written = d.Language
		m.build(s)
	})
	if err == nil {
		m.unlist(s)
	}
	if err != nil && len(m.faults) == 0 {
		m.fault("calculation-unmade", d.Name.Span, "this calculation cannot be made: "+err.Error(),
			"give each price, weight and share what it is of, as in $/ton product, and write long lines in smaller steps")
	}
	slices.SortStableFunc(m.faults, func(a, b Fault) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	if len(m.faults) > 0 {
		return nil, m.faults
	}
	return s, nil
}

// A maker is one run of Make.
type maker struct {
	definition *Definition
	s          *sheet.Sheet
	parts      map[string]*part
	order      []string // the names, in the order of the text
	lines      []line
	line       int // the line of work that is read, from 1; 0 for none
	refusals   []refusal
	faults     []Fault
	page       *pageScope // of a condition; nil in a calculation

	figures     map[string]string // names of figures without one, by their text
	figureNames map[string]bool
}

// A part is a named quantity: a given, a constant, or what a line of work gives.
type part struct {
	operand
	name string
	span Span
	line int  // of the work, from 1; 0 for a given or a constant
	made bool // its term is there
	used bool
}

// A line is a line of work, parted.
type line struct {
	part    *part // nil when it could not be parted
	formula Text
	unit    *unit.Unit // as its author declared it
	result  *Result    // its label and unit; nil for a step that has none
	answer  bool
}

// A refusal withholds the answers where the arithmetic has none.
type refusal struct {
	when sheet.Term
	text string
}

func (m *maker) fault(id string, at Span, text, note string) {
	m.faults = append(m.faults, Fault{ID: id, Span: at, Text: text, Note: note})
}

// part finds a named quantity, or nil.
func (m *maker) part(name string) *part { return m.parts[name] }

func (m *maker) build(s *sheet.Sheet) {
	m.s = s
	d := m.definition
	if m.tooLong() {
		return
	}
	s.Head(d.Title, d.Summary)
	if !nameText.MatchString(d.Name.Text) {
		m.fault("calculation-name", d.Name.Span, fmt.Sprintf("“%s” cannot be the name of a calculation", short(d.Name.Text)),
			nameRule)
	}
	for _, g := range d.Givens {
		m.declare(g.Name, "given", 0)
	}
	for _, c := range d.Constants {
		m.declare(c.Name, "constant", 0)
	}
	m.partLines()
	m.matchResults()
	for i := range d.Givens {
		m.given(&d.Givens[i])
	}
	for i := range d.Constants {
		m.constant(&d.Constants[i])
	}
	for i := range m.lines {
		m.work(&m.lines[i], i+1)
	}
	m.line = 0
	m.remarks()
	if len(m.faults) == 0 {
		m.checkUsed()
	}
}

// partLimit is how many parts of a kind a calculation may have. No reader follows as many.
const partLimit = 100

// tooLong refuses a calculation that would take time to read, and that nobody could.
func (m *maker) tooLong() bool {
	d := m.definition
	var long []Span
	for _, list := range [][]Span{
		spans(d.Givens, func(g Given) Span { return g.Name.Span }),
		spans(d.Constants, func(c Constant) Span { return c.Name.Span }),
		spans(d.Work, func(t Text) Span { return t.Span }),
		spans(append(slices.Clip(d.Steps), d.Answers...), func(r Result) Span { return r.Name.Span }),
		spans(d.Notes, func(t Text) Span { return t.Span }),
		spans(d.Checks, func(c Check) Span { return c.When.Span }),
	} {
		if len(list) > partLimit {
			long = append(long, list[partLimit])
		}
	}
	for _, at := range long {
		m.fault("calculation-long", at, fmt.Sprintf("this calculation has more than %d of these", partLimit),
			"make two calculations of it; a worksheet can take what another gives")
	}
	return len(long) > 0
}

func spans[T any](list []T, span func(T) Span) []Span {
	var places []Span
	for _, part := range list {
		places = append(places, span(part))
	}
	return places
}

var (
	nameText = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
	wordText = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
)

const nameRule = "use small letters a to z and digits, with a letter first, and hyphens between words"

// declare brings a name in. Nil if it cannot be one.
func (m *maker) declare(name Text, what string, line int) *part {
	first := m.parts[name.Text]
	switch {
	case !nameText.MatchString(name.Text):
		m.fault("calculation-name", name.Span, fmt.Sprintf("“%s” cannot be the name of a %s", short(name.Text), what),
			nameRule)
		return nil
	case functions[underscored(name.Text)].example != "":
		m.fault("calculation-name", name.Span, fmt.Sprintf("“%s” is a function of the arithmetic", name.Text),
			"choose another name, such as tank-"+name.Text)
		return nil
	case first != nil:
		m.fault("calculation-name-twice", name.Span,
			fmt.Sprintf("there is a quantity “%s” in this calculation already", name.Text),
			"give one of the two another name")
		return nil
	}
	p := &part{name: name.Text, span: name.Span, line: line}
	m.parts[name.Text] = p
	m.order = append(m.order, name.Text)
	return p
}

// partLines parts the lines of work into names and formulas.
func (m *maker) partLines() {
	for i, text := range m.definition.Work {
		at := equals(text.Text)
		if at < 0 {
			m.fault("work-line", text.Span, "this line of work gives nothing a name",
				"begin it with a name and =, such as: rate = flow / area")
			m.lines = append(m.lines, line{})
			continue
		}
		word := strings.TrimSpace(text.Text[:at])
		start := strings.Index(text.Text, word)
		name := Text{hyphened(word), text.part(start, start+len(word))}
		rest := text.Text[at+1:]
		formula := Text{strings.TrimLeft(rest, " \t"), Span{}}
		formula.Span = text.part(len(text.Text)-len(formula.Text), len(text.Text))
		if formula.Text == "" {
			formula.Span = text.part(at, at+1)
		}
		if !wordText.MatchString(word) {
			m.fault("calculation-name", name.Span, fmt.Sprintf("“%s” cannot be the name of a line of work", short(word)),
				m.wordRule(word))
			m.lines = append(m.lines, line{})
			continue
		}
		m.lines = append(m.lines, line{part: m.declare(name, "line of work", i+1), formula: formula})
	}
	if len(m.definition.Work) == 0 {
		m.fault("work-line", m.definition.Name.Span, "this calculation has no work",
			"add lines such as:\nwork:\n  - rate = flow / area")
	}
}

func (m *maker) wordRule(word string) string {
	if joined := underscored(word); wordText.MatchString(joined) {
		return "write " + joined + ": in the work a hyphen is a minus"
	}
	return "use small letters a to z and digits, with a letter first, and _ between words"
}

// equals finds the sign that gives a line its name; -1 for none.
func equals(text string) int {
	at := strings.IndexByte(text, '=')
	if at < 1 || strings.ContainsRune("<>!", rune(text[at-1])) || strings.HasPrefix(text[at:], "==") {
		return -1
	}
	return at
}

// matchResults finds the line of each answer and of each step that something is said of.
func (m *maker) matchResults() {
	d := m.definition
	if len(d.Answers) == 0 {
		m.fault("calculation-answer", d.Name.Span, "this calculation has no answer",
			"add lines such as:\nanswers:\n  rate:\n    label: Spray on an acre\n    unit: gal/ac")
	}
	for i := range d.Answers {
		m.matchResult(&d.Answers[i], "answer")
	}
	for i := range d.Steps {
		m.matchResult(&d.Steps[i], "step")
	}
}

func (m *maker) matchResult(r *Result, what string) {
	for i := range m.lines {
		l := &m.lines[i]
		if l.part == nil || l.part.name != r.Name.Text {
			continue
		}
		if l.result != nil {
			m.fault("calculation-name-twice", r.Name.Span,
				fmt.Sprintf("“%s” is among the answers already", r.Name.Text), "take it out of one of the two")
			return
		}
		l.result, l.answer = r, what == "answer"
		m.declareUnit(l)
		return
	}
	var names []string
	for _, l := range m.lines {
		if l.part == nil {
			return // it may be the line that could not be parted
		}
		names = append(names, l.part.name)
	}
	note := "add a line of work that begins with: " + underscored(r.Name.Text) + " ="
	if near := unit.Nearest(r.Name.Text, names); near != "" {
		note = "write " + near + ", or " + note
	}
	m.fault("calculation-answer", r.Name.Span,
		fmt.Sprintf("no line of work gives the %s “%s”", what, short(r.Name.Text)), note)
}

// declareUnit reads the unit that an author wrote for a line.
func (m *maker) declareUnit(l *line) {
	switch text := l.result.Unit; {
	case text.Text == "" && !l.answer:
		return
	case text.Text == PlainNumber:
		l.unit = &unit.Unit{}
	default:
		l.unit = m.unit(text)
	}
	l.part.bad = l.unit == nil
}

// unit reads a unit. Nil if it is none.
func (m *maker) unit(text Text) *unit.Unit {
	u, err := unit.Parse(text.Text)
	switch {
	case err != nil:
		m.unread("calculation-unit", text, err, "write a unit such as lb/ac")
		return nil
	case u.String() == "":
		m.fault("calculation-unit", text.Span, "a unit is missing here", "write one, or "+PlainNumber+" for a plain number")
		return nil
	}
	return &u
}

// unread reports a text that calc did not take, at the place that it knows.
func (m *maker) unread(id string, text Text, err error, otherwise string) {
	what, note := splitAdvice(err, otherwise)
	m.fault(id, text.part(placeIn(err, text.Text), len(text.Text)), what, note)
}

// checkUsed finds what a reader would be asked for, or shown, to no purpose.
func (m *maker) checkUsed() {
	for _, name := range m.order {
		if p := m.parts[name]; !p.used && p.line == 0 {
			m.fault("calculation-unused", p.span, fmt.Sprintf("nothing in the work uses “%s”", name),
				"write "+underscored(name)+" in a line of work, or take it out")
		}
	}
}
