package worksheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// An Exercise is a block whose numbers vary from card to card.
type Exercise struct {
	Block    *markdown.Block
	Practice *practice.Exercise
	Title    string
	Hint     string // "" for none
	Cards    int
	Minutes  int // that the plan of a workshop has for it; 0 where it says nothing
	Story    []practice.Piece

	Placed *practice.Placed // in the graph of the page
	Bounds []*Bound         // what is at work for it there, in the order of the graph
}

// The keys of an exercise that are not givens.
const (
	keyChain   = "chain"
	keyStory   = "story"
	keyAsk     = "ask"
	keyDigits  = "digits"
	keyHint    = "hint"
	keyCards   = "cards"
	keyMinutes = "minutes"
	keyReport  = "report"
	keyChoose  = "choose"
	keyOptions = "options"
	keyOrder   = "order"
	keyItems   = "items"
)

var exerciseKeys = []string{keyCalculation, keyChain, keyTitle, keyStory, keyReport, keyAsk, keyDigits, keyChoose,
	keyOptions, keyOrder, keyItems, keyHint, keyCards, keyMinutes}

// ExerciseKeys lists the keys of an exercise that are not givens.
func ExerciseKeys() []string { return slices.Clone(exerciseKeys) }

const (
	usualDigits, mostDigits   = 3, 6
	usualCards, mostCards     = 40, 500
	usualMinutes, mostMinutes = 8, 240
)

// Exercise gives what a block was bound to. It is nil for a block with a fault, and for any that is no exercise.
func (p *Page) Exercise(block *markdown.Block) *Exercise {
	for _, e := range p.Exercises {
		if e.Block.Index == block.Index {
			return e
		}
	}
	return nil
}

// An exerciseReader reads the entries of one exercise.
type exerciseReader struct {
	*binder
	block    *markdown.Block
	made     *Exercise
	entries  map[string]markdown.Entry
	single   bool // one calculation, so that its givens are written without its name
	unfit    bool // a use or a given could not be read
	mentions map[string]bool
}

// addExercise binds an exercise.
func (b *binder) addExercise(block *markdown.Block) {
	before := len(b.messages)
	r := &exerciseReader{binder: b, block: block, entries: map[string]markdown.Entry{}, mentions: map[string]bool{},
		made: &Exercise{Block: block, Practice: &practice.Exercise{}, Cards: usualCards}}
	b.checkTwice(block)
	for _, entry := range block.Entries {
		r.entries[entry.Key] = entry
		if isEmpty(entry) {
			return // reported
		}
	}
	if !r.readUses() {
		return
	}
	r.readGivens()
	r.checkGivens()
	r.readTexts()
	r.readAsk()
	r.readReport()
	r.readChoices()
	r.readStory()
	if block.Name == "" || block.Unread || len(b.messages) > before {
		return
	}
	r.made.Practice.Seed = r.seed()
	if r.checkCards() {
		b.exercises = append(b.exercises, r.made)
	}
}

// seed is what the cards follow from: the name of the exercise and its calculations. The name of the file is not in it,
// so that a translation has the same cards.
func (r *exerciseReader) seed() string {
	seed := r.block.Name
	for _, u := range r.made.Practice.Uses {
		seed += " " + u.Name + "=" + u.Sheet.Name
	}
	return seed
}

func (r *exerciseReader) at(key string) message.Span {
	if entry, is := r.entries[key]; is {
		return entry.ValueSpan
	}
	return r.block.Span
}

// readUses reads "calculation: soil-nitrogen", or "chain: soil = soil-nitrogen, season = season-budget".
func (r *exerciseReader) readUses() bool {
	chain, chained := r.entries[keyChain]
	one, is := r.entries[keyCalculation]
	if chained && is {
		r.fault(one.KeySpan, "exercise-uses", "this exercise has a calculation and a chain",
			"take one of the two lines out")
		return false
	}
	if !chained {
		s := r.calculation(r.block)
		if s == nil {
			return false
		}
		r.single = true
		r.use(s.Name, s)
		return true
	}
	good := true
	at := 0
	for _, piece := range strings.Split(chain.Value, ",") {
		name, wanted, found := strings.Cut(piece, "=")
		name, wanted = strings.TrimSpace(name), strings.TrimSpace(wanted)
		span := chain.Part(at, at+max(1, len(piece)))
		at += len(piece) + len(",")
		s := r.catalogue.Find(wanted)
		switch {
		case construct.Exercise.HasTable(name):
			r.fault(span, "exercise-uses", fmt.Sprintf("%q is a key of exercises, and cannot name a calculation", name),
				"give this one another name")
			good = false
		case !found || name == "" || strings.ContainsAny(name, ". "):
			r.fault(span, "exercise-uses", fmt.Sprintf("%q is not a name, = and a calculation", strings.TrimSpace(piece)),
				"for example: chain: soil = soil-nitrogen, season = season-budget")
			good = false
		case s == nil:
			if !r.catalogue.Faulty(wanted) {
				r.fault(span, "calculation-unknown", fmt.Sprintf("there is no calculation %q", wanted),
					write("", wanted, r.catalogue.Names()))
			}
			good = false
		case r.find(name) != nil:
			r.fault(span, "exercise-uses", fmt.Sprintf("the name %q is there twice", name), "give this one another name")
			good = false
		default:
			r.use(name, s.In(r.tag))
		}
	}
	return good
}

