package worksheet

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// A Finding is something that a passage says or does with other numbers than the example's.
type Finding struct {
	Kind   FindingKind
	Case   int
	Figure *markdown.Figure // of a blank or a negative one
	Value  string           // of a negative figure: what the page would say
	With   string           // the numbers that bring it about: "soil.nitrate 0 ppm NO3-N"
}

// FindingKind is what was found.
type FindingKind int

// What trials find.
const (
	NeverHolds    FindingKind = iota // no numbers were found for which the case holds
	SaysNothing                      // a figure has no value
	SaysNegative                     // a figure is below 0
	DividesByZero                    // the passage is withheld, since the condition of the case divides by 0
)

// A Tried is what the trials of a passage found.
type Tried struct {
	Findings []Finding
	// Options has for each case, by "worksheet.given", the options of a choice at which the case held.
	Options []map[string]map[string]bool
}

// How many trials there are beyond each given's ends and options: of all givens at random, at first, and until every
// case has held once.
const (
	randomTrials = 48
	searchTrials = 4000
)

// Try works the page at the ends of every given that a passage depends on and at every option of every choice, one
// after another and together, and looks at what the passage then says.
func (p *Page) Try(passage *Passage) Tried {
	t := &trial{page: p, passage: passage, random: rand.New(rand.NewPCG(1, 1))}
	t.held = make([]bool, len(passage.Written.Cases))
	t.Options = make([]map[string]map[string]bool, len(t.held))
	t.listGivens()
	t.listFigures()
	t.program = p.Graph.Program.Slice(t.asked())
	t.cells, t.room = make([]float64, len(p.Cells)), make([]float64, len(t.program.Code))
	t.run(nil)
	for _, g := range t.givens {
		for _, v := range g.ends {
			t.run([]set{{g, v}})
		}
	}
	for n := 0; n < searchTrials && (n < randomTrials || slices.Contains(t.held, false)); n++ {
		t.run(t.draw())
	}
	for i, held := range t.held {
		if !held {
			t.Findings = append(t.Findings, Finding{Kind: NeverHolds, Case: i})
		}
	}
	return t.Tried
}

// A trial is one run of Try.
type trial struct {
	Tried
	page    *Page
	passage *Passage
	program *sheet.Program // what the passage needs of the page's
	cells   []float64      // of the page, in the trial that is run
	room    []float64      // see sheet.Program.RunIn
	givens  []tried
	random  *rand.Rand
	held    []bool      // by case
	figures [][]*Figure // by case

	refusals, results []int // cells of all worksheets that the passage depends on
}

// A tried is a given that trials set.
type tried struct {
	bound *Bound
	*sheet.Given
	ends []float64 // what it is tried at by itself
}

// A set is a given with what a trial sets it to; NaN leaves an optional one empty.
type set struct {
	tried
	value float64
}

// listGivens finds the givens that the passage depends on, also through other worksheets.
func (t *trial) listGivens() {
	seen := map[int]bool{}
	var add func(use int)
	add = func(use int) {
		if seen[use] {
			return
		}
		seen[use] = true
		bound := t.page.parts[use]
		for _, other := range bound.Use.After {
			add(other)
		}
		t.refusals = append(t.refusals, refusals(bound)...)
		for _, r := range bound.Sheet.Results {
			cell, _ := bound.Use.Cell(r.Name)
			t.results = append(t.results, cell)
		}
		for _, g := range bound.Sheet.Givens {
			if _, linked := bound.From(g.Name); !linked {
				t.givens = append(t.givens, tried{bound, g, ends(g)})
			}
		}
	}
	for _, use := range t.passage.Asked.After {
		add(use)
	}
}

// listFigures finds the figures of each case.
func (t *trial) listFigures() {
	t.figures = make([][]*Figure, len(t.held))
	for _, index := range slices.Sorted(maps.Keys(t.page.figures)) {
		if f := t.page.figures[index]; f.Written.Passage == t.passage.Written {
			t.figures[f.Written.Case] = append(t.figures[f.Written.Case], f)
		}
	}
}

// asked lists the cells that a trial looks at.
func (t *trial) asked() []int {
	cells := slices.Concat(t.refusals, t.results, t.passage.Asked.Refusals())
	for i := range t.held {
		cells = append(cells, t.passage.Asked.CaseCell(i))
		for _, f := range t.figures[i] {
			cells = append(cells, f.Cell)
			if there, may := f.Bound.Use.There(f.Name); may {
				cells = append(cells, there)
			}
		}
	}
	return cells
}

