package formula

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"regexp"
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// A Scope is what conditions can ask about: the worksheets of a page, or the calculations of an exercise.
type Scope struct {
	Find    func(name string) *sheet.Use // nil for a name that is none
	Uses    []string                     // the names, in order
	Alone   bool                         // there is one, and its numbers may be asked for without its name
	Use, In string                       // what they are, and where, for messages: "worksheet", "page"
	Hidden  func(name string) bool       // those with a fault of their own: a condition that names one gets no fault here
}

// Worksheets is the scope of a page.
func Worksheets(graph *sheet.Graph, hidden func(name string) bool) Scope {
	s := Scope{Find: graph.Find, Use: "worksheet", In: "page", Hidden: hidden}
	for _, u := range graph.Uses {
		if !strings.Contains(u.Name, " ") { // a reckoner has no name
			s.Uses = append(s.Uses, u.Name)
		}
	}
	return s
}

// Conditions reads the conditions of a passage, in the order of its cases, and makes the passage of them. There is one
// if and only if there is no fault and nothing that is hidden in them.
func Conditions(scope Scope, conditions []Text) (*sheet.Passage, []Fault) {
	p := sheet.NewPassage()
	m := newMaker(scope, p)
	whole := true
	var of []int // by refusal, the condition that brings it
	for i, c := range conditions {
		question := m.condition(c)
		if whole = question != nil && whole; whole {
			p.Case(*question)
		}
		for len(of) < len(m.refusals) {
			of = append(of, i)
		}
	}
	if err := p.Err(); err != nil {
		m.unasked(conditions[0].Span, err)
		whole = false
	}
	if !whole {
		return nil, m.faults
	}
	for i, f := range m.refusals {
		p.Refuse(f.when, of[i])
	}
	return p, nil
}

// Condition reads one condition, and makes a question for the passage of it: nil if and only if there is a fault. One
// that divides by 0 is answered no.
func Condition(scope Scope, p *sheet.Passage, condition Text) (*sheet.Term, []Fault) {
	m := newMaker(scope, p)
	question := m.condition(condition)
	if err := p.Err(); err != nil && len(m.faults) == 0 {
		m.unasked(condition.Span, err)
	}
	if len(m.faults) > 0 {
		return nil, m.faults
	}
	for _, f := range m.refusals {
		good := question.And(f.when.Not())
		question = &good
	}
	return question, nil
}

func newMaker(scope Scope, p *sheet.Passage) *maker {
	return &maker{definition: &Definition{}, parts: map[string]*part{}, figures: map[string]string{},
		figureNames: map[string]bool{}, s: p.Sheet, page: &pageScope{Scope: scope, passage: p}}
}

func (m *maker) unasked(at Span, err error) {
	m.fault("calculation-unmade", at, "this cannot be asked: "+err.Error(), "ask it in smaller parts")
}

// A pageScope is the names that a condition may use: of worksheets, with a point before the name of a number.
type pageScope struct {
	Scope
	passage *sheet.Passage
	names   map[int]reference // those of the condition at hand, by the offset where they start
	there   *sheet.Term       // whether all that is compared is there; nil: it always is
}

// A reference is a number of a worksheet as a condition names it, perhaps with the option that it is asked for.
type reference struct {
	use, name string
	is        string // "is", "is not", "==" or "!="; "" for none
	option    string
	optionAt  int // where the option starts in the condition
}

func (ref reference) whole() string { return ref.use + "." + ref.name }

// condition reads one condition; nil when there is none.
func (m *maker) condition(f Text) *sheet.Term {
	if !m.readable(f) {
		return nil
	}
	e, err := parser.ParseExprFrom(token.NewFileSet(), "", maskKeywords(m.mask(f)), parser.SkipObjectResolution)
	if err != nil {
		m.notArithmetic(f, offsetOf(err, f.Text))
		return nil
	}
	r := &reader{maker: m, f: f}
	o := r.read(e)
	if !r.question(o) {
		return nil
	}
	return &o.term
}

// references are the parts of a condition that are not Go's: quantities in quotes, which are left alone, numbers of
// worksheets with what they are asked for, and the words that join questions.
var references = regexp.MustCompile(`"[^"]*"` +
	`|([A-Za-z][A-Za-z0-9]*(?:[-_][A-Za-z0-9]+)*)\.([A-Za-z][A-Za-z0-9]*(?:[-_][A-Za-z0-9]+)*)` +
	`(?:\s+(is\s+not|is)\s+("[^"]*"|[^\s()"&|!]+)|\s*(==|!=)\s*("[^"]*"))?` +
	`|\b(?:and|or|not)\b`)

var joiners = map[string]string{"and": "&& ", "or": "||", "not": "!  "}

