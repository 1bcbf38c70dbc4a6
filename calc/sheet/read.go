package sheet

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// An Entry is what somebody filled in for a given. A single number has both ends the same.
type Entry struct {
	Value     float64   // in the given's own unit, the lower end of a range; for a choice, the index of the option
	High      float64   // the upper end, likewise
	Unit      unit.Unit // as it was written
	Typed     float64   // as it was written, in that unit
	TypedHigh float64
	Below     bool // a laboratory's "<5": worked as all from nothing to 5
	Other     bool // it is of the given's second kind, and Value and High are in that kind's unit
	Form      int  // the one of Field.Forms that it is told in, from 1 on; 0 when it tells none
}

// Text is the entry as a reader sees it.
func (g *Given) Text(e Entry) string {
	switch {
	case len(g.Choices) > 0:
		return g.Choices[int(e.Value)].Name
	case g.Date && e.Value == e.High:
		return dayText(g.s.general(), e.Value)
	case g.Date:
		return dayText(g.s.general(), e.Value) + " " + g.s.general().To + " " + dayText(g.s.general(), e.High)
	}
	number := e.Unit.Operand(e.Typed, typedDigits, operandUsual, 0)
	if high := e.Unit.Operand(e.TypedHigh, typedDigits, operandUsual, 0); high != number {
		number += " " + g.s.general().To + " " + high
	}
	return e.Unit.Label(number)
}

// Treated says how an entry is treated that is not taken as it stands: a laboratory's "<5". It is "" for others.
func (g *Given) Treated(e Entry) string {
	if !e.Below {
		return ""
	}
	return words.Fill(g.s.general().Below, "label", g.Label, "low", unit.Text(e.Typed),
		"high", unit.Quantity{Value: e.TypedHigh, Unit: e.Unit}.String())
}

// Converted shows how an entry in another unit becomes the given's own: "nitrate = 12 ppm NO3 × 0.225905 = 2.71 ppm
// NO3-N". It is "" for an entry in the given's own unit, and for what has none.
func (g *Given) Converted(e Entry) string {
	own := g.Unit
	if e.Other {
		own = g.other.unit
	}
	factor, err := e.Unit.To(own)
	if err != nil || g.Date || len(g.Choices) > 0 || factor.Multiply == factor.Divide {
		return ""
	}
	sign, by := (&node{factor: factor}).change()
	return fmt.Sprintf("%s = %s %s %s = %s", g.n.called(), g.Text(e), sign,
		plain.Operand(by, typedDigits, constantUsual, 0), unit.Range{Low: e.Value, High: e.High, Unit: own})
}

// Read reads what somebody wrote for a given: "12 ppm NO3-N", or the name of an option. The error is a sentence that
// says what was written, what is needed and what to write; it may wrap a *unit.Error that has the place.
func (g *Given) Read(text string) (Entry, error) {
	if len(g.Choices) > 0 {
		return g.readChoice(text)
	}
	if g.Date {
		return g.readDate(text)
	}
	e, err := g.readNumber(text)
	if err != nil && g.Unit.Account() != "" && materialName.MatchString(text) {
		return e, fmt.Errorf("%s is an amount of a material, and this asks for the nitrogen in it; work that with "+
			"%s, and write it for example as %s", strings.TrimSpace(text), ofMaterial, g.example(g.Typical))
	}
	if fault := (*unit.Error)(nil); errors.As(err, &fault) && fault.Word != "" {
		return e, g.advise(fault)
	}
	return e, err
}

// ofMaterial is the calculation of the catalogue that works the nitrogen in a material.
const ofMaterial = "material-nitrogen"

// materialName is how the trade names a fertilizer: UAN-32, CAN17, 46-0-0.
var materialName = regexp.MustCompile(`(?i)\b(UAN|UN|CAN|AN)[- ]?\d\d\b|\b\d+(\.\d+)?-\d+-\d+`)

// advise offers for an unknown word the nearest known one with which the given takes what was written, and else says
// what may be written. A word that makes another kind or another substance of it would lead astray.
func (g *Given) advise(fault *unit.Error) error {
	before, after := fault.Text[:fault.At], fault.Text[fault.At+len(fault.Word):]
	for _, near := range unit.Near(fault.Word) {
		if g.measures(before + near + after) {
			return fault.Meaning(near)
		}
	}
	if _, advice := unit.Advice(fault); fault.Nearest == "" && !strings.HasPrefix(advice, "write one such as") {
		return fault
	}
	advice := "write for example " + g.example(g.Typical)
	for _, text := range g.Units {
		if u, err := unit.Parse(text); err == nil && !u.Dimension().Fits(g.Unit.Dimension()) {
			advice += fmt.Sprintf(", or %s, as the report says", unit.Quantity{Value: g.Typical, Unit: u})
			break
		}
	}
	return fault.Writing(advice)
}

// measures says whether a text is of what a given asks for, however much of it.
func (g *Given) measures(text string) bool {
	r, err := unit.ParseRange(text)
	if err == nil {
		_, err = g.own(r)
	}
	return err == nil
}

