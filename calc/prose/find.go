package prose

// Find gives the amounts of a text in their order.
func (l *Language) Find(text string) []Amount { return l.scan(text, nil) }

// A letGo is told that the text between two places is no amount, and why.
type letGo func(from, to int, why reason)

// scan looks through a text, gives its amounts and tells of what it lets go. Most words and numbers are passed over
// with one look.
func (l *Language) scan(text string, tell letGo) []Amount {
	var found []Amount
	for at := 0; at < len(text); {
		if byteClasses[text[at]] == 0 { // mostly the space between two words
			at++
			continue
		}
		to, why := l.candidate(text, at)
		through := to
		if why == taken {
			a, no := l.amount(text, at, reach{len(text), true})
			if no == taken {
				at = a.End
				found = l.put(text, found, signed(text, a))
				continue
			}
			why, through = no, max(to, a.End)
		}
		if tell != nil && why != asNothing {
			tell(at, through, why)
		}
		at = to
	}
	return found
}

// put adds an amount to those before it. The second end of a range with a unit at both ends goes to the first.
func (l *Language) put(text string, found []Amount, a Amount) []Amount {
	last := len(found) - 1
	if last >= 0 && l.joins(text, found[last], a) {
		a.Start, a.Low, a.LowStep = found[last].Start, found[last].Low, found[last].LowStep
		a.Digits = a.Digits && found[last].Digits
		found = found[:last]
	}
	return append(found, a)
}

// signed is an amount with the minus right before it. Between letters or digits the sign is a dash.
func signed(text string, a Amount) Amount {
	for _, minus := range []string{"-", "−"} {
		at := a.Start - len(minus)
		if at >= 0 && text[at:a.Start] == minus && a.Low == a.High && isDigit(text[a.Start]) && opens(text[:at]) {
			a.Start, a.Low, a.High = at, -a.Low, -a.High
		}
	}
	return a
}

// joins says whether two amounts are the ends of a range whose unit is at both: "3 oz to 4 oz".
func (l *Language) joins(text string, a, b Amount) bool {
	if a.Low != a.High || b.Low != b.High || a.Low >= b.Low || !a.Unit.Same(b.Unit) {
		return false
	}
	t := next(text, a.End)
	return next(text, t.to).from == b.Start && (t.isDash() || t.in(l.to))
}

// findAny finds amounts as the language reads them, or else as another does. Another counts as well where its first
// amount has all of that of the language in it and more, since authors keep the words of a source: "8 to 12 in".
func (l *Language) findAny(text string) (best []Amount) {
	for other := range l.first() {
		found := other.Find(text)
		if len(found) > 0 && (len(best) == 0 || found[0].isMoreThan(best[0])) {
			best = found
		}
	}
	return best
}

// isMoreThan says whether an amount has another in it, and more.
func (a Amount) isMoreThan(b Amount) bool {
	return a.Start <= b.Start && a.End >= b.End && a.End-a.Start > b.End-b.Start
}

// Measure reads the first amount of a text, be it the name of a thing as well: "a 5-gallon bucket". The words of other
// languages count as in findAny.
func (l *Language) Measure(text string) (best Amount, found bool) {
	for other := range l.first() {
		if a, ok := other.measure(text); ok && (!found || a.isMoreThan(best)) {
			best, found = a, true
		}
	}
	return best, found
}

func (l *Language) measure(text string) (Amount, bool) {
	if found := l.Find(text); len(found) > 0 {
		return found[0], true
	}
	return l.measureOfThing(text)
}

// measureOfThing reads the first number of a text with its unit, whatever they are a part of.
func (l *Language) measureOfThing(text string) (Amount, bool) {
	for t := next(text, 0); t.kind != end; t = next(text, t.to) {
		if !l.isNumber(t) {
			continue
		}
		n, ok := l.number(text, t.from)
		if !ok {
			return Amount{}, false
		}
		p, _ := l.phrase(text, n.to, false, reach{len(text), true})
		if p.head == nil || p.to <= n.to {
			return Amount{}, false
		}
		return amountOf(t.from, n, n, p), true
	}
	return Amount{}, false
}

// isNumber says whether a token is a number by itself, and more than nothing.
func (l *Language) isNumber(t token) bool {
	return t.kind == digits || t.kind == part || t.kind == word && l.starts.has(t.text) && l.numbers[t.lower()] > 0
}
