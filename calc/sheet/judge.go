package sheet

import "math"

// A judge works a program for intervals instead of numbers. What it finds for a value is an interval that the value
// cannot leave while its sides, values further up that are set from outside, stay in theirs. For each side it finds the
// slopes too: an interval of how much the value changes for each 1 that the side changes, from any number of its
// interval to any other.
type judge struct {
	program *Program
	value   []Interval // by instruction
	sides   []int      // the instructions that are set from outside
	order   []int      // the instructions from there to what is asked, each after its operands
	slope   []Interval // by instruction, and by side within it
	degree  []float64  // likewise: the power of the side that the value is a multiple of; NaN if it is of none
	whole   []bool     // by instruction: whether it gives whole numbers only
}

// newJudge makes a judge of the instructions in order.
func newJudge(p *Program, value []Interval, whole []bool, sides, order []int) *judge {
	j := &judge{program: p, value: value, whole: whole, sides: sides, order: order}
	j.slope = make([]Interval, len(p.Code)*len(sides))
	j.degree = make([]float64, len(j.slope))
	for n, i := range sides {
		j.slope[i*len(sides)+n], j.degree[i*len(sides)+n] = Only(1), 1
	}
	for _, i := range order {
		for side := range sides {
			j.degree[i*len(sides)+side] = j.degreeOf(p.Code[i], side)
		}
	}
	return j
}

// pass works the instructions for a box, and their slopes if they are asked for. False if they cannot be as the limits
// say; nil stands for no limits.
func (j *judge) pass(box []Interval, slopes bool, limit []Interval) bool {
	for n, i := range j.sides {
		j.value[i] = box[n]
	}
	for _, i := range j.order {
		v := j.work(j.program.Code[i])
		if limit != nil {
			if v = v.both(limit[i]); v.Low > v.High {
				return false
			}
		}
		j.value[i] = v
		for n := 0; slopes && n < len(j.sides); n++ {
			j.slope[i*len(j.sides)+n] = j.slopeOf(i, n)
		}
	}
	return true
}

// steep is the slopes of an instruction for a side.
func (j *judge) steep(i, side int) Interval { return j.slope[i*len(j.sides)+side] }

// work is the interval of an instruction, from those of its operands.
func (j *judge) work(in Instruction) Interval {
	v := j.value
	switch in.Op {
	case Literal:
		return Only(in.Value)
	case Add:
		return v[in.A].Plus(v[in.B])
	case Subtract:
		return v[in.A].Minus(v[in.B])
	case Multiply:
		return v[in.A].Times(v[in.B])
	case Divide:
		return v[in.A].Over(v[in.B])
	case Minimum:
		return v[in.A].Least(v[in.B])
	case Maximum:
		return v[in.A].Most(v[in.B])
	case SquareRoot:
		return v[in.A].Root()
	case Absolute:
		return v[in.A].Size()
	case Negate:
		return v[in.A].negated()
	case Floor:
		return Interval{math.Floor(v[in.A].Low), math.Floor(v[in.A].High)}
	case Ceiling:
		return Interval{math.Ceil(v[in.A].Low), math.Ceil(v[in.A].High)}
	case Index:
		return Interval{in.index(v[in.A].Low), in.index(v[in.A].High)}
	case Lookup:
		return j.lookup(in)
	}
	return j.decide(in)
}

// lookup is the interval of all figures of a table from one index to another.
func (j *judge) lookup(in Instruction) Interval {
	table, index := j.program.Tables[in.B], j.value[in.A]
	found := Only(table[int(index.Low)])
	for i := int(index.Low) + 1; float64(i) <= index.High; i++ {
		found = found.Either(Only(table[i]))
	}
	return found
}

// decide is the interval of a comparison, a connective or a choice.
func (j *judge) decide(in Instruction) Interval {
	a, b := j.value[in.A], j.value[in.B]
	switch in.Op {
	case Less:
		return ask(a.High < b.Low, a.Low >= b.High)
	case LessOrEqual:
		return ask(a.High <= b.Low, a.Low > b.High)
	case Equal:
		return ask(a.single() && b.single() && a.Low == b.Low, a.High < b.Low || a.Low > b.High)
	case And:
		return ask(a.Low != 0 && b.Low != 0, a.High == 0 || b.High == 0)
	case Or:
		return ask(a.Low != 0 || b.Low != 0, a.High == 0 && b.High == 0)
	case Not:
		return ask(a.High == 0, a.Low != 0)
	case Select:
		switch {
		case a.Low != 0:
			return b
		case a.High == 0:
			return j.value[in.C]
		}
		return b.Either(j.value[in.C])
	}
	panic("sheet: a program holds an operation that does not exist")
}
