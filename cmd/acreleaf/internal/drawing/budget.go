package drawing

// budget draws the need as a bar across, what is there under it from left to right as far as it goes, and what is left
// to buy from there to the need; or what is over, beyond it. A range is a band from its least to its most.
func budget() *Rule {
	const row, wide = 34.0, 318.0
	p := newPen("season-budget", 320, 6*34, "fed-need", "in-reach", "water", "organic", "credits", "apply", "surplus")
	p.Also = map[string]string{"water": "kg N/ha fed"}
	p.Rows = []string{"fed-need", "in-reach", "water", "organic", "apply", "surplus"}
	for i, word := range []string{"need", "soil", "water", "organic", "buy", "over"} {
		top := row * float64(i)
		p.label(Label{X: 1, Y: int(top) + 14, Word: word, Look: looks(word == "buy", Strong)})
		p.label(Label{X: 319, Y: int(top) + 14, Value: p.Rows[i], End: true, Look: looks(word == "buy", Strong)})
		p.ruled(Ruled, 0, top+row, 320, top+row)
	}
	need, credits := p.take("fed-need"), p.take("credits")
	left := p.n(1)
	by := p.over(p.n(wide), p.most(need.High, credits.High))
	bar := func(i int, look Look, some Place, from, to Span) {
		top, bottom := p.n(row*float64(i)+19), p.n(row*float64(i)+30)
		ranged := p.add(p.less(from.Low, from.High), p.less(to.Low, to.High))
		p.box(Band, p.times(ranged, p.less(p.n(0), some)), frame{from.Low, top, to.High, bottom})
		p.box(look, p.less(from.High, to.Low), frame{from.High, top, to.Low, bottom})
	}
	zero := Span{p.n(0), p.n(0), left}
	at := func(s Span) Span { return p.scaled(s, left, by) }
	bar(0, Ink, need.High, at(zero), at(need))
	there := zero
	for i, credit := range []struct {
		name string
		look Look
	}{{"in-reach", Slant}, {"water", Level}, {"organic", Dots}} {
		own := p.or(p.take(credit.name))
		next := p.plus(there, own)
		// Of a credit that is a range the bar begins where those before it end at the least.
		from := at(Span{there.Low, there.Low, left})
		bar(i+1, credit.look, own.High, from, at(next))
		there = next
	}
	apply, surplus := p.take("apply"), p.take("surplus")
	// The least begins after the most of what is before it, and the most after the least.
	after := func(s, more Span) Span { return Span{p.add(s.High, more.Low), p.add(s.Low, more.High), left} }
	bar(4, Spot, apply.High, at(credits), at(after(credits, apply)))
	bar(5, Cross, surplus.High, at(need), at(after(need, surplus)))
	end := at(need)
	for i := 1.0; i <= 5; i++ { // beside the bars under it, so that it crosses no number
		top, bottom := p.n(row*i+17), p.n(row*i+32)
		for _, x := range []Place{end.Low, end.High} {
			p.line(Limit, p.less(p.n(0), need.High), frame{x, top, x, bottom})
		}
	}
	return p.Rule
}

// looks is a look, where it is asked for.
func looks(asked bool, look Look) Look {
	if asked {
		return look
	}
	return ""
}
