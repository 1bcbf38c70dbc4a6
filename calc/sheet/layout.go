package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// A layout gives every value of a graph its cell and writes the program that fills them. The cells of a use lie side
// by side: its givens, whether each optional one is there, its results, its remarks, its ways of working.
type layout struct {
	assembler *assembler
	graph     *Graph
	cells     int
	holds     []known     // by use: the instruction that holds each named value
	guards    map[int]int // see Program.Guards
	kept      map[int]int // by instruction: the cell that holds its value already
}

// layouts are those that were used, with the room of their tables: a press closes a graph for each page.
var layouts = sync.Pool{New: func() any { return &layout{assembler: newAssembler(), kept: map[int]int{}} }}

// reset makes a layout ready for another graph.
func (l *layout) reset(g *Graph) {
	l.assembler.reset()
	l.graph, l.cells, l.guards = g, 0, map[int]int{}
	l.holds = l.holds[:0]
	clear(l.kept)
}

// newKnown is a table with nothing known, one that was used before if there is any.
func (l *layout) newKnown() known {
	if n := len(l.holds); n < cap(l.holds) {
		if used := l.holds[:n+1][n]; used != nil {
			clear(used)
			return used
		}
	}
	return known{}
}

func (l *layout) cell() int {
	l.cells++
	return l.cells - 1
}

func (l *layout) place(u *Use) error {
	u.language = cmp.Or(l.graph.Language, u.Sheet.language())
	u.say = words.InGeneral(u.language)
	named := len(u.Sheet.Givens) + len(u.Sheet.Results)
	u.cells, u.typed = make(map[string]int, named), make(map[string]bool, named)
	u.presence, u.outside = map[string]int{}, map[string]int{}
	u.others, u.there, u.forms, u.linked = map[string]int{}, map[string]int{}, map[string]int{}, map[string]Entry{}
	u.kinds = map[string]int{}
	u.remarks, u.slips, u.open, u.After = nil, nil, nil, nil
	for name := range u.Links {
		if u.Sheet.FindGiven(name) == nil {
			return fmt.Errorf("worksheet %q: %s has no given %q", u.Name, u.Sheet.Name, name)
		}
	}
	k := l.newKnown()
	for _, given := range u.Sheet.Givens {
		if err := l.placeGiven(u, given, k); err != nil {
			return err
		}
	}
	if u.Quiet {
		for _, name := range u.Marks {
			u.cells[name] = l.keep(u.Sheet.FindResult(name).n, k)
		}
		l.placeSlips(u, k)
		l.holds = append(l.holds, k)
		return nil
	}
	for _, r := range u.Sheet.Results {
		u.cells[r.Name] = l.keep(r.n, k)
		u.typed[r.Name] = u.takes(r.n.args[0])
		if r.when != nil {
			u.there[r.Name] = l.keep(r.when, k)
			l.guards[u.cells[r.Name]] = u.there[r.Name]
		}
	}
	for _, r := range u.told() {
		cell := -1
		if r.when != nil {
			cell = l.keep(r.when, k)
		}
		u.remarks = append(u.remarks, cell)
	}
	u.ways = make(map[string][]int, len(u.Sheet.Results))
	for _, r := range u.Sheet.Results {
		u.ways[r.Name] = l.placeWays(r, k)
	}
	l.placeSlips(u, k)
	l.placeTrends(u, k)
	l.holds = append(l.holds, k)
	return nil
}

// told are the remarks and the cases of the headline, where somebody is told them.
func (u *Use) told() []*Remark {
	if u.Unsaid {
		return nil
	}
	return u.Sheet.spoken()
}

