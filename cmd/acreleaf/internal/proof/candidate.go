package proof

import (
	"cmp"
	"fmt"
	"slices"

	"acreleaf/calc/prose"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// A candidate is a number of a worksheet of the page, for what the prose may mean.
type candidate struct {
	target string // "soil.nitrogen"
	block  string // "soil"
	label  string // "Nitrogen in this layer"
	given  bool
	main   bool // it is the answer that its worksheet is for
	chosen bool // it comes of what is chosen, as a figure of a table does
	value  unit.Range
	text   string // "48 lb N/ac", "Apr 20, 2027"
	day    string // of a day: "2027-04-20"
	words  topic  // of its label and name, of its worksheet and that one's title
	own    topic  // of its label and name alone
}

// candidates gives the numbers of the page's worksheets.
func (c *figureCheck) candidates() []candidate {
	if c.known == nil {
		c.known = []candidate{}
		for _, b := range c.page.Work.Sheets {
			for _, name := range c.page.Work.Worked(b) {
				c.known = append(c.known, c.candidate(b, name))
			}
			for _, name := range c.page.Work.Days(b) {
				day := c.candidate(b, name)
				day.day = sheet.ISODate(day.value.Low)
				c.known = append(c.known, day)
			}
		}
	}
	return c.known
}

func (c *figureCheck) candidate(b *worksheet.Bound, name string) candidate {
	example := c.page.Work.Example(b)
	n := candidate{target: b.Block.Name + "." + name, block: b.Block.Name, value: example.Range(name),
		text: example.Text(name)}
	if given := b.Sheet.FindGiven(name); given != nil {
		n.given, n.label = true, given.Label
	} else {
		n.label = b.Sheet.FindResult(name).Label
	}
	n.main = b.Sheet.Headline != nil && b.Sheet.Headline.Answer == name
	n.chosen = n.given || len(b.Sheet.ChoicesBehind(name)) > 0
	n.own = c.wordsOf(n.label, name)
	n.words = c.wordsOf(n.label, name, b.Block.Name, cmp.Or(b.Title, b.Sheet.Title))
	n.words.numbered(name)
	return n
}

// is says what a candidate is: worksheet "soil" answers 48 lb N/ac, "Nitrogen in this layer".
func (n *candidate) is() string {
	verb := "answers"
	if n.given {
		verb = "is given"
	}
	return fmt.Sprintf("worksheet %q %s %s, %q", n.block, verb, n.text, n.label)
}

// A fit is a candidate of the kind of an amount, with how much the words around the amount are its own.
type fit struct {
	*candidate
	words int
	same  bool // its value is the amount
	apart float64
	exact bool // the amount leaves nothing of its unit unsaid but its account
}

// fits lists the candidates of an amount's kind and substance, those first whose words are around it, and of
// those with as many the nearest.
func (c *figureCheck) fits(a prose.Amount, around topic, cell bool) []fit {
	var list []fit
	all := c.candidates()
	for i := range all {
		n := &all[i]
		low, high, ok := inUnitOf(a, n.value)
		if !ok || n.day != "" || cell && n.given {
			continue // the cells of a table are other cases than the example's
		}
		same := a.AgreesClosely(low, high)
		if !same && !alike(a.Unit, n.value.Unit) {
			continue
		}
		list = append(list, fit{n, around.shared(n.words), same,
			prose.RelativeDifference(a.Low, low), a.Unit.Dimension().Uncounted() == n.value.Unit.Dimension().Uncounted()})
	}
	slices.SortStableFunc(list, func(a, b fit) int {
		return cmp.Or(b.words-a.words, rank(a.exact)-rank(b.exact), rank(a.same)-rank(b.same),
			cmp.Compare(a.apart, b.apart))
	})
	told := map[string]bool{}
	return slices.DeleteFunc(list, func(f fit) bool {
		once := f.block + " " + f.text // a step that is the answer
		again := told[once]
		told[once] = true
		return again
	})
}

// rank puts what is so before what is not.
func rank(so bool) int {
	if so {
		return 0
	}
	return 1
}

// inUnitOf gives the ends of a range in the unit of an amount, if that is of the same kind. A plain number says nothing
// of the trade.
func inUnitOf(a prose.Amount, value unit.Range) (low, high float64, ok bool) {
	by, ok := prose.Convert(a.Unit, value.Unit)
	if !ok || value.Unit.String() == "" {
		return 0, 0, false
	}
	back := by.Inverse()
	return back.Apply(value.Low), back.Apply(value.High), true
}
