package proof

import (
	"fmt"
	"math"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// askedTwice advises on a number that a reader has to type into two worksheets of a page. One of them stays the
// example's for a reader who sees only the other.
func askedTwice(p *Page, r Rules) message.List {
	if !r.Advice {
		return nil
	}
	var found message.List
	for i, later := range p.Work.Sheets {
		if later.Kind == construct.Reckoner {
			continue
		}
		for _, entry := range later.Block.Entries {
			given := later.Sheet.FindGiven(entry.Key)
			read, typed := later.Entries[entry.Key]
			if given == nil || !typed || read.Value == 0 && len(given.Choices) == 0 { // nothing is the same everywhere
				continue
			}
			for _, earlier := range p.Work.Sheets[:i] {
				if earlier.Block.Name == "" || earlier.Kind == construct.Reckoner {
					continue
				}
				name, same := sameIn(p.Work, earlier, later.Sheet, given, read)
				text := fmt.Sprintf("worksheet %q has this too, as %s, and a reader would have to type both",
					earlier.Block.Name, name)
				if !same {
					other, has := anotherIn(earlier, given, read)
					if !has {
						continue
					}
					name, text = given.Name, fmt.Sprintf("%s is %s here, and %s in worksheet %q", given.Name,
						given.Text(read), given.Text(other), earlier.Block.Name)
				}
				found = append(found, message.Message{
					Level: message.Advice, ID: "given-twice", Source: p.Source, Span: entry.ValueSpan, Text: text,
					Note: fmt.Sprintf("write %s: from %s.%s, or leave it if the two are not the same thing",
						given.Name, earlier.Block.Name, name),
				})
				break
			}
		}
	}
	return found
}

// anotherIn finds what a worksheet asks for by the same name, typed with another value, where the trees of one page
// have only one: a plain whole number, such as their leaf. Depths, tests and rates differ from one worksheet to the
// next.
func anotherIn(b *worksheet.Bound, given *sheet.Given, read sheet.Entry) (sheet.Entry, bool) {
	theirs := b.Sheet.FindGiven(given.Name)
	other, typed := b.Entries[given.Name]
	if theirs == nil || !typed || len(given.Choices) > 0 || given.Date || given.Unit.String() != "" ||
		theirs.Label != given.Label {
		return sheet.Entry{}, false
	}
	isWhole := read.Value == math.Trunc(read.Value) && other.Value == math.Trunc(other.Value)
	return other, isWhole && (other.Value != read.Value || other.High != read.High)
}

// sameIn finds what a worksheet asks for by the same name, or answers, with the same value in the same dimension.
func sameIn(
	page *worksheet.Page, b *worksheet.Bound, of *sheet.Sheet, given *sheet.Given, read sheet.Entry,
) (string, bool) {
	graph := &sheet.Graph{}
	graph.Add(b.Block.Name, b.Sheet, nil)
	o := page.Example(b)
	for _, name := range b.Sheet.Names() {
		other := b.Sheet.FindGiven(name)
		if other != nil && (other.Name != given.Name || !o.Stated(name)) || !o.There(name) {
			continue
		}
		link := sheet.Link{Use: b.Block.Name, Name: name}
		if given.Unit.Dimension().Plain() && len(given.Choices) == 0 && other == nil {
			continue // counts and shares agree by chance
		}
		if graph.CheckLink(of, given.Name, link) != nil {
			continue
		}
		value := o.Range(name)
		factor, err := value.Unit.To(given.Unit)
		if err == nil && sameNumber(factor.Apply(value.Low), read.Value) && sameNumber(factor.Apply(value.High), read.High) {
			return name, true
		}
	}
	return "", false
}

// sameNumber says whether two numbers are the same but for their last bits.
func sameNumber(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(math.Abs(a), math.Abs(b)) }