// placeSlips keeps what the slips give: all of them in a graph that works slips, and else those of marked results.
func (l *layout) placeSlips(u *Use, k known) {
	if !l.graph.Slips && u.Marks == nil {
		return
	}
	for _, slip := range u.Sheet.Slips {
		value, open := -1, -1
		if l.graph.Slips && !u.Quiet || slices.Contains(u.Marks, slip.Answer) {
			value = l.keep(slip.n, k)
			if slip.when != nil {
				open = l.keep(slip.when, k)
			}
		}
		u.slips, u.open = append(u.slips, value), append(u.open, open)
	}
}

// placeGiven makes a given an input of the program, or ties it to the value that it is linked to.
func (l *layout) placeGiven(u *Use, given *Given, k known) error {
	u.cells[given.Name] = l.cell()
	cell := u.cells[given.Name]
	link, linked := u.Links[given.Name]
	if !linked {
		u.typed[given.Name] = true
		k[given.n] = l.assembler.input(cell)
		if given.stated != nil {
			u.presence[given.Name] = l.cell()
			k[given.stated] = l.assembler.input(u.presence[given.Name])
		}
		if given.other != nil {
			u.others[given.Name] = l.cell()
			k[given.other.is] = l.assembler.input(u.others[given.Name])
		}
		l.placeForms(u, given, k)
		return nil
	}
	factor, err := l.graph.linkFactor(u.Sheet, given.Name, link)
	if err != nil {
		return fmt.Errorf("worksheet %q: %w", u.Name, err)
	}
	other, form := l.graph.linksKind(given, link)
	u.linked[given.Name] = Entry{Other: other, Form: form}
	from := l.graph.Find(link.Use)
	if source := from.Sheet.FindGiven(link.Name); source != nil && source.sameKinds(given) {
		k[given.other.is] = l.holds[from.Index][source.other.is]
		u.kinds[given.Name] = l.hold(k[given.other.is])
	} else if given.other != nil {
		k[given.other.is] = l.assembler.literal(truth(other))
	}
	for i, f := range given.forms {
		k[f.is] = l.assembler.literal(truth(i+1 == form))
	}
	u.typed[given.Name] = from.typed[link.Name]
	value := l.holds[from.Index][from.Sheet.named[link.Name]]
	value = l.assembler.convert(value, factor.Multiply, factor.Divide)
	k[given.n] = value
	if !u.Quiet {
		l.assembler.output(value, cell)
	}
	if given.stated != nil {
		k[given.stated] = l.assembler.literal(1)
		if source := from.Sheet.FindGiven(link.Name); source != nil && source.stated != nil {
			k[given.stated] = l.holds[from.Index][source.stated]
		}
	}
	if !u.Quiet && !u.Unsaid && !within(from.Sheet.FindGiven(link.Name), given, factor) {
		l.watchRange(u, given, k)
	}
	if !slices.Contains(u.After, from.Index) {
		u.After = append(u.After, from.Index)
	}
	return nil
}

// takes says whether a term is a number that a person typed, or a figure of a table, as it stands: nothing is worked.
func (u *Use) takes(n *node) bool {
	switch n.kind {
	case kindGiven, kindNamed:
		return u.typed[n.name]
	case kindNumber, kindConstant, kindLookup:
		return true
	case kindIf:
		return u.takes(n.args[1]) && u.takes(n.args[2])
	}
	return false
}

// placeForms makes the form that a given is told in an input of the program.
func (l *layout) placeForms(u *Use, given *Given, k known) {
	if given.forms == nil {
		return
	}
	u.forms[given.Name] = l.cell()
	told := l.assembler.input(u.forms[given.Name])
	for i, f := range given.forms {
		k[f.is] = l.assembler.emit(Equal, told, l.assembler.literal(float64(i+1)))
	}
}

// within says whether a value that is linked never lies outside what the given takes: it is a given itself, where what
// is outside is refused already, and its range is no wider.
func within(source, given *Given, factor unit.Factor) bool {
	if source == nil || source.forms != nil || given.forms != nil ||
		factor.Apply(source.Low) < given.Low || factor.Apply(source.High) > given.High {
		return false
	}
	if given.other == nil {
		return source.other == nil
	}
	return source.sameKinds(given) && source.Else.Low >= given.Else.Low && source.Else.High <= given.Else.High
}

