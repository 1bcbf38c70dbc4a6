package sheet

import (
	"math"
	"slices"
)

// A plan is what a query needs to be worked: the values that are set, and the instructions from there to what is asked,
// each after its operands. Where several ranges reach a query through one value alone, that value is set instead of
// them: ten ranges that make up a season's need are one range to the feeds that it is split into.
type plan struct{ sides, order []int }

// plan makes the plan of a query. It goes from what is asked to what that takes, and not by the numbers of the
// instructions, which the page's script does not have.
func (s *spread) plan(q query) plan {
	var all []int
	wanted := make([]bool, len(s.program.Code))
	var visit func(i int)
	visit = func(i int) {
		if !s.moves[i] || wanted[i] {
			return
		}
		wanted[i] = true
		in := s.program.Code[i]
		if in.Op == Select {
			in.B, in.C = in.C, in.B // the order of the module
		}
		for _, from := range in.operands() {
			visit(from)
		}
		all = append(all, i)
	}
	visit(q.of)
	if q.where >= 0 {
		visit(q.where)
	}
	for _, i := range slices.Backward(all) {
		if wanted[i] && i != q.of && i != q.where {
			if above := s.above(all, i); above != nil && s.stands(i, above, q) {
				for _, other := range above {
					wanted[other] = false
				}
				s.shut[i] = true
			}
		}
	}
	var p plan
	for _, i := range all {
		switch {
		case wanted[i] && (s.shut[i] || s.program.Code[i].Op == Input):
			p.sides = append(p.sides, i)
		case wanted[i]:
			p.order = append(p.order, i)
		}
		s.shut[i] = false
	}
	return p
}

// above lists what an instruction follows from: nil if something else takes a part of it.
func (s *spread) above(all []int, i int) []int {
	in := make([]bool, len(s.program.Code))
	in[i] = true
	above := []int{}
	for _, other := range slices.Backward(all[:slices.Index(all, i)+1]) {
		if !in[other] {
			continue
		}
		for _, from := range s.program.Code[other].operands() {
			in[from] = true
		}
		if other != i {
			above = append(above, other)
		}
	}
	for _, other := range all {
		if !in[other] {
			for _, from := range s.program.Code[other].operands() {
				if slices.Contains(above, from) {
					return nil
				}
			}
		}
	}
	return above
}

// stands says whether an instruction can be set instead of all that is above it: two ranges at least, and no value that
// is asked for, that leaves some out, or that something further down is told to follow.
func (s *spread) stands(i int, above []int, q query) bool {
	ranges := 0
	for _, other := range above {
		if s.program.Code[other].Op == Input {
			ranges++
		}
	}
	return ranges > 1 && !s.leavesOut(i) && !slices.ContainsFunc(above, s.leavesOut) &&
		!slices.Contains(above, q.of) && !slices.Contains(above, q.where) && !s.cutsTrend(i, above)
}

// cutsTrend says whether what is above an instruction has a value in it, but for the instruction itself, that something
// further down is told to follow.
func (s *spread) cutsTrend(i int, above []int) bool {
	return slices.ContainsFunc(s.program.Trends, func(t Trend) bool {
		return t.Of != i && slices.Contains(above, t.From) && !slices.Contains(above, t.Of)
	})
}

// leavesOut says whether an instruction may leave out values between two that it takes.
func (s *spread) leavesOut(i int) bool {
	in, v := s.program.Code[i], s.value[i]
	return !v.single() && (in.Op.isStep() || math.IsInf(v.Low, -1) || in.Op == Select && !s.value[in.A].single())
}
