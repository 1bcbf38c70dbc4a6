package sheet

import (
	"iter"
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
	w := s.walk(q)
	defer w.forget()
	w.measure()
	var p plan
	for at, i := range slices.Backward(w.all) {
		step := &w.steps[at]
		by := w.steps[step.by]
		step.gone = by.gone || by.shut
		step.shut = !step.gone && i != q.of && i != q.where && w.stands(at)
	}
	for at, i := range w.all {
		switch step := w.steps[at]; {
		case step.gone:
		case step.shut || s.program.Code[i].Op == Input:
			p.sides = append(p.sides, i)
		default:
			p.order = append(p.order, i)
		}
	}
	return p
}

// A walk is the instructions that a query follows from, each after its operands. After them comes the query, which all
// of them lead to.
type walk struct {
	*spread
	all   []int
	steps []step // by place in all, and one for the query
}

// A step is what a walk finds of an instruction.
type step struct {
	by  int // the place of the first instruction further down through which everything goes to the query
	far int // how many of those there are until the query

	// Of all that the instruction follows from:
	nearest int  // the least of far that the by of one of them has
	ranges  int  // how many are ranges, where all of them go through this instruction
	leaving int  // how many leave out values, likewise
	told    bool // whether something further down is told to follow one of them

	shut bool // it is set
	gone bool // something further down is set instead
}

// walk finds the instructions of a query, and through what each goes. It holds until the next one.
func (s *spread) walk(q query) *walk {
	w := &s.last
	w.spread, w.all = s, w.all[:0]
	w.visit(q.of)
	w.visit(q.where)
	end := len(w.all)
	w.steps = slices.Grow(w.steps[:0], end+1)[:end+1]
	for at := range w.steps {
		w.steps[at] = step{by: -1, nearest: end + 1}
	}
	w.steps[end].by = end
	for at, i := range slices.Backward(w.all) {
		own := &w.steps[at]
		if i == q.of || i == q.where {
			own.by = end
		}
		own.far = w.steps[own.by].far + 1
		for from := range w.operands(at) {
			if by := &w.steps[from].by; *by < 0 {
				*by = at
			} else {
				*by = w.meet(*by, at)
			}
		}
	}
	return w
}

func (w *walk) visit(i int) {
	if i < 0 || !w.moves[i] || w.place[i] != 0 {
		return
	}
	in := w.program.Code[i]
	if in.Op == Select {
		in.B, in.C = in.C, in.B // the order of the module
	}
	for _, from := range in.operands() {
		w.visit(from)
	}
	w.all = append(w.all, i)
	w.place[i] = len(w.all)
}

// forget takes back what the walk noted of the instructions.
func (w *walk) forget() {
	for _, i := range w.all {
		w.place[i] = 0
	}
}

// operands gives the places of what an instruction takes of the walk.
func (w *walk) operands(at int) iter.Seq[int] {
	return func(yield func(int) bool) {
		for _, from := range w.program.Code[w.all[at]].operands() {
			if w.place[from] > 0 && !yield(w.place[from]-1) {
				return
			}
		}
	}
}

// meet is the first instruction through which two others both go, or one of them if the other goes through it.
func (w *walk) meet(a, b int) int {
	for a != b {
		if w.steps[a].far > w.steps[b].far {
			a = w.steps[a].by
		} else {
			b = w.steps[b].by
		}
	}
	return a
}

// measure counts what is above each instruction.
func (w *walk) measure() {
	end := len(w.all)
	for at, i := range w.all {
		own := &w.steps[at]
		for from := range w.operands(at) {
			above := w.steps[from]
			own.nearest = min(own.nearest, above.nearest, w.steps[above.by].far)
		}
		by := &w.steps[own.by]
		by.ranges += own.ranges
		if w.program.Code[i].Op == Input {
			by.ranges++
		}
		by.leaving += own.leaving
		if w.leavesOut(i) {
			by.leaving++
		}
		for _, of := range w.followers[i] {
			to := end
			if w.place[of] > 0 {
				to = w.meet(at, w.place[of]-1)
			}
			for on := own.by; on != to && on != end; on = w.steps[on].by {
				w.steps[on].told = true
			}
		}
	}
}

// stands says whether an instruction can be set instead of all that is above it: nothing else takes a part of that, it
// has two ranges at least, and no value that is asked for, that leaves some out, or that something further down is told
// to follow.
func (w *walk) stands(at int) bool {
	own := w.steps[at]
	return own.nearest >= own.far && own.ranges > 1 && own.leaving == 0 && !own.told && !w.leavesOut(w.all[at])
}

// leavesOut says whether an instruction may leave out values between two that it takes.
func (s *spread) leavesOut(i int) bool {
	in, v := s.program.Code[i], s.value[i]
	return !v.single() && (in.Op.isStep() || math.IsInf(v.Low, -1) || in.Op == Select && !s.value[in.A].single())
}
