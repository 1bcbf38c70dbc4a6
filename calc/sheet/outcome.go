package sheet

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"acreleaf/calc/unit"
)

// An Outcome is one use of a sheet with its values filled in and worked.
type Outcome struct {
	Use   *Use
	Cells []float64
}

// Said is a remark as it is spoken, with its values in it.
type Said struct {
	Signal Signal
	Text   string
}

// A Refused error withholds the answers of a calculation, with the sentences that say why.
type Refused struct{ Sentences []string }

func (e *Refused) Error() string { return strings.Join(e.Sentences, " ") }

// Evaluate works the sheet. values holds each given in its own unit by name; an optional one may be left out. The
// error says which given is missing or outside its range, or is a *Refused.
func (s *Sheet) Evaluate(values map[string]float64) (Outcome, error) {
	return s.evaluate(values, false)
}

func (s *Sheet) evaluate(values map[string]float64, slips bool) (Outcome, error) {
	g := &Graph{Slips: slips}
	use := g.Add(s.Name, s, nil)
	if err := g.Close(); err != nil {
		return Outcome{}, err
	}
	for _, name := range slices.Sorted(maps.Keys(values)) {
		if s.FindGiven(name) == nil {
			return Outcome{}, fmt.Errorf("%s has no given %q", s.Name, name)
		}
	}
	cells := make([]float64, g.Program.Cells)
	for _, given := range s.Givens {
		value, ok := values[given.Name]
		if !ok && given.Optional {
			continue
		}
		if !ok {
			return Outcome{}, fmt.Errorf("%s is missing; write %s=%q", given.Name, given.Name, given.Example())
		}
		if err := given.Check(value); err != nil {
			return Outcome{}, fmt.Errorf("%s: %w", given.Name, err)
		}
		use.Set(cells, given.Name, value)
	}
	g.Program.Run(cells)
	o := Outcome{Use: use, Cells: cells}
	return o, o.Err()
}

// Set fills in a given, in its own unit.
func (u *Use) Set(cells []float64, given string, value float64) {
	cells[u.cells[given]] = value
	if p, ok := u.presence[given]; ok {
		cells[p] = 1
	}
}

// Value is a given, step or answer in its own unit.
func (o Outcome) Value(name string) unit.Quantity {
	u, _ := o.Use.Sheet.UnitOf(name)
	return unit.Quantity{Value: o.Cells[o.Use.cells[name]], Unit: u}
}

// Stated says whether a given was filled in.
func (o Outcome) Stated(given string) bool {
	p, ok := o.Use.presence[given]
	return !ok || o.Cells[p] != 0
}

// Err is a *Refused if a refusal of the sheet holds, and an error if an answer is not a finite number.
func (o Outcome) Err() error {
	var sentences []string
	for i, r := range o.Use.Sheet.Remarks {
		if r.Signal == Refusal && o.said(i) {
			sentences = append(sentences, o.text(r))
		}
	}
	if sentences != nil {
		return &Refused{Sentences: sentences}
	}
	for _, r := range o.Use.Sheet.Results {
		if v := o.Value(r.Name).Value; math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Errorf("%s cannot be worked from these numbers; check them against the report", spaced(r.Name))
		}
	}
	return nil
}

// Said lists the remarks that hold, in the order of the sheet, without its refusals.
func (o Outcome) Said() []Said {
	var said []Said
	for i, r := range o.Use.Sheet.Remarks {
		if r.Signal != Refusal && o.said(i) {
			said = append(said, Said{r.Signal, o.text(r)})
		}
	}
	return said
}

func (o Outcome) said(remark int) bool {
	cell := o.Use.remarks[remark]
	return cell < 0 || o.Cells[cell] != 0
}

func (o Outcome) text(r *Remark) string {
	var b strings.Builder
	for _, p := range r.Pieces() {
		if p.Name != "" {
			b.WriteString(o.Value(p.Name).String())
		} else {
			b.WriteString(p.Text)
		}
	}
	return b.String()
}

// SlipValues works every slip of the sheet, by name, in the unit of the answer that each gets wrong.
func (s *Sheet) SlipValues(values map[string]float64) (map[string]float64, error) {
	o, err := s.evaluate(values, true)
	if err != nil {
		return nil, err
	}
	slips := map[string]float64{}
	for i, slip := range s.Slips {
		slips[slip.Name] = o.Cells[o.Use.slips[i]]
	}
	return slips, nil
}
