package sheet

import "slices"

// A Passage asks questions about the values of a graph, in order. The first that is answered yes is taken; when none
// is, what comes last is. A page uses one for a text that speaks for the reader's numbers, by cases.
type Passage struct {
	Sheet *Sheet // where the terms of its questions are made; it has no givens or results of its own
	After []int  // the uses whose values it takes, by their index; set when the graph is closed

	uses      []*Use
	from      []source
	instead   map[place]place
	questions []*node
	numbers   []*node
	refusals  []*node
	refusing  []int // by refusal, the case whose question has no answer
	cells     []int // by case, the last one included
	kept      []int // by number
	refused   []int
}

// A source is where a node of a passage has its value from.
type source struct {
	own, node *node // of the passage, and of the use's sheet
	use       *Use
}

// A place is a value of a use.
type place struct {
	use  *Use
	name string
}

// NewPassage makes a passage without cases.
func NewPassage() *Passage {
	s := &Sheet{Name: "passage", named: map[string]*node{}, own: map[*node]bool{}}
	return &Passage{Sheet: s}
}

// Use notes that the passage depends on a use, for its questions or only for its text.
func (p *Passage) Use(u *Use) {
	if !slices.Contains(p.uses, u) {
		p.uses = append(p.uses, u)
	}
}

// Instead has the questions that come after it take a value of another use in the place of one.
func (p *Passage) Instead(u *Use, name string, of *Use, other string) {
	if p.instead == nil {
		p.instead = map[place]place{}
	}
	p.instead[place{u, name}] = place{of, other}
}

// Value is a given, step or answer of a use, and the question whether it is there: nil for what always is. The name
// must be one of the sheet's (Sheet.UnitOf), and of one kind of quantity.
func (p *Passage) Value(u *Use, name string) (value Term, there *Term) {
	if other, is := p.instead[place{u, name}]; is {
		u, name = other.use, other.name
	}
	p.Use(u)
	n := u.Sheet.named[name]
	value = p.take(u, n, &node{kind: kindGiven, unit: n.unit, date: n.date})
	if g := u.Sheet.FindGiven(name); g != nil && g.stated != nil {
		t := p.take(u, g.stated, &node{kind: kindStated, unit: plain, truth: true})
		there = &t
	}
	if r := u.Sheet.FindResult(name); r != nil && r.when != nil {
		t := p.take(u, r.when, &node{kind: kindStated, unit: plain, truth: true})
		there = &t
	}
	return value, there
}

func (p *Passage) take(u *Use, from, n *node) Term {
	p.from = append(p.from, source{own: n, node: from, use: u})
	return p.Sheet.wrap(n)
}

// Chosen asks whether a choice of a use is at the option with that index.
func (p *Passage) Chosen(u *Use, given string, option int) Term {
	value, _ := p.Value(u, given)
	return value.Same(p.Sheet.Number(float64(option)))
}

// Quantity is a number in the unit of another term.
func (p *Passage) Quantity(value float64, like Term) Term {
	return p.Sheet.wrap(&node{kind: kindNumber, value: value, unit: like.n.unit})
}

// Case adds a question.
func (p *Passage) Case(question Term) {
	question.needTruth("a case")
	p.questions = append(p.questions, question.n)
}

// Keep has a number or the answer to a question worked with the questions of the cases.
func (p *Passage) Keep(number Term) {
	p.numbers = append(p.numbers, number.n)
}

// KeptCell is the cell of the i-th of what is kept.
func (p *Passage) KeptCell(i int) int { return p.kept[i] }

// Refuse withholds the passage when the question is answered yes, since that of a case has no answer then.
func (p *Passage) Refuse(question Term, of int) {
	p.refusals, p.refusing = append(p.refusals, question.n), append(p.refusing, of)
}

// Err is what the units do not allow in its questions.
func (p *Passage) Err() error {
	if len(p.Sheet.faults) > 0 {
		return p.Sheet.faults[0]
	}
	return nil
}

// CaseCell is the cell that says whether the i-th case is taken (1) or not (0). The last one, after those with a
// question, is the case that is left when no other holds; its cell is -1 for a passage that has no other.
func (p *Passage) CaseCell(i int) int { return p.cells[i] }

// Refusals lists the cells that withhold the passage when they are not 0.
func (p *Passage) Refusals() []int { return p.refused }

// RefusingCase is the case whose question brings the i-th of the refusals.
func (p *Passage) RefusingCase(i int) int { return p.refusing[i] }

// placePassage works the questions of a passage from the values of the uses.
func (l *layout) placePassage(p *Passage) {
	p.After, p.cells, p.kept, p.refused = nil, nil, nil, nil
	for _, u := range p.uses {
		p.After = append(p.After, u.Index)
	}
	k := known{}
	for _, from := range p.from {
		k[from.own] = l.assembler.work(from.node, l.holds[from.use.Index])
	}
	none := -1
	for _, question := range p.questions {
		asked := l.assembler.work(question, k)
		not := l.assembler.emit(Not, asked)
		if none < 0 {
			p.cells = append(p.cells, l.hold(asked))
			none = not
			continue
		}
		p.cells = append(p.cells, l.hold(l.assembler.emit(And, none, asked)))
		none = l.assembler.emit(And, none, not)
	}
	last := -1
	if none >= 0 {
		last = l.hold(none)
	}
	p.cells = append(p.cells, last)
	for _, n := range p.numbers {
		p.kept = append(p.kept, l.hold(l.assembler.work(n, k)))
	}
	for _, n := range p.refusals {
		p.refused = append(p.refused, l.hold(l.assembler.work(n, k)))
	}
}
