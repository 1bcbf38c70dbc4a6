package sheet

import "math"

// assume takes a truth to be so, or not, and notes what follows for the values that it is asked of, as limits by
// instruction. A value that is there for some numbers only is judged for these numbers.
func (j *judge) assume(i int, so bool, limit []Interval) {
	in := j.program.Code[i]
	know := func(i int, known Interval) { limit[i] = limit[i].both(known) }
	know(i, Only(truth(so)))
	a, b := j.value[in.A], j.value[in.B]
	switch in.Op {
	case Not:
		j.assume(in.A, !so, limit)
	case And, Or:
		// All of a yes to both is a yes to each, and one that is settled leaves it to the other.
		all := so == (in.Op == And)
		if all || a.single() && (a.Low != 0) != so {
			j.assume(in.B, so, limit)
		}
		if all || b.single() && (b.Low != 0) != so {
			j.assume(in.A, so, limit)
		}
	case Less, LessOrEqual:
		low, high := in.A, in.B
		if !so {
			low, high = in.B, in.A
		}
		apart := 0.0
		if so == (in.Op == Less) && j.whole[low] && j.whole[high] {
			apart = 1
		}
		know(low, Interval{math.Inf(-1), float64(j.value[high].High - apart)})
		know(high, Interval{float64(j.value[low].Low + apart), math.Inf(1)})
	}
}

// wholeNumbers says by instruction whether it gives whole numbers only.
func (p *Program) wholeNumbers() []bool {
	whole := make([]bool, len(p.Code))
	for i, in := range p.Code {
		switch in.Op {
		case Literal:
			whole[i] = in.Value == math.Trunc(in.Value)
		case Select:
			whole[i] = whole[in.B] && whole[in.C]
		default:
			whole[i] = in.Op.isStep()
		}
	}
	return whole
}
