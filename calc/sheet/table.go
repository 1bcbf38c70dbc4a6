package sheet

import (
	"math"
	"slices"

	"acreleaf/calc/unit"
)

// None marks an option of a table without a known figure. The table has a dash for it and gives 0, which means nothing:
// a calculation refuses such an option, or goes another way.
var None = math.NaN()

// Lookup is a figure of the given unit for the option that is chosen. Every option must have one.
func (s *Sheet) Lookup(name, unitText string, choice *Given, figures map[string]float64) Term {
	u := s.parseUnit(unitText)
	n := &node{kind: kindLookup, args: []*node{choice.n}, unit: u, said: "by " + spaced(choice.Name)}
	if len(figures) != len(choice.Choices) {
		s.fault("%q needs a figure for each of the %d options of %q", name, len(choice.Choices), choice.Name)
	}
	for _, option := range choice.Choices {
		figure, ok := figures[option.Name]
		if !ok {
			s.fault("%q has no figure for %q", name, option.Name)
		}
		if math.IsNaN(figure) {
			figure = 0
		}
		n.figures = append(n.figures, figure)
	}
	return s.wrap(n)
}

// A Cell is one figure of a table, with where it is from.
type Cell struct {
	Value   float64  // None where no figure is known
	Sources []string // ids of the bibliography, the main one first; none for those of the whole table
}

// Cells are figures that are all from the sources of their table.
func Cells(figures map[string]float64) map[string]Cell {
	cells := map[string]Cell{}
	for option, figure := range figures {
		cells[option] = Cell{Value: figure}
	}
	return cells
}

// Figures are the rows of a table: a cell for each option of a choice.
type Figures struct {
	Unit   unit.Unit
	Choice *Given
	Cells  []Cell // in the order of the options
}

// NoteSources are the ids of the sources that the notes of a sheet's tables rest on.
func (s *Sheet) NoteSources() []string {
	var ids []string
	for _, c := range s.Constants {
		if c.Table == nil {
			continue
		}
		for _, o := range c.Table.Choice.Choices {
			for _, id := range o.Sources {
				if !slices.Contains(ids, id) {
					ids = append(ids, id)
				}
			}
		}
	}
	return ids
}

// Text is a figure of the table as a reader sees it, by the index of the option.
func (f *Figures) Text(option int) string {
	if math.IsNaN(f.Cells[option].Value) {
		return "–"
	}
	return unit.Text(f.Cells[option].Value)
}

// Table adds a step that looks up a figure for the option that is chosen, and says where the figures come from. The
// fact reads as the table is called: "by material".
func (s *Sheet) Table(name, unitText string, choice *Given, cells map[string]Cell, f Fact) Term {
	found := s.Listed(name, unitText, choice, cells, f)
	return s.result(name, found.n.unit, found, Says{Label: f.Label}, false)
}

// Listed is a table without a step of its own, for a figure that a given may stand in for: the label of a material
// against the list of all materials. It must be a whole way to work a result, since it prints with that result's value.
// Several choices may share a list, which is then named once.
func (s *Sheet) Listed(name, unitText string, choice *Given, cells map[string]Cell, f Fact) Term {
	s.known(name, &f)
	figures := map[string]float64{}
	for option, cell := range cells {
		figures[option] = cell.Value
	}
	found := s.Lookup(name, unitText, choice, figures)
	if f.Reads == "" {
		s.fault("the table %q needs what it reads as", name)
	}
	found.n.said = f.Reads
	for _, c := range s.Constants {
		if c.Name == name && c.Table != nil {
			return found
		}
	}
	table := &Figures{Unit: found.n.unit, Choice: choice}
	for _, option := range choice.Choices {
		cell := cells[option.Name]
		if math.IsNaN(cell.Value) {
			cell.Sources = nil // nothing is known, from nowhere
		}
		if len(cell.Sources) == 0 && !math.IsNaN(cell.Value) {
			cell.Sources = f.Sources
		}
		if len(cell.Sources) == 0 && !math.IsNaN(cell.Value) {
			s.fault("the table %q needs a source for %q", name, option.Name)
		}
		table.Cells = append(table.Cells, cell)
	}
	f.Sources = table.sources()
	s.Constants = append(s.Constants, &Constant{Name: name, Fact: f, Table: table})
	return found
}

// sources are those of all cells, each once, in the order of the options.
func (f *Figures) sources() []string {
	var all []string
	for _, cell := range f.Cells {
		for _, id := range cell.Sources {
			if !slices.Contains(all, id) {
				all = append(all, id)
			}
		}
	}
	return all
}
