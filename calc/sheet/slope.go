package sheet

import "math"

// The slopes of what does not change, of what never goes down, and of what never goes up.
var (
	flat    = Interval{0, 0}
	rising  = Interval{0, math.Inf(1)}
	falling = Interval{math.Inf(-1), 0}
)

// times is the product of slopes. They are of numbers, so an end without a limit is one that no slope reaches, and
// nothing times it is nothing.
func (i Interval) times(j Interval) Interval {
	return among(product(i.Low, j.Low), product(i.Low, j.High), product(i.High, j.Low), product(i.High, j.High))
}

func product(a, b float64) float64 {
	if a == 0 || b == 0 {
		return 0
	}
	return float64(a * b)
}

func (i Interval) negated() Interval { return Interval{-i.High, -i.Low} }

// jump is the slopes of what moves at once, and the same way, where a value with these slopes passes it.
func (i Interval) jump() Interval {
	switch {
	case i == flat:
		return flat
	case i.Low >= 0:
		return rising
	case i.High <= 0:
		return falling
	}
	return Anything
}

// degreeOf is the power of a side that an instruction is a multiple of; NaN if it is of none. What follows from a
// side by its power 0 stays the same when the side changes: of the quotient of two amounts for an acre, the acre is
// gone.
func (j *judge) degreeOf(in Instruction, side int) float64 {
	still, of := true, [3]float64{}
	for n, from := range in.operands() {
		of[n] = j.degree[from*len(j.sides)+side]
		still = still && of[n] == 0
	}
	switch {
	case still:
		return 0
	case in.Op == Multiply:
		return of[0] + of[1]
	case in.Op == Divide:
		return of[0] - of[1]
	case in.Op == Select && j.value[in.A].single():
		if j.value[in.A].Low != 0 {
			return of[1]
		}
		return of[2]
	}
	return math.NaN()
}

// slopeOf is the slopes of an instruction for a side, from those of its operands. Its interval is worked already.
func (j *judge) slopeOf(i, side int) Interval {
	in := j.program.Code[i]
	p, x := j.steep(in.A, side), j.value[in.A]
	if told, is := j.told(i, side); is {
		return told
	}
	switch {
	case j.value[i].single() || j.degree[i*len(j.sides)+side] == 0 || j.still(in, side):
		return flat
	case in.Op.Operands() > 1:
		return j.slopeOfTwo(i, side)
	}
	switch in.Op {
	case Negate, Not:
		return p.negated()
	case SquareRoot:
		return p.times(Interval{1 / float64(2*math.Sqrt(x.High)), 1 / float64(2*math.Sqrt(math.Max(0, x.Low)))})
	case Absolute:
		switch {
		case x.Low >= 0:
			return p
		case x.High <= 0:
			return p.negated()
		}
		return p.Either(p.negated())
	case Floor, Ceiling, Index:
		return p.jump()
	}
	return Anything
}

// told is the slopes of an instruction of which there is a trend.
func (j *judge) told(i, side int) (all Interval, is bool) {
	for _, t := range j.program.Trends {
		if t.Of != i {
			continue
		}
		is = true
		if one := j.steep(t.From, side).jump(); t.Up {
			all = all.Plus(one)
		} else {
			all = all.Minus(one)
		}
	}
	return all, is
}

// still says whether no operand changes with a side.
func (j *judge) still(in Instruction, side int) bool {
	for _, from := range in.operands() {
		if j.steep(from, side) != flat {
			return false
		}
	}
	return true
}

// slopeOfTwo is the slopes of an instruction with two operands or three.
func (j *judge) slopeOfTwo(i, side int) Interval {
	in := j.program.Code[i]
	x, y, p, q := j.value[in.A], j.value[in.B], j.steep(in.A, side), j.steep(in.B, side)
	switch in.Op {
	case Add:
		return p.Plus(q)
	case Subtract:
		return p.Minus(q)
	case Multiply:
		return x.times(q).Plus(y.times(p))
	case Divide:
		return p.Minus(j.value[i].times(q)).Over(y)
	case Less, LessOrEqual:
		return q.Minus(p).jump()
	case Equal:
		if p == q && p.single() {
			return flat // the two stay as far apart as they are
		}
	case Minimum:
		return oneOf(p, q, x.High <= y.Low, y.High <= x.Low)
	case Maximum:
		return oneOf(p, q, x.Low >= y.High, y.Low >= x.High)
	case And:
		return oneOf(p, q, y.Low != 0, x.Low != 0)
	case Or:
		return oneOf(p, q, y.High == 0, x.High == 0)
	case Select:
		return j.slopeOfChoice(in, side)
	}
	return Anything
}

// oneOf is the slopes of a value that is one of two, surely the first, surely the second, or now this and now that.
func oneOf(p, q Interval, first, second bool) Interval {
	switch {
	case first:
		return p
	case second:
		return q
	}
	return p.Either(q)
}

func (j *judge) slopeOfChoice(in Instruction, side int) Interval {
	asked := j.value[in.A]
	p, q := j.steep(in.B, side), j.steep(in.C, side)
	if asked.single() {
		return oneOf(p, q, asked.Low != 0, asked.Low == 0)
	}
	return p.Either(q).Plus(j.steep(in.A, side).times(j.value[in.B].Minus(j.value[in.C])))
}