// watchRange keeps whether a linked value lies outside what the given takes: no field is there to refuse it.
func (l *layout) watchRange(u *Use, given *Given, k known) {
	a := l.assembler
	low, high := a.literal(given.Low), a.literal(given.High)
	if given.other != nil {
		low = a.emit(Select, k[given.other.is], a.literal(given.Else.Low), low)
		high = a.emit(Select, k[given.other.is], a.literal(given.Else.High), high)
	}
	inside := a.emit(And, a.emit(LessOrEqual, low, k[given.n]), a.emit(LessOrEqual, k[given.n], high))
	outside := a.emit(Not, inside)
	if given.stated != nil {
		outside = a.emit(And, k[given.stated], outside)
	}
	u.outside[given.Name] = l.cell()
	a.output(outside, u.outside[given.Name])
}

// keep works a node and writes its value to a cell. What is worked once has one cell, whoever asks for it: a question
// is often asked by a result, by its ways and by a remark.
func (l *layout) keep(n *node, k known) int { return l.hold(l.assembler.work(n, k)) }

func (l *layout) hold(value int) int {
	cell, held := l.kept[value]
	if !held {
		cell = l.cell()
		l.kept[value] = cell
		l.assembler.output(value, cell)
	}
	return cell
}

// placeWays keeps, for each way that a result may be worked, whether it is the one, so that the work shown is the
// work done.
func (l *layout) placeWays(r *Result, k known) []int {
	ways := r.ways()
	cells := make([]int, len(ways))
	for i, w := range ways {
		cells[i] = -1
		if len(w.asked) == 0 {
			continue
		}
		taken := l.answer(w, 0, k)
		for j := 1; j < len(w.asked); j++ {
			taken = l.assembler.emit(And, taken, l.answer(w, j, k))
		}
		cells[i] = l.hold(taken)
	}
	return cells
}

// answer says whether a question on a way is answered as that way needs it.
func (l *layout) answer(w *way, question int, k known) int {
	asked := l.assembler.work(w.asked[question], k)
	if w.yes[question] {
		return asked
	}
	return l.assembler.emit(Not, asked)
}

// Cell is where the value of a given, step or answer stands, in its own unit. False if there is none of that name.
func (u *Use) Cell(name string) (int, bool) {
	cell, ok := u.cells[name]
	return cell, ok
}

// Presence is the cell that says whether an optional given is filled in (1) or not (0). False if the given is not
// optional, or takes its value from a link and so is always there.
func (u *Use) Presence(given string) (int, bool) {
	cell, ok := u.presence[given]
	return cell, ok
}

// OtherCell is the cell that says whether a given was written as its second kind of quantity (1) or not (0). False if
// the given has no second kind, or takes its value from a link.
func (u *Use) OtherCell(given string) (int, bool) {
	cell, ok := u.others[given]
	return cell, ok
}

// FormCell is the cell that says which form a given is told in, 0 for none. False if it has no forms, or takes its
// value from a link.
func (u *Use) FormCell(given string) (int, bool) {
	cell, ok := u.forms[given]
	return cell, ok
}

// There is the cell that says whether a result is there (1) or left out (0). False if it is always there.
func (u *Use) There(result string) (int, bool) {
	cell, ok := u.there[result]
	return cell, ok
}

// Outside is the cell that says whether a linked given has a value outside its range (1) or not (0). False if the given
// is not linked, or takes its value from a given that has no more room.
func (u *Use) Outside(given string) (int, bool) {
	cell, ok := u.outside[given]
	return cell, ok
}

// RemarkCell is the cell that says whether the sheet's i-th remark is said (1) or not (0); -1 if it is said always.
func (u *Use) RemarkCell(i int) int { return u.remarks[i] }