// mask puts a plain name of the same length in the place of each reference, and Go's signs in that of the words.
func (m *maker) mask(f Text) string {
	text := []byte(f.Text)
	m.page.names = map[int]reference{}
	for _, at := range references.FindAllStringSubmatchIndex(f.Text, -1) {
		part := func(i int) string {
			if at[2*i] < 0 {
				return ""
			}
			return f.Text[at[2*i]:at[2*i+1]]
		}
		if joined, is := joiners[part(0)]; is {
			copy(text[at[0]:], joined)
			continue
		}
		if part(1) == "" {
			continue
		}
		ref := reference{use: hyphened(part(1)), name: hyphened(part(2))}
		end := at[1]
		switch {
		case part(3) != "":
			ref.is, ref.option, ref.optionAt = strings.Join(strings.Fields(part(3)), " "), part(4), at[8]
		case m.chosen(ref):
			ref.is, ref.option, ref.optionAt = part(5), part(6), at[12]
		default:
			end = at[5]
		}
		m.page.names[at[0]] = ref
		copy(text[at[0]:end], "r"+strings.Repeat("_", end))
	}
	return string(text)
}

// givenOf finds the given that a reference names; nil when it names none.
func (m *maker) givenOf(ref reference) *sheet.Given {
	u := m.page.Find(ref.use)
	if u == nil {
		return nil
	}
	return u.Sheet.FindGiven(ref.name)
}

func (m *maker) chosen(ref reference) bool {
	g := m.givenOf(ref)
	return g != nil && g.Choices != nil
}

// reference reads a number of a worksheet, or a question about a choice.
func (r *reader) reference(e *ast.Ident) operand {
	ref, is := r.page.names[int(e.Pos())-1]
	if !is {
		if ref = r.alone(e); ref.use == "" {
			return r.unplaced(e)
		}
	}
	u := r.page.Find(ref.use)
	switch {
	case r.page.Hidden(ref.use):
		return operand{bad: true}
	case u == nil:
		return r.faultAt(e, "condition-name", fmt.Sprintf("there is no %s “%s” in this %s", r.page.Use, ref.use, r.page.In),
			r.nearReference(ref))
	}
	if _, known := u.Sheet.UnitOf(ref.name); !known {
		return r.faultAt(e, "condition-name", fmt.Sprintf("%s “%s” has no “%s”", r.page.Use, ref.use, ref.name),
			r.nearReference(ref))
	}
	g := u.Sheet.FindGiven(ref.name)
	switch {
	case r.chosen(ref):
		return r.choice(e, u, g, ref)
	case ref.is != "":
		return r.faultAt(e, "condition-choice", ref.whole()+" is a number, and is not chosen from a list",
			fmt.Sprintf("compare it: %s > %s", ref.whole(), r.sample(operand{term: r.valueOf(u, ref)})))
	case g != nil && g.HasTwoKinds():
		return r.faultAt(e, "condition-name", ref.whole()+" may be one of two kinds of quantity, so nothing can ask about it",
			"ask about an answer of the "+r.page.Use)
	}
	o := r.of(e, r.valueOf(u, ref))
	o.name, o.counted, o.date = true, true, u.Sheet.IsDate(ref.name)
	if g != nil {
		o.values = sheet.Interval{Low: g.Low, High: g.High}
	}
	return o
}

// alone is a number of the only calculation, which is written without its name; the zero reference for none.
func (r *reader) alone(e *ast.Ident) reference {
	if !r.page.Alone {
		return reference{}
	}
	ref := reference{use: r.page.Uses[0], name: hyphened(r.cut(e))}
	if _, known := r.page.Find(ref.use).Sheet.UnitOf(ref.name); !known {
		return reference{}
	}
	return ref
}

// valueOf is the value of a reference. What may not be there makes every comparison with it a no.
func (r *reader) valueOf(u *sheet.Use, ref reference) sheet.Term {
	value, there := r.page.passage.Value(u, ref.name)
	if there != nil && r.page.there != nil {
		both := r.page.there.And(*there)
		there = &both
	}
	if there != nil {
		r.page.there = there
	}
	return value
}

// choice reads "plan.material is CAN-17".
func (r *reader) choice(e *ast.Ident, u *sheet.Use, g *sheet.Given, ref reference) operand {
	whole := ref.whole()
	if ref.is == "" {
		return r.faultAt(e, "condition-choice", whole+" is chosen from a list, and is not a number",
			fmt.Sprintf("ask which it is: %s is %s", whole, g.Choices[0].Name))
	}
	name := strings.Trim(ref.option, `"`)
	i := slices.IndexFunc(g.Choices, func(o sheet.Option) bool { return strings.EqualFold(o.Name, name) })
	if i < 0 {
		var names []string
		for _, o := range g.Choices {
			names = append(names, o.Name)
		}
		note := "write one of: " + strings.Join(names, ", ")
		if near := unit.Nearest(name, names); near != "" {
			note = "write " + near
		}
		r.fault("condition-choice", r.f.part(ref.optionAt, ref.optionAt+len(ref.option)),
			fmt.Sprintf("%s has no option “%s”", whole, name), note)
		return operand{bad: true}
	}
	t := r.page.passage.Chosen(u, ref.name, i)
	if ref.is == "is not" || ref.is == "!=" {
		t = t.Not()
	}
	o := r.of(e, t)
	o.truth = true
	return o
}

