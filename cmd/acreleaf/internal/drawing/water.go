package drawing

// water draws the pounds that water brings by its inches: a line at the strength of the water, or a wedge between two,
// and on it the inches of the season.
func water() *Rule {
	const west, east, north, south = 44.0, 312.0, 82.0, 184.0
	p := newPen("water-nitrogen", 320, 222, "water", "per-inch", "nitrogen")
	p.Also = map[string]string{"water": "mm"}
	p.Rows = []string{"water", "per-inch", "nitrogen"}
	p.ruled(Strong, 1, 10, 19, 10)
	p.label(Label{X: 26, Y: 15, Word: "inch"})
	p.label(Label{X: 319, Y: 31, Value: "per-inch", End: true})
	p.fixed(func() { p.circle(Spot, Always, point{p.n(10), p.n(46)}, p.n(5)) })
	p.label(Label{X: 26, Y: 51, Word: "season", Look: Strong})
	p.label(Label{X: 319, Y: 51, Value: "nitrogen", End: true, Look: Strong})
	p.label(Label{X: 1, Y: 70, Word: "pounds", Look: Small})
	p.label(Label{X: 319, Y: 217, Word: "inches", Look: Small, End: true})
	for i := range 5 {
		at := south - (south-north)/4*float64(i)
		p.ruled(Ruled, west, at, east, at)
	}
	p.ruled(Strong, west, south, east, south)
	p.ruled(Strong, west, north, west, south)

	inches, each, pounds := p.take("water"), p.take("per-inch"), p.take("nitrogen")
	wide := p.round(p.times(inches.High, p.n(1.1)))
	high := p.round(p.times(each.High, wide))
	across, up := p.over(p.n(east-west), wide), p.over(p.n(south-north), high)
	x := func(v Place) Place { return p.add(p.n(west), p.times(v, across)) }
	y := func(v Place) Place { return p.sub(p.n(south), p.times(v, up)) }
	for i := 0.0; i <= 2; i++ {
		part := p.n(i / 2)
		look, at := Middle, x(p.times(wide, part))
		if i == 2 { // not over the edge
			look, at = Ends, p.n(319)
		}
		p.text(look, Always, point{at, p.n(south + 14)}, p.times(wide, part), "")
		p.text(Ends, Always, point{p.n(west - 5), p.add(y(p.times(high, part)), p.n(4))}, p.times(high, part), "")
	}
	least, most := p.times(each.Low, wide), p.times(each.High, wide)
	p.put(Shape{Tag: "polygon", Look: Band, When: p.less(least, most), Moves: []Move{
		one("points", p.n(west), p.n(south), p.n(east), y(least), p.n(east), y(most))}})
	for _, end := range []Place{least, most} {
		p.line(Strong, Always, frame{p.n(west), p.n(south), p.n(east), y(end)})
	}
	ranged := p.add(p.less(inches.Low, inches.High), p.less(pounds.Low, pounds.High))
	single := p.sub(p.n(1), ranged)
	p.line(Limit, single, frame{x(inches.High), y(pounds.High), x(inches.High), p.n(south)})
	p.line(Limit, single, frame{p.n(west), y(pounds.High), x(inches.High), y(pounds.High)})
	const room = 2 // around the least and the most, so that a range of one of them alone can be seen
	p.box(Maybe, ranged, frame{p.sub(x(inches.Low), p.n(room)), p.sub(y(pounds.High), p.n(room)),
		p.add(x(inches.High), p.n(room)), p.add(y(pounds.Low), p.n(room))})
	p.circle(Spot, single, point{x(inches.High), y(pounds.High)}, p.n(5))
	return p.Rule
}
