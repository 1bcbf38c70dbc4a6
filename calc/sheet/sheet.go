package sheet

import (
	"errors"
	"fmt"
	"reflect"
	"runtime"
	"slices"
	"strings"

	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// A Sheet is one calculation: what is given, what is taken as known, how the answers are worked, what is said about
// them, and the known wrong ways to work them. It is built once and not changed after that.
type Sheet struct {
	Name    string       // "soil-nitrogen"
	Title   string       // "Nitrogen in the soil", for headings
	Summary string       // one sentence: what it answers
	Origin  string       // the name of the Go function that builds it
	Texts   *words.Texts // where its texts are from; nil for those that its author gave
	Written string       // the language that its author wrote it in; "" for English, and for a sheet of the catalogue

	Givens    []*Given
	Constants []*Constant
	Results   []*Result // steps and answers, in the order of the work
	Remarks   []*Remark // notes, cautions and refusals
	Slips     []*Slip
	Headline  *Headline // nil: no answer is said in words

	build   func(*Sheet)
	named   map[string]*node
	own     map[*node]bool  // the nodes that a name or a given brought into this sheet
	foreign map[string]bool // the texts that are in English in a sheet of another language
	trends  []trend
	faults  []error
}

// New builds a sheet of the catalogue, with its texts in English, and panics with every fault found, since such a sheet
// is part of the program.
func New(name string, build func(*Sheet)) *Sheet {
	var texts *words.Texts
	if slices.Contains(words.Calculations(words.English), name) {
		texts = words.Of(name, words.English)
	}
	return mustBuild(name, texts, build)
}

func mustBuild(name string, texts *words.Texts, build func(*Sheet)) *Sheet {
	s, err := buildWith(name, texts, build)
	if err != nil {
		panic(err)
	}
	return s
}

// Build builds a sheet of an author, which brings its own texts. The error, if any, joins one error for each fault: a
// name used twice, a unit that does not parse, terms whose dimensions do not agree.
func Build(name string, build func(*Sheet)) (*Sheet, error) { return buildWith(name, nil, build) }

func buildWith(name string, texts *words.Texts, build func(*Sheet)) (*Sheet, error) {
	s := &Sheet{
		Name: name, Origin: functionName(build), Texts: texts, build: build,
		named: map[string]*node{}, own: map[*node]bool{}, foreign: map[string]bool{},
	}
	if texts != nil {
		s.Title, s.Summary = s.text("title", ""), s.text("summary", "")
	}
	build(s)
	s.checkShape()
	if len(s.faults) > 0 {
		return nil, fmt.Errorf("sheet %q: %w", name, errors.Join(s.faults...))
	}
	return s, nil
}

// Head sets the title and the one-sentence summary of a sheet without a file of texts.
func (s *Sheet) Head(title, summary string) { s.Title, s.Summary = title, summary }

// Number is a plain number of the arithmetic itself, such as the 2 of a mean. A figure of the trade is a Constant.
func (s *Sheet) Number(v float64) Term {
	return s.wrap(&node{kind: kindNumber, value: v, unit: plain})
}

// Amount is a quantity of the arithmetic itself that has a unit: the days of the longest season. A figure of the trade
// is a Constant.
func (s *Sheet) Amount(v float64, unitText string) Term {
	return s.wrap(&node{kind: kindNumber, value: v, unit: s.parseUnit(unitText)})
}

// Zero is nothing of a unit: the floor of Most.
func (s *Sheet) Zero(unitText string) Term {
	return s.wrap(&node{kind: kindNumber, unit: s.parseUnit(unitText)})
}

// FindGiven finds a given by its name; nil if there is none.
func (s *Sheet) FindGiven(name string) *Given {
	for _, g := range s.Givens {
		if g.Name == name {
			return g
		}
	}
	return nil
}

// FindResult finds a step or an answer by its name; nil if there is none.
func (s *Sheet) FindResult(name string) *Result {
	for _, r := range s.Results {
		if r.Name == name {
			return r
		}
	}
	return nil
}

// IsDate says whether a given, step or answer is a day of the calendar.
func (s *Sheet) IsDate(name string) bool {
	n := s.named[name]
	return n != nil && n.date
}

// Names lists what a figure or a link can point at: givens, steps and answers, in order.
func (s *Sheet) Names() []string {
	var names []string
	for _, g := range s.Givens {
		names = append(names, g.Name)
	}
	for _, r := range s.Results {
		names = append(names, r.Name)
	}
	return names
}

// UnitOf is the unit of a given, step or answer. False if there is none of that name.
func (s *Sheet) UnitOf(name string) (unit.Unit, bool) {
	n, ok := s.named[name]
	if !ok || n.kind == kindConstant {
		return unit.Unit{}, false
	}
	return n.unit, true
}

// Answers lists the results that are answers, in order.
func (s *Sheet) Answers() []*Result {
	var answers []*Result
	for _, r := range s.Results {
		if r.Answer {
			answers = append(answers, r)
		}
	}
	return answers
}

func (s *Sheet) wrap(n *node) Term { return Term{s: s, n: n} }

func (s *Sheet) fault(format string, args ...any) {
	s.faults = append(s.faults, fmt.Errorf(format, args...))
}

// define gives a node a name that no other part of the sheet has.
func (s *Sheet) define(name string, n *node) {
	s.checkName(name)
	if s.named[name] != nil {
		s.fault("the name %q is used twice", name)
	}
	n.name = name
	s.own[n] = true
	s.named[name] = n
}

func (s *Sheet) parseUnit(text string) unit.Unit {
	u, err := unit.Parse(text)
	if err != nil {
		s.fault("unit %q: %w", text, err)
		return plain
	}
	return u.In(s.language())
}

// convert is the term in another unit. Multiplying by one is left out; each way of an If is converted on its own.
func (s *Sheet) convert(t Term, to unit.Unit, doing string) Term {
	if t.n.kind == kindIf {
		then, otherwise := s.convert(s.wrap(t.n.args[1]), to, doing), s.convert(s.wrap(t.n.args[2]), to, doing)
		return s.wrap(&node{kind: kindIf, args: []*node{t.n.args[0], then.n, otherwise.n}, unit: to})
	}
	if t.n.unit.Same(to) {
		return t
	}
	if t.n.kind == kindNumber && t.n.value == 0 && t.n.unit.Dimension() == to.Dimension() {
		return s.wrap(&node{kind: kindNumber, unit: to})
	}
	if t.n.unit.Dimension() != to.Dimension() {
		s.fault("cannot %s %s: it is %s, and %s is needed",
			doing, t.describe(), t.n.unit.Dimension(), to.Dimension())
		return s.wrap(&node{kind: kindNumber, unit: to})
	}
	factor, err := t.n.unit.To(to)
	if err != nil {
		s.fault("cannot %s %s: %w", doing, t.describe(), err)
	}
	return s.wrap(&node{kind: kindConvert, args: []*node{t.n}, unit: to, factor: factor, truth: t.n.truth})
}

func functionName(build func(*Sheet)) string {
	full := runtime.FuncForPC(reflect.ValueOf(build).Pointer()).Name()
	return full[strings.LastIndexByte(full, '.')+1:]
}
