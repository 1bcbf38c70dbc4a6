package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// A Graph is sheets at work together: each use of a sheet has a name, and a given of one can take what another works
// out. Close puts the uses in order and makes the one Program that works them all.
type Graph struct {
	Uses    []*Use // in the order they are worked
	Program *Program
	Slips   bool // whether the slips of the sheets are worked too

	Passages []*Passage // worked after the uses

	Language string // in which numbers and work are told; "": that of each sheet
}

// A Use is one sheet of a graph, with the cells that hold its values.
type Use struct {
	Name   string
	Sheet  *Sheet
	Links  map[string]Link // by the given that takes the value
	Index  int             // its place in Graph.Uses
	Unsaid bool            // nobody is told its remarks, its refusals and its sentence, so they have no cells
	Quiet  bool            // only passages ask for what it works out, so its results have no cells
	Marks  []string        // the results that answers are compared with: they have cells, and so have their slips
	After  []int           // the uses whose values it takes directly

	language string         // of the graph, or of the sheet
	say      *words.General // the words of that language
	program  *Program       // of the graph
	trends   []CellTrend
	cells    map[string]int   // by the name of a given, step or answer
	presence map[string]int   // by the name of an optional given that is not linked
	typed    map[string]bool  // by the name of a given: whether a person fills it in, or what it is linked to
	others   map[string]int   // by the name of a given with a second kind of quantity that is not linked
	linked   map[string]Entry // by the name of a linked given: its kind and its form
	kinds    map[string]int   // by the name of a given of two kinds that follows another: whether it is the second
	forms    map[string]int   // by the name of a given that may be told in forms and is not linked: the form, 0 for none
	outside  map[string]int   // by the name of a linked given
	there    map[string]int   // by the name of a result that may be left out
	remarks  []int            // by the sheet's remarks, then the cases of its headline; -1: said always
	ways     map[string][]int // by result: for each way it may be worked, whether it is this one; -1: the only way
	slips    []int            // by the sheet's slips, in a graph that works them
	open     []int            // by the sheet's slips, the cell that says whether somebody can make it; -1: always
}

// Language is the one that the use tells its numbers in, once the graph is closed.
func (u *Use) Language() string { return u.language }

// RangeText writes the two ends of a range in the language of the use, once where a reader sees them alike.
func (u *Use) RangeText(low, high string) string {
	if low == high {
		return low
	}
	return low + " " + u.say.To + " " + high
}

// DayText writes a day in the language of the use.
func (u *Use) DayText(day float64) string { return dayText(u.say, day) }

// A Link is where a given takes its value from: a given, step or answer of another use.
type Link struct{ Use, Name string }

// A CircleError says that sheets wait for each other. The first member stands again at the end.
type CircleError struct{ Members []string }

func (e *CircleError) Error() string {
	return "these worksheets wait for each other in a circle: " + strings.Join(e.Members, " → ")
}

// Add puts a sheet to use under a name. Links may name uses that are added later.
func (g *Graph) Add(name string, s *Sheet, links map[string]Link) *Use {
	u := &Use{Name: name, Sheet: s, Links: links}
	g.Uses = append(g.Uses, u)
	return u
}

// Find gives the use of that name; nil if there is none.
func (g *Graph) Find(name string) *Use {
	for _, u := range g.Uses {
		if u.Name == name {
			return u
		}
	}
	return nil
}

// CheckLink says whether a given of s can take what the link points at: an error with a sentence if not.
func (g *Graph) CheckLink(s *Sheet, given string, link Link) error {
	_, err := g.linkFactor(s, given, link)
	return err
}