// ends are the values that a given is tried at by itself.
func ends(g *sheet.Given) []float64 {
	if len(g.Choices) > 0 {
		var all []float64
		for i := range g.Choices {
			all = append(all, float64(i))
		}
		return all
	}
	ends := []float64{g.Low, g.High, g.Typical}
	if g.Optional {
		ends = append(ends, math.NaN())
	}
	return ends
}

// draw sets some givens at random, most of them: to an end, or to anything between.
func (t *trial) draw() []set {
	var all []set
	for _, g := range t.givens {
		switch kind := t.random.IntN(4); {
		case kind == 0: // it stays
		case kind < 3 || len(g.Choices) > 0:
			all = append(all, set{g, g.ends[t.random.IntN(len(g.ends))]})
		default:
			part := t.random.Float64()
			v := g.Low + (g.High-g.Low)*part*part // most ordinary numbers lie in the lower part
			if g.Date {
				v = math.Floor(v)
			}
			all = append(all, set{g, v})
		}
	}
	return all
}

// run works the page once, and looks at the passage.
func (t *trial) run(sets []set) {
	cells := t.cells
	copy(cells, t.page.Cells)
	for _, s := range sets {
		use := s.bound.Use
		use.Set(cells, s.Name, s.value)
		use.SetKind(cells, s.Name, sheet.Entry{})
		if presence, optional := use.Presence(s.Name); optional && math.IsNaN(s.value) {
			use.Set(cells, s.Name, 0)
			cells[presence] = 0
		}
	}
	t.program.RunIn(t.room, cells)
	if !t.answered(cells) {
		return
	}
	refuses := func(cell int) bool { return cells[cell] != 0 }
	if i := slices.IndexFunc(t.passage.Asked.Refusals(), refuses); i >= 0 {
		t.find(Finding{Kind: DividesByZero, Case: t.passage.Asked.RefusingCase(i), With: told(sets)})
		return
	}
	for i := range t.held {
		if cell := t.passage.Asked.CaseCell(i); cell < 0 || cells[cell] != 0 {
			t.look(i, cells, sets)
			return
		}
	}
}

// answered says whether all worksheets that the passage depends on have answers.
func (t *trial) answered(cells []float64) bool {
	for _, cell := range t.refusals {
		if cells[cell] != 0 {
			return false
		}
	}
	for _, cell := range t.results {
		if v := cells[cell]; math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// look takes in what the case that holds says.
func (t *trial) look(i int, cells []float64, sets []set) {
	t.held[i] = true
	if t.Options[i] == nil {
		t.Options[i] = map[string]map[string]bool{}
	}
	for _, g := range t.givens {
		if len(g.Choices) == 0 {
			continue
		}
		name := g.bound.name + "." + g.Name
		if t.Options[i][name] == nil {
			t.Options[i][name] = map[string]bool{}
		}
		cell, _ := g.bound.Use.Cell(g.Name)
		t.Options[i][name][g.Choices[int(cells[cell])].Name] = true
	}
	for _, f := range t.figures[i] {
		o := sheet.Outcome{Use: f.Bound.Use, Cells: cells}
		value := f.By.Apply(cells[f.Cell])
		finding := Finding{Case: i, Figure: f.Written}
		switch {
		case !o.There(f.Name) || !t.page.statedIn(f.Bound, f.Name, cells) || math.IsNaN(value) || math.IsInf(value, 0):
			finding.Kind = SaysNothing
		case value < 0 && !f.Bound.Sheet.IsDate(f.Name):
			finding.Kind, finding.Value = SaysNegative, f.Before+unit.Text(value)+f.After
		default:
			continue
		}
		finding.With = told(sets)
		t.find(finding)
	}
}

// find keeps what was not found before.
func (t *trial) find(f Finding) {
	for _, before := range t.Findings {
		if before.Kind == f.Kind && before.Case == f.Case && before.Figure == f.Figure {
			return
		}
	}
	t.Findings = append(t.Findings, f)
}

// told says what a trial set.
func told(sets []set) string {
	const most = 3
	var parts []string
	for _, s := range sets {
		text := "left empty"
		switch {
		case len(s.Choices) > 0:
			text = s.Choices[int(s.value)].Name
		case s.Date:
			text = sheet.DateText(s.value)
		case !math.IsNaN(s.value):
			text = unit.Quantity{Value: s.value, Unit: s.Unit}.String()
		}
		parts = append(parts, s.bound.name+"."+s.Name+" "+text)
	}
	if len(parts) == 0 {
		return "the numbers of the example"
	}
	if len(parts) > most {
		parts = append(parts[:most], "others")
	}
	return strings.Join(parts, ", ")
}