// unplaced reports a name that does not say of which worksheet it is.
func (r *reader) unplaced(e *ast.Ident) operand {
	word := r.cut(e)
	if f := functions[word]; f.example != "" {
		return r.faultAt(e, "condition-name", word+" is a function, and needs brackets", "write "+f.example)
	}
	if r.page.Alone {
		note := "write one of: " + strings.Join(r.known(), ", ")
		if near := unit.Nearest(hyphened(word), r.known()); near != "" {
			note = "write " + near
		}
		return r.faultAt(e, "condition-name", fmt.Sprintf("“%s” is no number of this %s", short(word), r.page.Use), note)
	}
	var whole []string
	for _, name := range r.known() {
		if strings.HasSuffix(name, "."+hyphened(word)) {
			whole = append(whole, name)
		}
	}
	note := fmt.Sprintf("write the name of a %s and a point before it: %s", r.page.Use, unit.Nearest(word, r.known()))
	switch {
	case len(whole) > 0:
		note = "write " + strings.Join(whole, " or ")
	case unit.Nearest(word, r.known()) == "":
		note = "write one of: " + strings.Join(r.known(), ", ")
	}
	return r.faultAt(e, "condition-name",
		fmt.Sprintf("“%s” does not say which number of which %s it is", short(word), r.page.Use), note)
}

func (r *reader) nearReference(ref reference) string {
	if u := r.page.Find(ref.use); u != nil {
		if near := unit.Nearest(ref.name, u.Sheet.Names()); near != "" {
			return "write " + ref.use + "." + near
		}
		return "write one of: " + ref.use + "." + strings.Join(u.Sheet.Names(), ", "+ref.use+".")
	}
	if near := unit.Nearest(ref.use+"."+ref.name, r.known()); near != "" {
		return "write " + near
	}
	if len(r.known()) == 0 {
		return "write a worksheet of that name first"
	}
	return fmt.Sprintf("only the %ss of this %s can be asked about; write one of: %s", r.page.Use, r.page.In,
		strings.Join(r.known(), ", "))
}

// known lists what a condition can name.
func (r *reader) known() []string {
	var names []string
	for _, use := range r.page.Uses {
		for _, name := range r.page.Find(use).Sheet.Names() {
			if !r.page.Alone || strings.Contains(name, "-") {
				name = use + "." + name // a hyphen alone would be a minus
			}
			names = append(names, name)
		}
	}
	return names
}

// compareThere reads a comparison in a condition. The answer is no when a value in it is not there.
func (r *reader) compareThere(e *ast.BinaryExpr, at Span) operand {
	r.page.there = nil
	a := r.read(e.X)
	if a.bad {
		return a // what it is compared with may be an option of it
	}
	b := r.read(e.Y)
	there := r.page.there
	if okA, okB := r.quantity(a), r.quantity(b); !okA || !okB {
		return operand{bad: true}
	}
	if _, other := a.term.Unit().To(b.term.Unit()); a.date != b.date && other == nil { // else compare says what to write
		r.fault("formula-units", at, "a day of the calendar and a number cannot be compared", `write a day as "2027-07-15"`)
		return operand{bad: true}
	}
	o := r.compare(e, at, a, b)
	if there != nil && !o.bad {
		o.term = there.And(o.term)
	}
	return o
}

// told takes a quantity between quotes for what it is compared with, as a given takes what is typed: "2 ppm NO3-N" need
// not say that it is in water, nor "40 lb N/ac" that it was fed.
func (r *reader) told(quantity, other operand) operand {
	if quantity.quoted == nil {
		return quantity
	}
	factor, err := quantity.quoted.Unit.For(other.term.Unit())
	if err != nil {
		return quantity
	}
	value := factor.Apply(quantity.quoted.Value)
	quantity.term, quantity.values = r.page.passage.Quantity(value, other.term), sheet.Only(value)
	return quantity
}

// day reads a day in quotes, "2027-07-15". False when it is none, or where a calculation has no days.
func (r *reader) day(e *ast.BasicLit, text string) (operand, bool) {
	if r.page == nil {
		return operand{}, false
	}
	day, err := sheet.ReadDay(text)
	if err != nil {
		return operand{}, false
	}
	o := r.of(e, r.figure(fmt.Sprintf("%.0f days", day.Value), day))
	o.values, o.counted, o.date = sheet.Only(day.Value), true, true
	return o, true
}
