package drawing

// roots draws the wetted circle over the root zone, seen from above and to scale: each ruled another way, so that what
// they share is crossed.
func roots() *Rule {
	const middle = 86.0
	p := newPen("root-share", 320, 274, "wetted", "root", "offset", "share")
	p.Also = map[string]string{"wetted": "m", "root": "m", "offset": "m"}
	p.Rows = p.Takes
	for i, key := range []struct {
		look        Look
		word, value string
	}{{Back, "wetted", "wetted"}, {Slant, "roots", "root"}, {"", "trunk-to-emitter", "offset"}, {Cross, "both", "share"}} {
		top := 198 + 19*i
		if key.look != "" {
			p.key(key.look, 1, float64(top)+4)
		}
		p.label(Label{X: 30, Y: top + 14, Word: key.word})
		p.label(Label{X: 319, Y: top + 14, Value: key.value, End: true})
	}
	p.fixed(func() { p.way(p.n(5), p.n(246), p.n(16)) })

	root, offset := p.take("root"), p.take("offset")
	two := p.n(2)
	reach := Span{p.over(p.take("wetted").Low, two), p.over(p.take("wetted").High, two), root.Sure}
	left := p.most(root.High, p.sub(reach.High, offset.Low))
	right := p.most(root.High, p.add(offset.High, reach.High))
	across := p.add(left, right)
	by := p.least(p.over(p.n(312), across), p.over(p.n(82), p.most(root.High, reach.High)))
	trunk := p.add(p.n(160), p.times(p.over(p.sub(left, right), two), by))
	at := func(far Place) Place { return p.add(trunk, p.times(far, by)) }

	p.disc(Slant, point{trunk, p.n(middle)}, root, by)
	p.disc(Back, point{at(offset.Low), p.n(middle)}, reach, by)
	p.circle(Maybe, p.less(offset.Low, offset.High), point{at(offset.High), p.n(middle)}, p.times(reach.High, by))
	p.way(trunk, p.n(middle), at(offset.Low))

	long := p.round(p.over(across, p.n(8)))
	end := p.add(p.n(1), p.times(long, by))
	p.line(Strong, Always, frame{p.n(1), p.n(188), end, p.n(188)})
	for _, x := range []Place{p.n(1), end} {
		p.line(Strong, p.less(p.n(0), across), frame{x, p.n(184), x, p.n(192)})
	}
	p.text(Small, Always, point{p.add(end, p.n(6)), p.n(192)}, long, "feet")
	return p.Rule
}

// disc is a circle with the least and the most of its radius.
func (p *pen) disc(look Look, at point, radius Span, by Place) {
	low, high := p.times(radius.Low, by), p.times(radius.High, by)
	ranged := p.less(low, high)
	p.circle(look, Always, at, low)
	p.circle(Ring, ranged, at, p.over(p.add(low, high), p.n(2)), one("stroke-width", p.sub(high, low)))
	p.circle(Maybe, ranged, at, high)
	p.circle(Edge, Always, at, low)
}

// way is the line from the trunk, a disc, to the emitter, a square.
func (p *pen) way(from, y, to Place) {
	const disc, square = 4, 4
	p.line(Strong, Always, frame{from, y, to, y})
	p.circle(Ink, Always, point{from, y}, p.n(disc))
	p.box(Spot, Always, frame{p.sub(to, p.n(square)), p.sub(y, p.n(square)),
		p.add(to, p.n(square)), p.add(y, p.n(square))})
}
