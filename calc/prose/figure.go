package prose

import (
	"regexp"
	"strings"

	"acreleaf/calc/unit"
)

// A Figure is a number that a text states on purpose, with what follows it: "48 lb/ac" and " of nitrogen".
type Figure struct {
	Amount
	By   unit.Factor // from the figure's unit to the wanted one
	Said string      // the text, with what belongs to it of the rest
	Fits bool        // its unit measures what is wanted, and nothing else is said after it
}

// ReadFigure reads a figure in the light of the unit that is wanted. Its unit may leave the substance out, and may
// stand after it in words, in either language: "48" and " pounds an acre". A decimal comma is of the language of the
// text. The error is that of unit.ParseRange.
func (l *Language) ReadFigure(text, rest string, wanted unit.Unit) (Figure, error) {
	f, err := l.readFigure(text)
	if err != nil {
		return Figure{}, err
	}
	by, alone := Meant(f.Unit, wanted)
	longer, goesOn := extend(text, rest, false)
	if goesOn && alone && silent(f.Unit, longer.Unit, wanted, (text + rest)[longer.End:]) {
		goesOn = false
	}
	if goesOn {
		if more, ok := Meant(longer.Unit, wanted); ok {
			return f.with(longer, more, text, rest), nil
		}
	}
	if !alone {
		if wide, ok := extend(text, rest, true); ok {
			if more, ok := Meant(wide.Unit, wanted); ok {
				return f.with(wide, more, text, rest), nil
			}
		}
	}
	f.By, f.Said, f.Fits = by, text, alone && !goesOn
	if goesOn {
		f.Said = said(text, rest, longer)
	}
	return f, nil
}

// Meant is unit.Unit.Meant for what is said in prose, where nitrate-nitrogen may be told as nitrogen and no more: "12
// ppm (as N)". Nitrogen as ammonium is not nitrogen as nitrate.
func Meant(u, wanted unit.Unit) (unit.Factor, bool) {
	if by, ok := u.Meant(wanted); ok {
		return by, ok
	}
	return u.Meant(wanted.Nitrogen())
}

// Contradicts says whether words that belong to a figure make it one of another unit than is wanted, and gives the
// figure with them: "48 lb/ac" and "of nitrate", where nitrogen is wanted.
func (l *Language) Contradicts(text, words string, wanted unit.Unit) (whole string, does bool) {
	if text == "" || words == "" {
		return "", false
	}
	longer, goesOn := extend(text, words, false)
	if !goesOn {
		return "", false
	}
	if _, ok := Meant(longer.Unit, wanted); ok {
		return "", false
	}
	alone, err := l.readFigure(text)
	if err != nil || silent(alone.Unit, longer.Unit, wanted, (text + words)[longer.End:]) {
		return "", false
	}
	return said(text, words, longer), true
}

// with is the figure with the unit of a longer reading.
func (f Figure) with(longer Amount, by unit.Factor, text, rest string) Figure {
	longer.Digits = f.Digits
	return Figure{Amount: longer, By: by, Said: said(text, rest, longer), Fits: true}
}

func said(text, rest string, a Amount) string {
	return strings.Join(strings.Fields((text + rest)[:a.End]), " ")
}

// silent says whether what is said after a figure does not speak of the figure: "1.26 pounds for each pound" of a plain
// ratio, and a substance where none is wanted.
func silent(alone, longer, wanted unit.Unit, after string) bool {
	if wanted.String() == "" {
		return longer.Dimension() == pound.Dimension() && poundBelow.MatchString(after)
	}
	bare := wanted.Dimension().Bare()
	return alone.String() != "" && bare == wanted.Dimension() && longer.Dimension().Bare() == alone.Dimension().Bare()
}

// poundBelow finds the second pound of a ratio of two.
var poundBelow = regexp.MustCompile(`\b(?:lb|pound|libra)\b`)

var pound = unit.MustParse("lb")

// ReadRange reads a text that is an amount and nothing else, written as a quantity or said in words in either language:
// "136 lb N", "18 pounds of nitrogen", "six inches". The error is that of unit.ParseRange.
func (l *Language) ReadRange(text string) (unit.Range, error) {
	f, err := l.readFigure(text)
	return unit.Range{Low: f.Low, High: f.High, Unit: f.Unit}, err
}

