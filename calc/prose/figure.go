package prose

import (
	"acreleaf/calc/unit"
)

// A Figure is a number that a text states on purpose, with what follows it: "48 lb/ac" and " of nitrogen".
type Figure struct {
	Amount
	By   unit.Factor // from the figure's unit to the wanted one
	Text string      // the text, with what belongs to it of the rest
	Fits bool        // its unit measures what is wanted, and no other unit follows
}

// ReadFigure reads a figure in the light of the unit that is wanted. Its unit may leave the substance out, and may
// be in the words after it: "48" and " pounds an acre". A decimal comma is of the language of the text. The error is
// that of unit.ParseRange.
func (l *Language) ReadFigure(text, rest string, wanted unit.Unit) (Figure, error) {
	r, err := l.Reading(text, rest)
	if err != nil {
		return Figure{}, err
	}
	return r.In(wanted), nil
}

// A Reading is a figure as it is read before it is known which unit is wanted: one figure is compared with many.
type Reading struct {
	language   *Language
	text, rest string
	alone      Figure
	longer     Amount // with what follows, if it
	goesOn     bool
}

// Reading reads a figure as ReadFigure does.
func (l *Language) Reading(text, rest string) (Reading, error) {
	r := Reading{language: l, text: text, rest: rest}
	var err error
	if r.alone, err = l.readFigure(text); err == nil {
		r.longer, r.goesOn = l.longest(text, rest, false)
	}
	return r, err
}

// In is the figure in the light of the unit that is wanted.
func (r Reading) In(wanted unit.Unit) Figure {
	l, text, rest, f, longer, goesOn := r.language, r.text, r.rest, r.alone, r.longer, r.goesOn
	by, alone := Convert(f.Unit, wanted)
	if goesOn && alone && l.isOfOther(f.Unit, longer.Unit, wanted, (text + rest)[longer.End:]) {
		goesOn = false
	}
	if goesOn {
		if more, ok := Convert(longer.Unit, wanted); ok {
			return f.with(longer, more, text, rest)
		}
	}
	if !alone {
		if wide, ok := l.longest(text, rest, true); ok {
			if more, ok := Convert(wide.Unit, wanted); ok {
				return f.with(wide, more, text, rest)
			}
		}
	}
	f.By, f.Text, f.Fits = by, text, alone && !goesOn
	if goesOn {
		f.Text = upTo(text, rest, longer)
	}
	return f
}

// Convert gives the factor between two units as prose uses them, where nitrate-nitrogen may be told as nitrogen and no
// more: "12 ppm (as N)". It is false when one cannot be meant by the other: nitrogen as ammonium is not nitrogen as
// nitrate.
func Convert(from, wanted unit.Unit) (unit.Factor, bool) {
	if by, ok := from.Meant(wanted); ok {
		return by, ok
	}
	return from.MeantPlainly(wanted)
}

// OtherUnit says whether words that belong to a figure make it one of another unit than is wanted, and gives the figure
// with them: "48 lb/ac" and "of nitrate", where nitrogen is wanted.
func (l *Language) OtherUnit(text, words string, wanted unit.Unit) (whole string, is bool) {
	if text == "" || words == "" {
		return "", false
	}
	longer, goesOn := l.longest(text, words, false)
	if !goesOn {
		return "", false
	}
	if _, ok := Convert(longer.Unit, wanted); ok {
		return "", false
	}
	alone, err := l.readFigure(text)
	if err != nil || l.isOfOther(alone.Unit, longer.Unit, wanted, (text + words)[longer.End:]) {
		return "", false
	}
	return upTo(text, words, longer), true
}

// with is the figure with the unit of a longer reading.
func (f Figure) with(longer Amount, by unit.Factor, text, rest string) Figure {
	longer.Digits = f.Digits
	return Figure{Amount: longer, By: by, Text: upTo(text, rest, longer), Fits: true}
}

// upTo is a text with what belongs to an amount of the rest, in one line.
func upTo(text, rest string, a Amount) string {
	return oneLine((text + rest)[:a.End])
}

// isOfOther says whether the words after a figure are of something else: "1.26 pounds for each pound" of a plain
// ratio, and a substance where none is wanted.
func (l *Language) isOfOther(alone, longer, wanted unit.Unit, after string) bool {
	if wanted.String() == "" {
		return longer.Dimension() == ofPound.Dimension() && l.hasPound(after)
	}
	bare := wanted.Dimension().Bare()
	return alone.String() != "" && bare == wanted.Dimension() && longer.Dimension().Bare() == alone.Dimension().Bare()
}

// hasPound finds the second pound of a ratio of two.
func (l *Language) hasPound(text string) bool {
	for t := next(text, 0); t.kind != end; t = next(text, t.to) {
		for other := range l.first() {
			if t.text == pound.name || other.one[t.text] == pound {
				return true
			}
		}
	}
	return false
}

var ofPound = unit.MustParse(pound.name)

// ReadRange reads a text that is an amount and nothing else, in digits or in words: "136 lb N", "18 pounds of
// nitrogen", "six inches". The error is that of unit.ParseRange.
func (l *Language) ReadRange(text string) (unit.Range, error) {
	f, err := l.readFigure(text)
	return unit.Range{Low: f.Low, High: f.High, Unit: f.Unit}, err
}

// readFigure reads a text as a quantity or a range, and if it is none as an amount in words. A decimal comma in a
// language that has none is the error of the quantity, whatever else is there.
func (l *Language) readFigure(text string) (Figure, error) {
	low, high, u, err := unit.ParseNumbers(l.PointDecimals(text))
	if err == nil {
		return Figure{Amount: Amount{Low: low.Value, High: high.Value, LowStep: low.Step, HighStep: high.Step, Unit: u,
			End: len(text), Digits: low.Digits && high.Digits}}, nil
	}
	if l.MisplacesComma(text) {
		return Figure{}, err
	}
	for _, read := range []func(*Language, string) (Amount, bool){(*Language).read, (*Language).readTime} {
		for other := range l.first() {
			if a, ok := read(other, text); ok {
				return Figure{Amount: a}, nil
			}
		}
	}
	return Figure{}, err
}

// readTime reads a time alone, "two hours". In a sentence it is no amount of the trade.
func (l *Language) readTime(text string) (Amount, bool) {
	n, ok := l.number(text, 0)
	if !ok {
		return Amount{}, false
	}
	s := l.timeOf(text, n.to)
	if after := next(text, n.to); s == nil || next(text, after.to).kind != end {
		return Amount{}, false
	}
	a := Count{Value: n.Value, Step: n.Step, Unit: s.name, End: len(text)}.Amount()
	a.Digits = n.Digits
	return a, true
}
