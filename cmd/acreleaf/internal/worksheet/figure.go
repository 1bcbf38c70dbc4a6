package worksheet

import (
	"bytes"
	"cmp"
	"fmt"
	"html"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// A Figure is a number in the prose that follows a worksheet.
type Figure struct {
	Written *markdown.Figure

	Bound  *Bound
	Cell   int
	Name   string      // the given, step or answer
	By     unit.Factor // from the value's own unit to the figure's
	Before string      // what the author wrote before the number
	Number string      // the number as written
	After  string      // and after it
}

func (b *binder) bindFigures() {
	for _, f := range b.doc.Figures {
		if f.Scheme == construct.Worked {
			b.bindFigure(f)
			if bound := b.page.figures[f.Index]; bound != nil {
				bound.Written = f
			}
		}
	}
}

func (b *binder) bindFigure(f *markdown.Figure) {
	use, name, _ := strings.Cut(f.Target, ".")
	if b.faulty[use] || f.Faulty {
		return // the worksheet's own fault is reported, or that of the figure
	}
	bound := b.page.Find(use)
	if bound == nil {
		note := "write a worksheet of that name first"
		if names := b.worksheetNames(); len(names) > 0 {
			note = write("worked:", use+"."+name, figuresOf(names, name))
		}
		b.fault(f.TargetSpan, "figure-unknown", fmt.Sprintf("there is no worksheet %q in this page", use), note)
		return
	}
	given := bound.Sheet.FindGiven(name)
	switch _, ok := bound.Sheet.UnitOf(name); {
	case name == "":
		b.fault(f.TargetSpan, "figure-unknown", fmt.Sprintf("this does not say which number of worksheet %q it is", use),
			write("worked:"+use+".", name, figureNames(bound.Sheet)))
	case !ok:
		b.fault(f.TargetSpan, "figure-unknown", fmt.Sprintf("worksheet %q has no %q", use, name),
			write("worked:"+use+".", name, figureNames(bound.Sheet)))
	case given != nil && len(given.Choices) > 0:
		b.fault(f.TargetSpan, "figure-unknown",
			fmt.Sprintf("%s of worksheet %q is chosen from a list, and is not a number", name, use),
			"write it as plain text, without worked:")
	case !b.page.stated(bound, name):
		b.fault(f.TargetSpan, "figure-unknown", fmt.Sprintf("worksheet %q does not state %s", use, name),
			fmt.Sprintf("add a line to the worksheet, such as: %s: %s", name, given.Example()))
	case f.Passage == nil && !b.page.Example(bound).There(name):
		b.fault(f.TargetSpan, "figure-unknown",
			fmt.Sprintf("worksheet %q leaves %s out, for the numbers of the example", use, name),
			"write a figure that it answers, or change the givens so that it answers this one")
	default:
		b.checkFigure(f, bound, name)
	}
}

// figureNames lists what a figure can state of a sheet.
func figureNames(s *sheet.Sheet) []string {
	return slices.DeleteFunc(s.Names(), func(name string) bool {
		given := s.FindGiven(name)
		return given != nil && len(given.Choices) > 0
	})
}

// figuresOf lists what a figure could point at, for a worksheet's name that is not there.
func figuresOf(worksheets []string, name string) []string {
	var list []string
	for _, w := range worksheets {
		list = append(list, w+"."+name)
	}
	return list
}

// checkFigure compares the figure with the value: its unit first, then the number at the precision it is written in.
// In a passage it may be of a case that is not the example's, for which the worksheet leaves the value out: it has no
// number then to compare the figure with, and the page shows the reader's alone.
func (b *binder) checkFigure(f *markdown.Figure, bound *Bound, name string) {
	example := b.page.Example(bound)
	value := example.Range(name)
	says := "answers"
	if bound.Sheet.FindGiven(name) != nil {
		says = "is given"
	}
	if bound.Sheet.IsDate(name) {
		b.checkDate(f, bound, name, says)
		return
	}
	written, err := b.readFigure(f, value.Unit)
	bare, unfit := unit.ParseRange(b.language.PointDecimals(f.Text))
	if err != nil {
		b.unreadable(f.TextSpan, "", err, value.String())
		return
	}
	wanted, given := value.Unit, ""
	if typed, is := b.asTyped(f, bound, name); is && !written.Fits {
		entry := bound.Entries[name]
		written, wanted, given = typed, entry.Unit, bound.Sheet.FindGiven(name).Text(entry)
	}
	if !written.Fits {
		note := fmt.Sprintf("write %s, or a figure in another unit of the same kind", value)
		if written.Text != f.Text {
			note = fmt.Sprintf("write %s in place of %s", value, written.Text)
		}
		b.fault(f.TextSpan, "figure-unit",
			fmt.Sprintf("the prose says %s, the worksheet %s %s", written.Text, says, value), note)
		return
	}
	by := written.By.Inverse()
	split := splitNumbers(f.Text)
	asWritten := decimals(b.language.PointDecimals(split.low))
	shown := unit.Range{Low: by.Apply(value.Low), High: by.Apply(value.High)}
	if example.There(name) && !written.AgreesClosely(shown.Low, shown.High) {
		places := enoughPlaces(written.Amount, shown, asWritten)
		line, _ := b.doc.Source.Position(bound.Block.Span.Start)
		text := f.Text
		if unfit == nil && bare.Unit.String() == "" || given != "" {
			text = written.Text // the unit, or the substance, is in the words behind
		}
		b.fault(f.TextSpan, "figure-differs",
			fmt.Sprintf("the prose says %s, the worksheet %s %s", text, says, cmp.Or(given, precise(value, asWritten))),
			fmt.Sprintf("write %s, or change the givens of worksheet %q on line %d",
				rangeAt(shown, places), bound.Block.Name, line))
		return
	}
	if whole, wrong := b.contradicted(f, wanted); wrong {
		b.fault(f.TextSpan, "figure-unit", fmt.Sprintf("the prose says %s, the worksheet %s %s", whole, says, value),
			fmt.Sprintf("write %s in place of %s", value, whole))
		return
	}
	if split.number == "" { // in words, so that there is no text to put a reader's number into
		by = unit.Factor{Multiply: 1, Divide: 1}
	}
	b.page.figures[f.Index] = newFigure(bound, name, by, split)
}

// asTyped reads a figure as what was typed for a given, in the form that it was typed in: 31 ppm NO3, where the
// worksheet works with NO3-N.
func (b *binder) asTyped(f *markdown.Figure, bound *Bound, name string) (prose.Figure, bool) {
	entry, typed := bound.Entries[name]
	own, _ := bound.Sheet.UnitOf(name)
	if !typed {
		return prose.Figure{}, false
	}
	written, err := b.readFigure(f, entry.Unit)
	to, unfit := entry.Unit.To(own)
	if err != nil || unfit != nil || !written.Fits {
		return prose.Figure{}, false
	}
	by := written.By
	written.By = unit.Factor{Multiply: by.Multiply * to.Multiply, Divide: by.Divide * to.Divide}
	return written, true
}

// readFigure reads a figure with the words around it. Only a passage wants digits, since it writes the reader's
// numbers.
func (b *binder) readFigure(f *markdown.Figure, wanted unit.Unit) (prose.Figure, error) {
	written, err := b.language.ReadFigure(f.Text, b.after(f), wanted)
	switch {
	case err == nil && !written.Digits && f.Passage != nil:
		_, unfit := unit.ParseRange(b.language.PointDecimals(f.Text))
		err = cmp.Or(unfit, fmt.Errorf("%q: a passage writes numbers in digits; write 0.5 for 1/2", f.Text))
	case err != nil && f.Passage == nil:
		if about, is := b.language.ReadApproximate(f.Text, b.after(f), wanted); is {
			written, err = about, nil
		}
	}
	if err == nil && !written.Fits {
		if rate, is := b.language.ReadRate(b.before(f), f.Text, b.after(f), wanted); is {
			written = rate
		}
	}
	return written, err
}

// enoughPlaces is how many decimals a range needs to be written in, the author's or more, so that rounding does not
// make another number of it.
func enoughPlaces(a prose.Amount, r unit.Range, places int) int {
	const most = 9
	for ; places < most; places++ {
		a.Low, a.High = rounded(r.Low, places), rounded(r.High, places)
		a.LowStep, a.HighStep = math.Pow10(-places), math.Pow10(-places)
		if a.AgreesClosely(r.Low, r.High) {
			break
		}
	}
	return places
}

func rounded(v float64, places int) float64 {
	scale := math.Pow10(places)
	return math.Round((v+v*1e-12)*scale) / scale
}

// contradicted says whether a substance in parentheses after a figure, or what the margin says of it, makes it
// one of another unit, and gives the figure with those words.
func (b *binder) contradicted(f *markdown.Figure, wanted unit.Unit) (whole string, wrong bool) {
	whole, wrong = b.language.OtherUnit(f.Text, b.language.SubstanceInParentheses(b.behind(f)), wanted)
	if !wrong {
		whole, wrong = b.language.OtherUnit(f.Text, " "+f.Title, wanted)
	}
	return whole, wrong
}

// after gives the text that comes after a figure, up to what cannot belong to its unit.
func (b *binder) after(f *markdown.Figure) string {
	text := b.behind(f)
	if at := strings.IndexAny(text, "[]()`.,;:!?|<"); at >= 0 {
		text = text[:at]
	}
	return text
}

// before gives the end of the text before a figure, as readers see it.
func (b *binder) before(f *markdown.Figure) string {
	const enough = 60
	source := b.doc.Source.Text[max(0, f.Span.Start-enough):f.Span.Start]
	if at := bytes.LastIndex(source, []byte("\n\n")); at >= 0 {
		source = source[at:]
	}
	text := strings.Join(strings.Fields(string(bytes.ToValidUTF8(source, nil))), " ")
	return html.UnescapeString(emphasis.Replace(text))
}

// behind gives the start of the text after a figure. Readers see no marks of emphasis, and a space for &nbsp;.
func (b *binder) behind(f *markdown.Figure) string {
	const enough = 80
	source := b.doc.Source.Text[f.Span.End:]
	source, _, _ = bytes.Cut(source[:min(len(source), enough)], []byte("\n\n"))
	return html.UnescapeString(emphasis.Replace(string(bytes.ToValidUTF8(source, nil))))
}

var emphasis = strings.NewReplacer("*", "", "_", "")

func newFigure(bound *Bound, name string, by unit.Factor, split numbers) *Figure {
	cell, _ := bound.Use.Cell(name)
	return &Figure{
		Bound: bound, Cell: cell, Name: name, By: by, Before: split.before, Number: split.number, After: split.after,
	}
}

// checkDate compares a date in the prose with the worksheet's, as its language writes it. A text that is not translated
// yet has it in English.
func (b *binder) checkDate(f *markdown.Figure, bound *Bound, name, says string) {
	o := b.page.Example(bound)
	if o.There(name) && f.Text != o.Text(name) && f.Text != sheet.DateText(o.Value(name).Value) {
		value := o.Text(name)
		line, _ := b.doc.Source.Position(bound.Block.Span.Start)
		b.fault(f.TextSpan, "figure-differs", fmt.Sprintf("the prose says %s, the worksheet %s %s", f.Text, says, value),
			fmt.Sprintf("write %s, or change the givens of worksheet %q on line %d", value, bound.Block.Name, line))
		return
	}
	b.page.figures[f.Index] = newFigure(bound, name, unit.Factor{Multiply: 1, Divide: 1}, numbers{number: f.Text})
}

// numbers is a figure's text taken apart: "$3 to 4/lb" is "$", "3 to 4", "/lb", with 3 and 4 its ends. A single number
// is both ends.
type numbers struct{ before, number, after, low, high string }

var secondNumber = regexp.MustCompile(`^ ?(?:to|or|a|o|–|-) ?\$?(\d[\d.,]*)`)

func splitNumbers(text string) numbers {
	before, low, after := splitNumber(text)
	n := numbers{before: before, number: low, after: after, low: low, high: low}
	if found := secondNumber.FindStringSubmatch(after); found != nil {
		n.high = strings.TrimRight(found[1], ".,")
		end := strings.Index(found[0], found[1]) + len(n.high)
		n.number, n.after = low+after[:end], after[end:]
	}
	return n
}

// splitNumber finds the first number of the text: "$0.62/lb" is "$", "0.62", "/lb".
func splitNumber(text string) (before, number, after string) {
	start := strings.IndexAny(text, "0123456789")
	if start < 0 {
		return text, "", ""
	}
	if start > 0 && text[start-1] == '-' {
		start--
	}
	end := start + 1
	for end < len(text) && strings.IndexByte("0123456789.,", text[end]) >= 0 {
		end++
	}
	for strings.IndexByte(".,", text[end-1]) >= 0 {
		end--
	}
	return text[:start], text[start:end], text[end:]
}

// decimals counts the digits after the point.
func decimals(number string) int {
	_, after, _ := strings.Cut(number, ".")
	return len(after)
}

// precise is a value with so many decimals if its usual text has fewer: it must be seen to differ.
func precise(r unit.Range, places int) string {
	if decimals(unit.Text(r.Low)) >= places {
		return r.String()
	}
	return strings.Replace(r.String(), r.Numbers(), rangeAt(r, places), 1)
}

// rangeAt writes a number, or the two ends of a range, with so many decimals.
func rangeAt(r unit.Range, places int) string {
	return r.Unit.Between(atPlaces(r.Low, places), atPlaces(r.High, places))
}

// atPlaces writes a number with so many decimals, half rounded up, as a figure is compared with its value.
func atPlaces(v float64, places int) string {
	v += v * 1e-12
	if places == 0 {
		return unit.Text(math.Round(v)) // with commas
	}
	return strconv.FormatFloat(v, 'f', places, 64)
}