// readNumber reads a number or a range with its unit.
func (g *Given) readNumber(text string) (Entry, error) {
	if err := g.notDetected(text); err != nil {
		return Entry{}, err
	}
	number, below := strings.CutPrefix(strings.TrimSpace(text), "<")
	if below && !g.Lab {
		return Entry{}, fmt.Errorf("%q has <, which is for what a laboratory could not measure; "+
			"type a number or a range, such as %s", text, g.example(g.Typical))
	}
	r, err := unit.ParseRange(number)
	if err != nil {
		return Entry{}, err
	}
	if r.Unit.String() == "" && g.Unit.String() != "" {
		return Entry{}, fmt.Errorf("%s has no unit; write %s", strings.TrimSpace(text), g.withUnit(r, below))
	}
	if below && r.Low != r.High {
		return Entry{}, fmt.Errorf("%q has < before a range; write the one number that the lab prints after it", text)
	}
	if below {
		r.Low = 0
	}
	e, err := g.own(r)
	if err != nil {
		return Entry{}, err
	}
	e.Below = below
	return e, g.CheckEntry(e)
}

// own is what was written in the given's own unit, or in that of its second kind, or of the form it is told in.
func (g *Given) own(r unit.Range) (Entry, error) {
	e := Entry{Unit: r.Unit.Like(g.Unit), Typed: r.Low, TypedHigh: r.High}
	converts := func(u unit.Unit) bool { _, err := r.Unit.For(u); return err == nil }
	if g.other != nil && converts(g.Unit) && converts(g.other.unit) {
		return e, g.whichKind(r)
	}
	if g.Unit.String() == "" && r.Unit.String() != "" && converts(g.Unit) {
		return e, fmt.Errorf("%s has a unit, and this is a number without one; write for example %s", r, g.example(g.Typical))
	}
	u, other, form, ok := g.kindOf(converts)
	if !ok {
		_, err := r.For(g.Unit)
		if whole := g.completed(r); whole != "" {
			return e, fmt.Errorf("%w; write %s", err, whole)
		}
		if g.other != nil {
			return e, fmt.Errorf("%w, or %s; write for example %s", err, g.other.unit, g.example(g.Typical))
		}
		return e, fmt.Errorf("%w; write for example %s", err, g.example(g.Typical))
	}
	own, err := r.For(u)
	e.Value, e.High, e.Other, e.Form = own.Low, own.High, other, form
	return e, err
}

// completed is what was written with the substance or the counted thing that its unit leaves out, in each form that may
// be meant; "" when that is not what it lacks. "12 ppm" may be NO3 as well as NO3-N, and only the report knows.
func (g *Given) completed(r unit.Range) string {
	units := []unit.Unit{g.Unit}
	for _, text := range g.Units {
		if u, err := unit.Parse(text); err == nil {
			units = append(units, u)
		}
	}
	if g.other != nil {
		units = append(units, g.other.unit)
	}
	var list []string
	var told []unit.Dimension
	for _, u := range units {
		again := func(d unit.Dimension) bool { return u.Dimension().Fits(d) || d.Fits(u.Dimension()) }
		if r.Unit.Shorter(u) && !slices.ContainsFunc(told, again) {
			told = append(told, u.Dimension())
			list = append(list, unit.Range{Low: r.Low, High: r.High, Unit: u}.String())
		}
	}
	whole := strings.Join(list, " or ")
	if len(told) > 1 && told[0].Uncounted() != told[1].Uncounted() {
		whole += ", as the report says"
	}
	return whole
}

// whichKind says that a quantity may be meant as either kind that a given takes, as pounds an acre without an account.
func (g *Given) whichKind(r unit.Range) error {
	first, second := g.Unit.Account(), g.other.unit.Account()
	if first == "" || second == "" {
		return fmt.Errorf("%s may be meant as %s or as %s; write for example %s", r, g.Unit, g.other.unit,
			g.example(g.Typical))
	}
	return fmt.Errorf("%s does not say whether it is %s or %s; write %s %s or %s %s",
		r, first, second, r, first, r, second)
}

// notDetected answers what a laboratory prints when it found nothing.
func (g *Given) notDetected(text string) error {
	word := strings.TrimRight(strings.ToUpper(strings.TrimSpace(strings.SplitN(text+" ", " ", 2)[0])), ".")
	if word != "ND" && word != "N.D" && word != "BDL" {
		return nil
	}
	return fmt.Errorf("%q means less than the lab can measure; look up that limit and write it with < and the unit of "+
		"the report", text)
}

// readDate reads one day, or two with "to" between them.
func (g *Given) readDate(text string) (Entry, error) {
	from, to, ranged := strings.Cut(text, " to ")
	first, err := parseDate(strings.TrimSpace(from))
	if err != nil {
		return Entry{}, err
	}
	e := Entry{Value: first, High: first, Unit: g.Unit, Typed: first, TypedHigh: first}
	if ranged {
		if e.High, err = parseDate(strings.TrimSpace(to)); err != nil {
			return Entry{}, err
		}
		e.TypedHigh = e.High
		if e.High < e.Value {
			return Entry{}, fmt.Errorf("%s is before %s; write the earlier day first", DateText(e.High), DateText(e.Value))
		}
	}
	return e, g.CheckEntry(e)
}

