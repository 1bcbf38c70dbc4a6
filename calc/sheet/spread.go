package sheet

import "slices"

// Spread works the program for ranges. low and high hold the two ends of every input cell; an input whose ends are the
// same is a single number. After it, they hold the least and the greatest value of every output cell; of a value that
// may be left out, where it is there. A truth that was found for none of the numbers, and cannot be excluded, has Doubt
// for its upper end.
//
// Each output is worked over the ranges that it follows from, and no others: a value that follows from none is the one
// that Run gives.
func (p *Program) Spread(low, high []float64) {
	p.Run(low)
	s := newSpread(p, low, high)
	for _, out := range p.Outputs {
		high[out.Cell] = low[out.Cell]
	}
	if s == nil {
		return
	}
	from := p.outputs()
	for _, out := range p.Outputs {
		if q := p.query(out, from); s.moves[q.of] || q.where >= 0 && s.moves[q.where] {
			found := s.ask(q)
			low[out.Cell], high[out.Cell] = found.Low, found.High
		}
	}
}

// Where gives the least and the greatest value of a cell where the truth in an output cell holds. low and high are as
// in Spread.
func (p *Program) Where(low, high []float64, cell, truth int) Interval {
	q, from := query{of: p.input(cell), where: -1, found: true}, p.outputs()
	if from[cell] >= 0 {
		q.of = p.query(Output{from[cell], cell}, from).of
	}
	q.where = from[truth]
	s := newSpread(p, low, high)
	if q.of < 0 || q.where < 0 || s == nil {
		return Interval{low[cell], high[cell]}
	}
	return s.ask(q)
}

// outputs gives the instruction that each cell is written from; -1 if it is not.
func (p *Program) outputs() []int {
	from := slices.Repeat([]int{-1}, p.Cells)
	for _, out := range p.Outputs {
		from[out.Cell] = out.From
	}
	return from
}

// query is what there is to find out about an output. Of a value that may be left out it is the value itself, which
// its choice would be worked from.
func (p *Program) query(out Output, from []int) query {
	q := query{of: out.From, where: -1}
	cell, guarded := p.Guards[out.Cell]
	if !guarded {
		return q
	}
	q.where = from[cell]
	if in := p.Code[q.of]; in.Op == Select && in.A == q.where {
		q.of = in.B
	}
	return q
}

// input is the instruction that reads a cell; -1 if none does.
func (p *Program) input(cell int) int {
	return slices.IndexFunc(p.Code, func(in Instruction) bool { return in.Op == Input && in.A == cell })
}

// A spread is a program with ranges, worked for the whole of them once for all that is asked of it.
type spread struct {
	program   *Program
	value     []Interval // by instruction, for the whole
	whole     []bool     // by instruction: whether it gives whole numbers only
	moves     []bool     // by instruction: whether it follows from a range, or is one
	place     []int      // by instruction: used by a walk and by a part; 0 between them
	last      walk
	followers map[int][]int    // by instruction: those that a trend says follow it
	trends    map[int][]Trend  // by the instruction that they are of
	known     map[int]Interval // by instruction: its two ends
}

// newSpread works the whole of the ranges; nil if there are none.
func newSpread(p *Program, low, high []float64) *spread {
	if !slices.ContainsFunc(p.Code, func(in Instruction) bool { return in.Op == Input && low[in.A] != high[in.A] }) {
		return nil
	}
	n := len(p.Code)
	s := &spread{
		program: p, value: make([]Interval, n), whole: p.wholeNumbers(), moves: make([]bool, n), place: make([]int, n),
		followers: map[int][]int{}, trends: map[int][]Trend{}, known: map[int]Interval{},
	}
	for _, t := range p.Trends {
		s.followers[t.From] = append(s.followers[t.From], t.Of)
		s.trends[t.Of] = append(s.trends[t.Of], t)
	}
	j := newJudge(p, s.value, s.whole, nil, nil)
	for i, in := range p.Code {
		if in.Op == Input {
			s.value[i] = Interval{low[in.A], high[in.A]}
			s.moves[i] = low[in.A] != high[in.A]
			continue
		}
		for _, from := range in.operands() {
			s.moves[i] = s.moves[i] || s.moves[from]
		}
		s.value[i] = j.work(in)
	}
	return s
}

// ask gives the two ends that a query has.
func (s *spread) ask(q query) Interval {
	if q.where >= 0 && s.value[q.where].single() {
		if s.value[q.where].Low == 0 {
			return Interval{}
		}
		q.where = -1
	}
	if q.where < 0 && s.value[q.of].single() {
		return s.value[q.of]
	}
	if found, asked := s.known[q.of]; asked && q.where < 0 {
		return found
	}
	p := s.plan(q)
	box := make([]Interval, len(p.sides))
	for n, i := range p.sides {
		if box[n] = s.value[i]; s.program.Code[i].Op != Input {
			box[n] = s.ask(query{of: i, where: -1})
		}
	}
	own := s.part(q, p)
	low, _ := newSearch(own, box, false).run()
	high, there := newSearch(own, box, true).run()
	if !there {
		return Interval{}
	}
	if q.where < 0 {
		s.known[q.of] = Interval{low, high}
	}
	return Interval{low, high}
}
