// Package calc is the catalogue: every calculation by name, and the Go source behind each.
//
// It owns the list and nothing of the arithmetic, which is in the shelves below it (calc/nitrogen). Nothing under calc
// reads files, asks the clock or knows of pages.
package calc

import (
	"slices"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// A Catalogue is a set of calculations by name.
type Catalogue struct {
	sheets []*sheet.Sheet
	byName map[string]*sheet.Sheet
	faulty map[string]bool
}

// Standard is the catalogue that comes with Acreleaf.
func Standard() *Catalogue {
	return New(nitrogen.Shelf())
}

// New makes a catalogue of the sheets, in their order.
func New(sheets []*sheet.Sheet) *Catalogue {
	c := &Catalogue{sheets: slices.Clone(sheets), byName: map[string]*sheet.Sheet{}}
	for _, s := range sheets {
		c.byName[s.Name] = s
	}
	return c
}

// With makes a catalogue that has more sheets behind its own. Faulty are names of calculations that could not be made,
// so that who asks for one is not told that there is none.
func (c *Catalogue) With(sheets []*sheet.Sheet, faulty []string) *Catalogue {
	more := New(slices.Concat(c.sheets, sheets))
	more.faulty = map[string]bool{}
	for _, name := range faulty {
		more.faulty[name] = true
	}
	return more
}

// Faulty says whether a calculation is missing because it could not be made, which was said where it stands.
func (c *Catalogue) Faulty(name string) bool { return c.faulty[name] && c.byName[name] == nil }

// Find gives the calculation of that name, or nil.
func (c *Catalogue) Find(name string) *sheet.Sheet { return c.byName[name] }

// All lists the calculations in the order of the catalogue.
func (c *Catalogue) All() []*sheet.Sheet { return slices.Clone(c.sheets) }

// Names lists the names in the order of the catalogue.
func (c *Catalogue) Names() []string {
	var names []string
	for _, s := range c.sheets {
		names = append(names, s.Name)
	}
	return names
}
