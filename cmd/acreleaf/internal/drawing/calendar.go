package drawing

import "strconv"

// Where the calendar of feeds is on its picture.
const (
	ground  = 150.0 // the line that the bars stand on
	highest = 96.0  // the height of the cap, or of what goes over it
	numbers = 163   // the line of the numbers of the feeds
	months  = 178.0
)

// calendar draws each feed as a bar on its day, and the most for one feed as a line across. Where the days are not
// known for sure a band reaches over all that they may be.
func calendar() *Rule {
	p := newPen("feed-schedule", 320, 202, "first", "last", "last-date", "feeds", "each", "limit",
		"date-1", "date-2", "date-3", "date-4", "date-5", "date-6", "date-7", "date-8")
	p.Rows = append([]string{"feeds", "each", "limit"}, p.Takes[6:]...)
	p.key(Spot, 1, 5)
	p.label(Label{X: 26, Y: 15, Word: "each"})
	p.label(Label{X: 319, Y: 15, Value: "each", End: true})
	p.ruled(Limit, 1, 30, 19, 30)
	p.label(Label{X: 26, Y: 35, Word: "cap"})
	p.label(Label{X: 319, Y: 35, Value: "limit", End: true})
	p.label(Label{X: 1, Y: 197, Value: "first", Look: Small})
	p.label(Label{X: 319, Y: 197, Value: "last", Look: Small, End: true})
	p.ruled(Strong, 0, ground, 320, ground)

	first, last := p.take("first").Low, p.take("last").High
	span := p.sub(last, first)
	room := p.most(p.n(3), p.times(span, p.n(0.04)))
	start, end := p.sub(first, room), p.add(last, room)
	by := p.over(p.n(304), p.sub(end, start))
	x := func(day Place) Place { return p.add(p.n(8), p.times(p.sub(day, start), by)) }
	p.months(start, end, x)

	each, limit := p.take("each"), p.take("limit")
	up := p.over(p.n(highest), p.most(limit.High, each.High))
	y := func(v Place) Place { return p.sub(p.n(ground), p.times(v, up)) }
	gap := p.over(p.times(span, by), p.most(p.n(1), p.sub(p.take("feeds").High, p.n(1))))
	half := p.most(p.n(1), p.least(p.n(6), p.times(gap, p.n(0.4))))
	for i := 1; i <= 8; i++ {
		day := p.take("date-" + strconv.Itoa(i))
		left, right := p.sub(x(day.Low), half), p.add(x(day.High), half)
		sure := p.times(day.Sure, p.sub(p.n(1), p.less(day.Low, day.High)))
		known := p.times(sure, p.sub(p.n(1), p.less(each.Low, each.High)))
		p.box(Band, p.sub(p.n(1), known), frame{left, y(each.High), right, p.n(ground)})
		p.box(Spot, sure, frame{left, y(each.Low), right, p.n(ground)})
		middle := p.times(p.add(x(day.Low), x(day.High)), p.n(0.5))
		p.text(Middle, p.less(p.n(9), gap), point{middle, p.n(numbers)}, p.n(float64(i)), "")
	}
	p.box(Band, p.less(limit.Low, limit.High), frame{p.n(0), y(limit.High), p.n(320), y(limit.Low)})
	for _, at := range []Place{limit.Low, limit.High} {
		p.line(Limit, Always, frame{p.n(0), y(at), p.n(320), y(at)})
	}
	p.text(Middle, p.less(p.n(8), p.take("feeds").High), point{p.n(160), p.n(197)}, Always, "eight")
	return p.Rule
}

// months marks where months begin; of many years, every so many.
func (p *pen) months(start, end Place, x func(Place) Place) {
	every := p.add(p.n(1), p.whole(p.over(p.sub(end, start), p.n(370))))
	for i := 1.0; i <= 12; i++ {
		day := p.month(start, p.times(every, p.n(i)))
		inside := p.less(day, end)
		p.line(Ruled, inside, frame{x(day), p.n(ground), x(day), p.n(months)})
		p.name(inside, point{p.add(x(day), p.n(2)), p.n(months)}, day)
	}
}