// withUnit is what was written with the unit that it lacks, or the typical value if it cannot be meant so. Where the
// number may be of another form (NO3 for NO3-N), that is said too: the report knows, and we do not.
func (g *Given) withUnit(r unit.Range, below bool) string {
	if g.Check(r.Low) != nil {
		return "it with its unit, such as " + g.example(g.Typical)
	}
	sign := ""
	if below {
		sign = "<"
	}
	r.Unit = g.Unit
	for _, text := range g.Units {
		other, err := unit.Parse(text)
		if err == nil && !other.Dimension().Fits(g.Unit.Dimension()) {
			return sign + r.String() + " or " + sign + unit.Range{Low: r.Low, High: r.High, Unit: other}.String() +
				", as the report says"
		}
	}
	return sign + r.String()
}

// CheckEntry says whether both ends of an entry are values that the calculation takes.
func (g *Given) CheckEntry(e Entry) error {
	if e.Other {
		if e.Value < g.Else.Low || e.High > g.Else.High {
			return fmt.Errorf("%s is outside what this calculation takes: %s to %s", g.Text(e), unit.Text(g.Else.Low),
				unit.Quantity{Value: g.Else.High, Unit: g.other.unit})
		}
		return nil
	}
	if err := g.Check(e.Value); err != nil {
		return err
	}
	return g.Check(e.High)
}

// Check says whether a value in the given's own unit is one that the calculation takes.
func (g *Given) Check(value float64) error {
	switch {
	case len(g.Choices) > 0 && !g.chosen(value):
		return fmt.Errorf("option %s is not in the list; choose one of: %s", unit.Text(value), g.optionNames())
	case value >= g.Low && value <= g.High:
		return nil
	}
	return fmt.Errorf("%s is outside what this calculation takes: %s to %s",
		g.example(value), g.lowText(), g.example(g.High))
}

// chosen says whether a value is the index of an option.
func (g *Given) chosen(value float64) bool {
	return value == math.Trunc(value) && value >= 0 && value < float64(len(g.Choices))
}

func (g *Given) optionNames() string { return strings.Join(g.optionList(), ", ") }

func (g *Given) optionList() []string {
	var names []string
	for _, o := range g.Choices {
		names = append(names, o.Name)
	}
	return names
}

func (g *Given) readChoice(text string) (Entry, error) {
	for i, o := range g.Choices {
		if sameName(o.Name, text) {
			index := float64(i)
			return Entry{Value: index, High: index, Unit: plain, Typed: index, TypedHigh: index}, nil
		}
	}
	if from, to, ranged := strings.Cut(text, " to "); ranged {
		return Entry{}, fmt.Errorf("one thing of the list is chosen here, and not a range; write %s or %s alone", from, to)
	}
	if near := g.nearest(text); near != "" {
		return Entry{}, fmt.Errorf("there is no %s %q; write %s, or one of: %s", spaced(g.Name), text, near, g.optionNames())
	}
	return Entry{}, fmt.Errorf("there is no %s %q; choose one of: %s", spaced(g.Name), text, g.optionNames())
}

// sameName says whether a name is written as it is, or with other capitals, spaces and hyphens: UAN32 for UAN-32. The
// hyphens between numbers count, since they part an analysis.
func sameName(name, text string) bool { return plainName(name) == plainName(text) }

func plainName(name string) string {
	var b strings.Builder
	runes := []rune(strings.ToLower(strings.TrimSpace(name)))
	for i, r := range runes {
		joins := r == '-' || r == '_' || r == ' '
		if joins && i > 0 && i+1 < len(runes) && (unicode.IsLetter(runes[i-1]) || unicode.IsLetter(runes[i+1])) {
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// nearest is the name of the option that was most likely meant: one spelled like it, or one whose label has the word.
func (g *Given) nearest(text string) string {
	if near := unit.Nearest(text, g.optionList()); near != "" {
		return near
	}
	const shortest = 3 // letters of a word that tells labels apart
	if len(text) < shortest {
		return ""
	}
	for _, has := range []func(label, word string) bool{strings.HasPrefix, strings.Contains} {
		for _, o := range g.Choices {
			if has(strings.ToLower(o.Label), strings.ToLower(text)) {
				return o.Name
			}
		}
	}
	return ""
}

// example is a value as it may be written.
func (g *Given) example(value float64) string {
	if g.Date {
		return ISODate(value)
	}
	return unit.Quantity{Value: value, Unit: g.Unit}.String()
}

// lowText is the least that is taken, without a unit.
func (g *Given) lowText() string {
	if g.Date {
		return ISODate(g.Low)
	}
	return unit.Text(g.Low)
}

// Example is the typical value as an author or a caller may write it.
func (g *Given) Example() string {
	if len(g.Choices) > 0 {
		return g.Choices[int(g.Typical)].Name
	}
	return g.example(g.Typical)
}
