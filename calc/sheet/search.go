package sheet

import (
	"math"
	"slices"
)

// mostWork is how many instructions and slopes are worked for one end of one range. What is not settled by then is told
// as wide as the boxes that are left: never too narrow.
const mostWork = 1 << 15

// near is how much of the size of a value does not count: a box that could move an end by no more is settled.
const near = 1.0 / (1 << 30)

// edge is how much of the size of a value lies at the edge of a condition. "More than 0" has no least number: what is
// found so near to 0 is told as 0.
const edge = 1.0 / (1 << 6)

// Doubt is the upper end of a truth that was found nowhere in its ranges, and that cannot be excluded.
const Doubt = 0.5

// A query asks for the least and the greatest of a value, where a truth holds.
type query struct {
	of    int  // the instruction of the value
	where int  // the instruction of the truth; -1: everywhere
	found bool // only what was found is told, where anything was: a sentence tells of numbers that there are
}

// A search looks for one end of a query by halving. It works a box, leaves out what cannot reach further than a number
// that was found already, sets each side along which the value only goes one way to its better end, and cuts the rest
// in two. Where a whole number, a truth or a choice changes within a box, that goes on until the change is found.
type search struct {
	*judge
	query
	up     bool       // the greatest is sought, and not the least
	ranges []Interval // by side
	best   float64    // the furthest found; of the least, its negative
	beyond float64    // the furthest that cannot be excluded, likewise
	size   float64    // the largest size of a number found
	queue  []box
	own    []Interval // by side: the slopes of the value
	slopes []Interval // by side: those of the truth where it is not settled
}

// A box is a part of the ranges still to be worked.
type box struct {
	sides []Interval
	reach float64 // no number of the box is further
}

func newSearch(p *part, box []Interval, up bool) *search {
	return &search{
		judge: newJudge(p.program, slices.Clone(p.value), p.whole, p.sides, p.order), query: p.query, up: up, ranges: box,
		own: make([]Interval, len(box)), slopes: make([]Interval, len(box)),
	}
}

// run looks for the end. False if the value is there nowhere.
func (s *search) run() (end float64, there bool) {
	s.best, s.beyond = math.Inf(-1), math.Inf(-1)
	if s.truth() {
		s.best = 0 // never true, unless it is found to be
		if !s.up {
			s.best = -1
		}
	}
	s.queue = append(s.queue, box{slices.Clone(s.ranges), math.Inf(1)})
	for work := 0; len(s.queue) > 0 && work < mostWork; work += len(s.order) * (2 + len(s.sides)) {
		b := s.queue[0]
		s.queue = s.queue[1:]
		s.settle(b)
	}
	for _, b := range s.queue {
		if !s.within(b.reach) {
			s.beyond = math.Max(s.beyond, b.reach)
		}
	}
	end = s.best
	told := s.found && s.best > math.Inf(-1)
	if s.beyond > end && (!told || s.beyond-end <= float64(s.size*edge)) {
		end = s.beyond
		if end == 1 && s.truth() {
			end = Doubt
		}
	}
	if math.Abs(end) < float64(s.size*(near*64)) {
		end = 0
	}
	if !s.up {
		end = 0 - end // never -0
	}
	return end, s.best > math.Inf(-1) || s.beyond > math.Inf(-1)
}

// settle works a box, and puts the halves of what is left of it at the end of the queue.
func (s *search) settle(b box) {
	if s.within(b.reach) || !s.judgeBox(b.sides) {
		return
	}
	b.reach = math.Min(b.reach, s.far())
	if s.within(b.reach) {
		return
	}
	cut, spread, open := s.turn(b.sides)
	middle := make([]Interval, len(b.sides))
	for n, side := range b.sides {
		middle[n] = Only(side.middle())
	}
	s.pass(middle, false, nil)
	if s.take() {
		b.reach = math.Min(b.reach, float64(s.far()+spread))
	}
	switch {
	case !open || s.within(b.reach):
	case cut < 0:
		s.beyond = math.Max(s.beyond, b.reach)
	default:
		at := middle[cut].Low
		for _, half := range []Interval{{b.sides[cut].Low, at}, {at, b.sides[cut].High}} {
			sides := slices.Clone(b.sides)
			sides[cut] = half
			s.queue = append(s.queue, box{sides, b.reach})
		}
	}
}

