package drawing

// forms draws for each of the materials that are compared the shares of its nitrogen by form, and under them from the
// middle to the left the lime that makes up for its acid, or to the right the lime that it works like.
func forms() *Rule {
	const top, group, middle = 26, 66, 160.0
	groups := []string{"first", "second", "third"}
	shares := []struct {
		name string
		look Look
	}{{"nitrate", Level}, {"ammonium", Slant}, {"urea", Dots}}
	var takes []string
	for _, g := range groups {
		for _, of := range []string{"nitrate", "ammonium", "urea", "lime", "liming"} {
			takes = append(takes, g+"-"+of)
		}
	}
	p := newPen("material-compare", 320, top+3*group+20, takes...)
	p.Groups, p.Rows = groups, []string{"nitrate", "ammonium", "urea", "lime", "liming"}
	for i, share := range shares {
		left := 108 * i
		p.key(share.look, float64(left)+1, 4)
		p.label(Label{X: left + 25, Y: 14, Word: share.name})
	}
	p.label(Label{X: 1, Y: top + 3*group + 13, Word: "acid", Look: Small})
	p.label(Label{X: 319, Y: top + 3*group + 13, Word: "limes", Look: Small, End: true})
	var limes []Place
	for _, g := range groups {
		limes = append(limes, p.or(p.take(g+"-lime")).High, p.or(p.take(g+"-liming")).High)
	}
	half := p.over(p.n(middle-1), p.most(limes...))
	for i, g := range groups {
		y := top + group*i
		p.ruled(Ruled, 0, float64(y), 320, float64(y))
		p.label(Label{X: 1, Y: y + 15, Value: g, Group: i + 1, Look: Named})
		p.label(Label{X: 1, Y: y + 48, Value: g + "-lime", Group: i + 1, Look: Small})
		p.label(Label{X: 319, Y: y + 48, Value: g + "-liming", Group: i + 1, Look: Small, End: true})
		before := p.n(1)
		for _, share := range shares {
			after := p.add(before, p.times(p.take(g+"-"+share.name).High, p.n(3.18)))
			p.box(share.look, p.less(before, after), frame{before, p.n(float64(y) + 21), after, p.n(float64(y) + 34)})
			before = after
		}
		bar := func(look Look, s Span, to func(Place) Place) {
			for _, one := range []struct {
				look      Look
				end, when Place
			}{{Band, s.High, p.less(s.Low, s.High)}, {look, s.Low, p.less(p.n(0), s.Low)}} {
				x, at := to(one.end), p.n(middle)
				p.box(one.look, one.when, frame{p.least(x, at), p.n(float64(y) + 53), p.most(x, at), p.n(float64(y) + 61)})
			}
		}
		bar(Cross, p.take(g+"-lime"), func(v Place) Place { return p.sub(p.n(middle), p.times(v, half)) })
		bar(Edge, p.take(g+"-liming"), func(v Place) Place { return p.add(p.n(middle), p.times(v, half)) })
		p.ruled(Strong, middle, float64(y)+50, middle, float64(y)+64)
	}
	return p.Rule
}