func (r *exerciseReader) use(name string, s *sheet.Sheet) {
	r.made.Practice.Uses = append(r.made.Practice.Uses, &practice.Use{Name: name, Sheet: s,
		Fixed: map[string]sheet.Entry{}, Links: map[string]sheet.Link{}})
}

func (r *exerciseReader) find(name string) *practice.Use {
	for _, u := range r.made.Practice.Uses {
		if u.Name == name {
			return u
		}
	}
	return nil
}

// split parts "soil.nitrate" into the use and the name in it; in an exercise of one calculation the name is alone.
func (r *exerciseReader) split(text string) (*practice.Use, string) {
	if r.single && !strings.Contains(text, ".") {
		return r.made.Practice.Uses[0], text
	}
	name, rest, _ := strings.Cut(text, ".")
	return r.find(name), rest
}

// called is a given or an answer as the author writes it.
func (r *exerciseReader) called(u *practice.Use, name string) string {
	if r.single {
		return name
	}
	return u.Name + "." + name
}

// names lists what an author may write for what has a name in the uses.
func (r *exerciseReader) names(of func(*sheet.Sheet) []string) []string {
	var list []string
	for _, u := range r.made.Practice.Uses {
		for _, name := range of(u.Sheet) {
			list = append(list, r.called(u, name))
		}
	}
	return list
}

func givenNames(s *sheet.Sheet) []string {
	var names []string
	for _, g := range s.Givens {
		names = append(names, g.Name)
	}
	return names
}

// askable lists the steps and answers that can be asked for: numbers that are always there.
func askable(s *sheet.Sheet) []string {
	var names []string
	for _, result := range s.Results {
		if result.Always() {
			names = append(names, result.Name)
		}
	}
	return names
}

// readTexts reads what is no given and asks for nothing.
func (r *exerciseReader) readTexts() {
	r.made.Title, r.made.Hint = r.entries[keyTitle].Value, r.entries[keyHint].Value
	if r.made.Title == "" {
		r.made.Title = r.made.Practice.Uses[0].Sheet.Title
	}
	r.made.Cards = r.number(keyCards, usualCards, mostCards)
	if _, planned := r.entries[keyMinutes]; planned {
		r.made.Minutes = r.number(keyMinutes, usualMinutes, mostMinutes)
	}
}

// number reads a whole number from 1 on.
func (r *exerciseReader) number(key string, usual, most int) int {
	entry, is := r.entries[key]
	if !is {
		return usual
	}
	n, err := strconv.Atoi(entry.Value)
	if err != nil || n < 1 || n > most {
		r.fault(entry.ValueSpan, "exercise-number", fmt.Sprintf("%s is a whole number from 1 to %d", key, most),
			fmt.Sprintf("for example: %s: %d", key, usual))
		return usual
	}
	return n
}

// readAsk reads "ask: soil.nitrogen, season.apply". What is asked for comes in the order of the work.
func (r *exerciseReader) readAsk() {
	digits := r.number(keyDigits, usualDigits, mostDigits)
	entry, is := r.entries[keyAsk]
	known := r.names(askable)
	if !is {
		r.fault(r.block.Span, "exercise-ask", "this exercise does not say what it asks for",
			"add a line such as: ask: "+known[len(known)-1])
		return
	}
	for _, text := range strings.Split(entry.Value, ",") {
		text = strings.TrimSpace(text)
		u, name := r.split(text)
		if u == nil || !slices.Contains(askable(u.Sheet), name) {
			r.fault(entry.ValueSpan, "exercise-ask", fmt.Sprintf("%q is not a number that this exercise works out", text),
				write("", text, known))
			return
		}
		ask := practice.Ask{Use: u.Name, Result: name, Digits: digits}
		if slices.Contains(r.made.Practice.Asks, ask) {
			r.fault(entry.ValueSpan, "exercise-ask", fmt.Sprintf("%q is asked for twice", text), "take one of the two out")
			return
		}
		r.made.Practice.Asks = append(r.made.Practice.Asks, ask)
	}
	slices.SortStableFunc(r.made.Practice.Asks, func(a, b practice.Ask) int {
		return slices.Index(known, r.called(r.find(a.Use), a.Result)) - slices.Index(known, r.called(r.find(b.Use), b.Result))
	})
}

// placeExercises puts the exercises into the graph of the page. Each of their uses has a Bound, as a worksheet has.
func (b *binder) placeExercises(graph *sheet.Graph) {
	for _, e := range b.exercises {
		before := len(graph.Uses)
		placed, err := e.Practice.Place(graph, "exercise "+e.Block.Name+" ")
		if err != nil {
			panic(err) // its cards were dealt
		}
		e.Placed, e.Bounds = placed, nil
		for _, use := range graph.Uses[before:] {
			e.Bounds = append(e.Bounds,
				&Bound{Block: e.Block, Kind: construct.Exercise, Sheet: use.Sheet, Use: use, name: use.Name})
		}
	}
}

// Quantity is the right answer to a part of an exercise, for the numbers of its first card.
func Quantity(p *Page, part *practice.Part) unit.Quantity {
	if part.Choice != nil {
		return unit.Quantity{Value: p.Cells[part.RightCell()]}
	}
	return sheet.Outcome{Use: part.At(), Cells: p.Cells}.Value(part.Result)
}