// truth says whether a truth is asked for, and everywhere.
func (s *search) truth() bool { return s.where < 0 && s.program.Code[s.of].Op.isTruth() }

// judgeBox works a box, of which it leaves what the truth of the query allows. What asks for a truth looks for where it
// is so, or where it is not, and leaves that. False if nothing is left.
func (s *search) judgeBox(sides []Interval) bool {
	s.pass(sides, true, nil)
	holds, asked, so := s.holds(), s.where, true
	for n := range sides {
		s.own[n], s.slopes[n] = s.steep(s.of, n), flat
		if holds.Low == 0 {
			s.slopes[n] = s.steep(s.where, n)
		}
	}
	if s.truth() {
		holds, asked, so = s.value[s.of], s.of, s.up
	}
	if holds.single() {
		return asked != s.where || holds.Low != 0
	}
	limit := slices.Repeat([]Interval{Anything}, len(s.program.Code))
	s.assume(asked, so, limit)
	for n, i := range s.sides {
		if sides[n] = sides[n].both(limit[i]); sides[n].Low > sides[n].High {
			return false
		}
	}
	if !s.pass(sides, true, limit) {
		return false
	}
	for n := 0; n < len(sides) && !s.truth(); n++ {
		s.own[n] = s.steep(s.of, n)
	}
	return true
}

// within says whether numbers that reach no further than this change nothing.
func (s *search) within(reach float64) bool {
	return reach <= float64(math.Max(s.best, s.beyond)+float64(s.size*near))
}

// holds is whether the truth of the query holds in the box that was worked.
func (s *search) holds() Interval {
	if s.where < 0 {
		return Only(1)
	}
	return s.value[s.where]
}

// far is how far the value goes in the box that was worked.
func (s *search) far() float64 {
	if !s.up {
		return -s.value[s.of].Low
	}
	return s.value[s.of].High
}

// take counts the one point that was worked among those found. False if the value is not there.
func (s *search) take() bool {
	holds, far := s.holds(), s.far()
	switch {
	case holds.Low != 0:
		s.best = math.Max(s.best, far)
	case holds.High != 0:
		s.beyond = math.Max(s.beyond, far)
	default:
		return false
	}
	if !math.IsInf(far, 0) {
		s.size = math.Max(s.size, math.Abs(far))
	}
	return true
}

// turn sets each side along which the value only goes one way, and the truth does not go the other, to its better end.
// Of the others it gives the one to cut, -1 where none can be, and how far they can take the value from the middle.
func (s *search) turn(sides []Interval) (cut int, spread float64, open bool) {
	cut = -1
	most := 0.0
	for n, side := range sides {
		p, g := s.own[n], s.slopes[n]
		if !s.up {
			p = p.negated()
		}
		switch {
		case side.single():
			continue
		case p.Low >= 0 && g.Low >= 0:
			sides[n] = Only(side.High)
			continue
		case p.High <= 0 && g.High <= 0:
			sides[n] = Only(side.Low)
			continue
		}
		open = true
		spread += product(math.Max(-p.Low, p.High), float64(side.width()/2))
		weight := float64(side.width() / s.ranges[n].width())
		if m := side.middle(); weight > most && side.Low < m && m < side.High {
			cut, most = n, weight
		}
	}
	return cut, spread, open
}

func (i Interval) width() float64 { return i.High - i.Low }

func (i Interval) middle() float64 { return float64(i.Low + float64(i.width()/2)) }
