package sheet

import (
	"fmt"
	"maps"
	"slices"
)

// A Bench is a sheet made ready to be worked again and again.
type Bench struct {
	use       *Use
	program   *Program
	low, high []float64
}

// NewBench makes a sheet ready.
func NewBench(s *Sheet) *Bench { return newBench(s, false) }

func newBench(s *Sheet, slips bool) *Bench {
	g := &Graph{Slips: slips}
	use := g.Add(s.Name, s, nil)
	if err := g.Close(); err != nil {
		panic(err) // a sheet without links always closes
	}
	return &Bench{
		use: use, program: g.Program,
		low: make([]float64, g.Program.Cells), high: make([]float64, g.Program.Cells),
	}
}

// Work works the sheet for what was read for its givens, by name; an optional one may be left out. The error says which
// given is missing or outside its range, or is a *Refused. The outcome holds until the next call.
func (b *Bench) Work(entries map[string]Entry) (Outcome, error) {
	for _, name := range slices.Sorted(maps.Keys(entries)) {
		if b.use.Sheet.FindGiven(name) == nil {
			return Outcome{}, fmt.Errorf("%s has no given %q", b.use.Sheet.Name, name)
		}
	}
	clear(b.low)
	clear(b.high)
	for _, given := range b.use.Sheet.Givens {
		entry, ok := entries[given.Name]
		if !ok && given.Optional {
			continue
		}
		if !ok {
			entry, ok = given.Unsaid()
		}
		if !ok {
			return Outcome{}, fmt.Errorf("%s is missing; write %s=%q", given.Name, given.Name, given.Example())
		}
		if err := given.CheckEntry(entry); err != nil {
			return Outcome{}, fmt.Errorf("%s: %w", given.Name, err)
		}
		b.use.Enter(b.low, b.high, given.Name, entry)
	}
	b.program.Spread(b.low, b.high)
	o := Outcome{Use: b.use, Cells: b.low, High: b.high}
	return o, o.Err()
}

// Evaluate works the sheet for single numbers, each in the own unit of its given, by name. The error is as that of
// Bench.Work.
func (s *Sheet) Evaluate(values map[string]float64) (Outcome, error) {
	return newBench(s, false).Work(singles(values))
}

func singles(values map[string]float64) map[string]Entry {
	entries := map[string]Entry{}
	for name, value := range values {
		entries[name] = Entry{Value: value, High: value}
	}
	return entries
}

// Set fills in a given with one number, in its own unit.
func (u *Use) Set(cells []float64, given string, value float64) {
	cells[u.cells[given]] = value
	if p, ok := u.presence[given]; ok {
		cells[p] = 1
	}
}

// Enter fills in a given with what was read for it: its lower end in low, its upper end in high.
func (u *Use) Enter(low, high []float64, given string, e Entry) {
	u.Set(low, given, e.Value)
	u.Set(high, given, e.High)
	u.SetKind(low, given, e)
	u.SetKind(high, given, e)
}

// SetKind says of a given that it is of the kind and in the form of what was read for it.
func (u *Use) SetKind(cells []float64, given string, e Entry) {
	if cell, ok := u.others[given]; ok {
		cells[cell] = truth(e.Other)
	}
	if cell, ok := u.forms[given]; ok {
		cells[cell] = float64(e.Form)
	}
}

// Slip is what a slip of the sheet gives, in the unit of the answer that it gets wrong, in a graph that works slips.
func (o Outcome) Slip(slip *Slip) float64 {
	return o.Cells[o.Use.slips[slices.Index(o.Use.Sheet.Slips, slip)]]
}

// SlipCells are the cell of what a slip gives, and the one that is 0 while nobody can make it: -1 for one that is
// always open. The graph works it.
func (u *Use) SlipCells(slip *Slip) (value, open int) {
	i := slices.Index(u.Sheet.Slips, slip)
	return u.slips[i], u.open[i]
}

// Slips are those of the sheet that somebody can make with these numbers, in a graph that works slips.
func (o Outcome) Slips() []*Slip {
	var open []*Slip
	for i, slip := range o.Use.Sheet.Slips {
		if cell := o.Use.open[i]; o.Use.slips[i] >= 0 && (cell < 0 || o.Cells[cell] != 0) {
			open = append(open, slip)
		}
	}
	return open
}

// SlipValues works the slips that somebody can make with what was read for the givens, by name, in the unit of the
// answer that each gets wrong.
func (s *Sheet) SlipValues(entries map[string]Entry) (map[string]float64, error) {
	o, err := newBench(s, true).Work(entries)
	if err != nil {
		return nil, err
	}
	slips := map[string]float64{}
	for _, slip := range o.Slips() {
		slips[slip.Name] = o.Slip(slip)
	}
	return slips, nil
}
