package draft

import (
	"errors"

	"acreleaf/calc/sheet"
)

// An example is a calculation worked for typical values.
type example struct {
	sheet   *sheet.Sheet
	stated  map[string]float64 // the typical values, by the names of the givens
	outcome sheet.Outcome
}

// exampleOf works a calculation for the typical values of what must be given. Where it refuses those, what may be left
// out is put in too, one after the other: a row is needed for some patterns of trees only.
func exampleOf(s *sheet.Sheet) (*example, error) {
	e := &example{sheet: s, stated: map[string]float64{}}
	var left []*sheet.Given
	for _, g := range s.Givens {
		if g.Optional {
			left = append(left, g)
		} else {
			e.stated[g.Name] = g.Typical
		}
	}
	for {
		var err error
		e.outcome, err = s.Evaluate(e.stated)
		var refused *sheet.Refused
		if !errors.As(err, &refused) || len(left) == 0 {
			return e, err
		}
		e.stated[left[0].Name], left = left[0].Typical, left[1:]
	}
}

func (e *example) states(g *sheet.Given) bool {
	_, stated := e.stated[g.Name]
	return stated
}
