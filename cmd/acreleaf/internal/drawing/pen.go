package drawing

import "slices"

// A pen writes a rule.
type pen struct {
	*Rule
	literals map[float64]Place
}

func newPen(of string, width, height int, takes ...string) *pen {
	return &pen{&Rule{Of: of, Width: width, Height: height, Takes: takes}, map[float64]Place{}}
}

// take is a value of the calculation.
func (p *pen) take(name string) Span {
	i := Place(slices.Index(p.Takes, name) * inSpan)
	if i < 0 {
		panic("the picture of " + p.Of + " does not take " + name)
	}
	return Span{i, i + 1, i + 2}
}

func (p *pen) step(s Step) Place {
	p.Steps = append(p.Steps, s)
	return Place(len(p.Takes)*inSpan + len(p.Steps) - 1)
}

// n is a number.
func (p *pen) n(v float64) Place {
	at, known := p.literals[v]
	if !known {
		at = p.step(Step{Op: Literal, Value: v})
		p.literals[v] = at
	}
	return at
}

// each works an operation on a list from the left.
func (p *pen) each(op Op, list []Place) Place {
	sum := list[0]
	for _, next := range list[1:] {
		sum = p.step(Step{Op: op, Takes: []Place{sum, next}})
	}
	return sum
}

func (p *pen) add(list ...Place) Place  { return p.each(Add, list) }
func (p *pen) most(list ...Place) Place { return p.each(Most, list) }
func (p *pen) least(list ...Place) Place {
	return p.each(Least, list)
}
func (p *pen) sub(a, b Place) Place     { return p.each(Subtract, []Place{a, b}) }
func (p *pen) times(a, b Place) Place   { return p.each(Multiply, []Place{a, b}) }
func (p *pen) over(a, b Place) Place    { return p.each(Divide, []Place{a, b}) }
func (p *pen) less(a, b Place) Place    { return p.each(Less, []Place{a, b}) }
func (p *pen) month(day, n Place) Place { return p.each(Month, []Place{day, n}) }
func (p *pen) round(a Place) Place      { return p.step(Step{Op: Round, Takes: []Place{a}}) }
func (p *pen) whole(a Place) Place      { return p.step(Step{Op: Whole, Takes: []Place{a}}) }

// or is a value, or nothing where it is left out.
func (p *pen) or(s Span) Span {
	zero := p.n(0)
	end := func(a Place) Place { return p.each(Else, []Place{a, zero}) }
	return Span{end(s.Low), end(s.High), s.Sure}
}

// plus is the sum of two values, end by end.
func (p *pen) plus(a, b Span) Span { return Span{p.add(a.Low, b.Low), p.add(a.High, b.High), a.Sure} }

// scaled are the ends of a value on the picture.
func (p *pen) scaled(s Span, from, by Place) Span {
	on := func(a Place) Place { return p.add(from, p.times(a, by)) }
	return Span{on(s.Low), on(s.High), s.Sure}
}

func (p *pen) put(s Shape) { p.Shapes = append(p.Shapes, s) }

func one(name string, at ...Place) Move { return Move{name, at} }

// A frame is two corners: of a rectangle, or the ends of a line.
type frame struct{ left, top, right, bottom Place }

func (p *pen) box(look Look, when Place, f frame) {
	p.put(Shape{Tag: "rect", Look: look, When: when, Moves: []Move{one("x", f.left), one("y", f.top),
		one("width", p.most(p.n(0), p.sub(f.right, f.left))), one("height", p.most(p.n(0), p.sub(f.bottom, f.top)))}})
}

func (p *pen) line(look Look, when Place, f frame) {
	p.put(Shape{Tag: "line", Look: look, When: when,
		Moves: []Move{one("x1", f.left), one("y1", f.top), one("x2", f.right), one("y2", f.bottom)}})
}

// A point is a place across and a place down.
type point struct{ x, y Place }

func (p *pen) circle(look Look, when Place, at point, r Place, more ...Move) {
	p.put(Shape{Tag: "circle", Look: look, When: when,
		Moves: append([]Move{one("cx", at.x), one("cy", at.y), one("r", r)}, more...)})
}

// text shows a number with a word after it, and name the month of a day.
func (p *pen) text(look Look, when Place, at point, number Place, word string) {
	p.put(Shape{Tag: "text", Look: look, When: when, Moves: []Move{one("x", at.x), one("y", at.y)}, Text: number,
		Word: word})
}

func (p *pen) name(when Place, at point, day Place) {
	p.put(Shape{Tag: "text", Look: Small, When: when, Moves: []Move{one("x", at.x), one("y", at.y)}, Text: day,
		Month: true})
}

// fixed has shapes drawn that do not follow the numbers.
func (p *pen) fixed(draw func()) {
	before := p.Shapes
	p.Shapes = nil
	draw()
	p.Fixed = append(p.Fixed, p.Shapes...)
	p.Shapes = before
}

// ruled is a line of the ledger.
func (p *pen) ruled(look Look, x1, y1, x2, y2 float64) {
	p.fixed(func() { p.line(look, Always, frame{p.n(x1), p.n(y1), p.n(x2), p.n(y2)}) })
}

// key is a small box that shows what a look means.
func (p *pen) key(look Look, x, y float64) {
	const wide, high = 18, 11
	p.fixed(func() { p.box(look, Always, frame{p.n(x), p.n(y), p.n(x + wide), p.n(y + high)}) })
}

func (p *pen) label(l Label) { p.Labels = append(p.Labels, l) }