// readFigure reads a text as a quantity or a range, and if it is none as an amount said in words, in either language. A
// decimal comma in a language that has none is the error of the quantity, whatever else stands there.
func (l *Language) readFigure(text string) (Figure, error) {
	low, high, u, err := unit.ParseNumbers(l.Points(text))
	if err == nil {
		return Figure{Amount: Amount{Low: low.Value, High: high.Value, LowStep: low.Step, HighStep: high.Step, Unit: u,
			End: len(text), Digits: low.Digits && high.Digits}}, nil
	}
	if l.MisplacesComma(text) {
		return Figure{}, err
	}
	for _, words := range []*Language{English, Spanish} {
		if a, ok := words.Read(text); ok {
			return Figure{Amount: a}, nil
		}
	}
	if c, ok := timeSaid(text); ok {
		return Figure{Amount: c}, nil
	}
	return Figure{}, err
}

// timeSaid reads a time by itself, "two hours". In a sentence it is no amount of the trade.
func timeSaid(text string) (Amount, bool) {
	for _, l := range []*Language{English, Spanish} {
		n, ok := l.number(text, 0)
		symbol := ""
		if ok {
			symbol = l.timeOf(text, n.to)
		}
		if word := next(text, n.to); symbol != "" && next(text, word.to).kind == end {
			a := Count{Value: n.Value, Step: n.Step, Unit: symbol, End: len(text)}.Amount()
			a.Digits = n.Digits
			return a, true
		}
	}
	return Amount{}, false
}

// extend is Extend in either language; the longer reading counts.
func extend(text, rest string, wide bool) (Amount, bool) {
	a, ok := English.Extend(text, rest, wide)
	if b, longer := Spanish.Extend(text, rest, wide); longer && (!ok || b.End > a.End) {
		return b, true
	}
	return a, ok
}

// Begins says whether a text begins with a number in digits that is no grade, date or time: "5 devices".
func Begins(text string) bool {
	n, ok := English.number(text, 0)
	return ok && n.Digits && !isChain(text, 0, n)
}

// ReadFor reads a figure of a rate whose words before it say what it is for: "a tree gets" 1 lb, where pounds a tree
// are wanted.
func (l *Language) ReadFor(before, text, rest string, wanted unit.Unit) (Figure, bool) {
	if at := strings.LastIndexAny(before, ".;:!?"); at >= 0 {
		before = before[at+1:]
	}
	of := eachOne.FindAllStringSubmatch(before, -1)
	if len(of) == 0 || strings.Contains(text, "/") {
		return Figure{}, false
	}
	each := unitsOfEach[strings.ToLower(of[len(of)-1][1])]
	for _, below := range []string{"/" + each, " per " + each, " por " + inSpanish[each]} {
		f, err := l.ReadFigure(text+below, rest, wanted)
		if err != nil {
			f, _ = l.ReadAbout(text+below, rest, wanted)
		}
		if f.Fits {
			f.Said = text
			return f, true
		}
	}
	return Figure{}, false
}

var eachOne = regexp.MustCompile(`(?i)\b(?:an?|each|every|cada|un|al|el) (tree|acre|árbol|emitter|emisor)\b`)

var unitsOfEach = map[string]string{"tree": "tree", "árbol": "tree", "acre": "ac",
	"emitter": "emitter", "emisor": "emitter"}

var inSpanish = map[string]string{"tree": "árbol", "ac": "acre", "emitter": "emisor"}

// ReadAbout reads a figure with words before it: "about 48 lb/ac". All that follows its number is its unit.
func (l *Language) ReadAbout(text, rest string, wanted unit.Unit) (Figure, bool) {
	for _, words := range []*Language{English, Spanish} {
		if found := words.Find(text); len(found) == 1 && found[0].Start > 0 && found[0].End == len(text) &&
			!strings.ContainsAny(text[:found[0].Start], "0123456789") {
			f, err := l.ReadFigure(text[found[0].Start:], rest, wanted)
			return f, err == nil
		}
	}
	return Figure{}, false
}

// ReadPart reads a figure that has other words around it: an amount ("about 68 lb"), or else the plain number that a
// text begins with ("5 devices").
func (l *Language) ReadPart(text, rest string, wanted unit.Unit) (Figure, error) {
	for _, words := range []*Language{English, Spanish} {
		if found := words.Find(text); len(found) > 0 {
			a := found[0]
			if len(found) > 1 || strings.TrimSpace(text[a.End:]) != "" {
				rest = ""
			}
			return l.ReadFigure(text[a.Start:a.End], rest, wanted)
		}
	}
	n, _ := English.number(text, 0)
	return l.ReadFigure(text[:n.to], text[n.to:]+rest, wanted)
}