// linkFactor is the factor from what a link points at to the given that takes it, in the unit of its second kind of
// quantity if it is of that kind.
func (g *Graph) linkFactor(s *Sheet, given string, link Link) (unit.Factor, error) {
	to := s.FindGiven(given)
	if to == nil {
		return unit.Factor{}, fmt.Errorf("%s has no given %q", s.Name, given)
	}
	from := g.Find(link.Use)
	if from == nil {
		return unit.Factor{}, fmt.Errorf("there is no worksheet %q for %s to take a number from", link.Use, given)
	}
	source := from.Sheet.FindGiven(link.Name)
	if len(to.Choices) > 0 || source != nil && len(source.Choices) > 0 {
		if source == nil || !slices.EqualFunc(source.Choices, to.Choices, Option.Same) {
			return unit.Factor{}, fmt.Errorf("%s is chosen from a list and cannot be taken from %s.%s",
				given, link.Use, link.Name)
		}
	}
	if source != nil && source.Optional && !to.Optional {
		return unit.Factor{}, fmt.Errorf("%s.%s may be left empty, and %s may not", link.Use, link.Name, given)
	}
	if source != nil && source.sameKinds(to) {
		return unit.Factor{Multiply: 1, Divide: 1}, nil
	}
	if source != nil && source.other != nil {
		return unit.Factor{}, fmt.Errorf("%s.%s may be %s or %s, so nothing can take it", link.Use, link.Name,
			source.Unit, source.other.unit)
	}
	u, ok := from.Sheet.UnitOf(link.Name)
	if !ok {
		return unit.Factor{}, fmt.Errorf("%s has no %q", from.Sheet.Name, link.Name)
	}
	if r := from.Sheet.FindResult(link.Name); r != nil && r.when != nil {
		return unit.Factor{}, fmt.Errorf("%s.%s may be left out, so nothing can take it", link.Use, link.Name)
	}
	if to.Date != from.Sheet.IsDate(link.Name) {
		return unit.Factor{}, fmt.Errorf("a date and a number cannot stand for each other, as %s and %s.%s would",
			given, link.Use, link.Name)
	}
	if taken, _, _, ok := to.kindOf(fitsLinked(u)); ok {
		return u.For(taken)
	}
	return unit.Factor{}, fmt.Errorf("%s.%s is %s; %s takes %s%s",
		link.Use, link.Name, u, given, to.takes(), accountAdvice(u, to))
}

// accountAdvice says which account word a unit needs before a given takes it, when it tells none.
func accountAdvice(u unit.Unit, to *Given) string {
	var words []string
	for _, taken := range to.kinds() {
		if word := taken.Account(); word != "" && u.Dimension().Fits(taken.Dimension()) {
			words = append(words, strconv.Quote(word))
		}
	}
	if words == nil {
		return ""
	}
	return "; put " + strings.Join(words, " or ") + " at the end of its unit"
}

// linksKind says whether what a link points at is of a given's second kind of quantity, and which form it is told in.
func (g *Graph) linksKind(to *Given, link Link) (other bool, form int) {
	u, _ := g.Find(link.Use).Sheet.UnitOf(link.Name)
	_, other, form, _ = to.kindOf(fitsLinked(u))
	return other, form
}

// fitsLinked says whether a number of a unit may go where another is asked for: what may be typed, with its account.
func fitsLinked(u unit.Unit) func(unit.Unit) bool {
	return func(wanted unit.Unit) bool {
		_, err := u.For(wanted)
		return err == nil && (u.String() == "") == (wanted.String() == "") && u.Dimension().SameAccounts(wanted.Dimension())
	}
}

// Close orders the uses and makes the program. The error is a *CircleError, or the first link that does not hold.
func (g *Graph) Close() error {
	if err := g.Order(); err != nil {
		return err
	}
	layout := layouts.Get().(*layout)
	defer layouts.Put(layout)
	layout.reset(g)
	for _, u := range g.Uses {
		if err := layout.place(u); err != nil {
			return err
		}
	}
	for _, p := range g.Passages {
		layout.placePassage(p)
	}
	g.Program = layout.assembler.finish()
	g.Program.Cells, g.Program.Guards = layout.cells, layout.guards
	for _, u := range g.Uses {
		u.program = g.Program
	}
	return nil
}

// Order sorts the uses so that each comes after those it takes values from, and otherwise as they were added. The error
// is a *CircleError.
func (g *Graph) Order() error {
	var sorted []*Use
	done, path := map[*Use]bool{}, []*Use{}
	var visit func(u *Use) error
	visit = func(u *Use) error {
		if done[u] {
			return nil
		}
		if at := slices.Index(path, u); at >= 0 {
			var names []string
			for _, member := range append(path[at:], u) {
				names = append(names, member.Name)
			}
			return &CircleError{Members: names}
		}
		path = append(path, u)
		for _, given := range u.Sheet.Givens {
			if link, ok := u.Links[given.Name]; ok {
				if from := g.Find(link.Use); from != nil {
					if err := visit(from); err != nil {
						return err
					}
				}
			}
		}
		path = path[:len(path)-1]
		done[u] = true
		u.Index = len(sorted)
		sorted = append(sorted, u)
		return nil
	}
	for _, u := range g.Uses {
		if err := visit(u); err != nil {
			return err
		}
	}
	g.Uses = sorted
	return nil
}
