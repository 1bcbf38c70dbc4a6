package sheet

import (
	"cmp"

	"acreleaf/calc/unit"
)

// A Fact says where a constant comes from. Its texts are those of the sheet's file, if it has one; what it reads may be
// given all the same, where it is a number.
type Fact struct {
	Label   string   // "Weight of water"
	Reads   string   // how it is printed in the work, if not as its number and unit: "2 lb/ac for each ppm and 6 in"
	Sources []string // ids of the bibliography, the main one first
	Note    string   // what it stands for, or where sources disagree
}

// A Constant is a figure that the calculation takes as known.
type Constant struct {
	Name     string
	Quantity unit.Quantity
	Fact
	Table *Figures // of a table: its rows, in place of the one quantity; nil for a figure

	// OnlySlips is set when no result and no remark needs the figure: only a known wrong way does, so a page need not
	// show it among what the answer rests on.
	OnlySlips bool
}

// Constant adds a figure with its unit ("62.4 lb water/ft3") and where it comes from.
func (s *Sheet) Constant(name, quantity string, f Fact) Term {
	s.known(name, &f)
	q, err := unit.ParseQuantity(quantity)
	if err != nil {
		s.fault("constant %q: %w", name, err)
		q.Unit = plain
	}
	q.Unit = q.Unit.In(s.language())
	if len(f.Sources) == 0 {
		s.fault("constant %q needs a source", name)
	}
	n := &node{kind: kindConstant, value: q.Value, unit: q.Unit, said: f.Reads}
	s.define(name, n)
	s.Constants = append(s.Constants, &Constant{Name: name, Quantity: q, Fact: f})
	return s.wrap(n)
}

// known gives a constant its texts.
func (s *Sheet) known(name string, f *Fact) {
	f.Label = s.text("constant."+name+".label", f.Label)
	f.Reads = cmp.Or(f.Reads, s.textIf("constant."+name+".reads", ""))
	f.Note = s.textIf("constant."+name+".note", f.Note)
}

// ConstantOnce is Constant, but gives the one already there when several parts of a sheet need the same figure.
func (s *Sheet) ConstantOnce(name, quantity string, f Fact) Term {
	if n := s.named[name]; n != nil && n.kind == kindConstant {
		return s.wrap(n)
	}
	return s.Constant(name, quantity, f)
}
