package sheet

// A part is what a query needs of a program, as a program of its own: most queries need little of it. What does not
// change is a Literal in it.
type part struct {
	query
	plan
	program *Program
	value   []Interval
	whole   []bool
}

// part makes the part of a query.
func (s *spread) part(q query, p plan) *part {
	n := &part{query: q, program: &Program{Tables: s.program.Tables}}
	var taken []int
	take := func(i int) int {
		if i < 0 {
			return i
		}
		if s.place[i] == 0 {
			taken = append(taken, i)
			s.place[i] = len(taken)
			n.program.Code = append(n.program.Code, Instruction{Op: Literal, Value: s.value[i].Low})
			n.value = append(n.value, s.value[i])
			n.whole = append(n.whole, s.whole[i])
		}
		return s.place[i] - 1
	}
	for _, i := range p.sides {
		n.sides = append(n.sides, take(i))
	}
	for _, i := range p.order {
		in := s.program.Code[i]
		for at, operand := range []*int{&in.A, &in.B, &in.C} {
			if at < in.Op.Operands() {
				*operand = take(*operand)
			}
		}
		for _, t := range s.trends[i] {
			take(t.From)
		}
		at := take(i)
		n.program.Code[at] = in
		n.order = append(n.order, at)
		for _, t := range s.trends[i] {
			n.program.Trends = append(n.program.Trends, Trend{at, take(t.From), t.Up})
		}
	}
	n.of, n.where = take(q.of), take(q.where)
	for _, i := range taken {
		s.place[i] = 0
	}
	return n
}
