package sheet_test

import (
	"testing"

	"acreleaf/calc/sheet"
)

// A linked given has no field that could refuse a number, so a cell says whether it lies outside the range.
func TestLinkedValuesOutsideTheRangeAreSeen(t *testing.T) {
	tank := sheet.New("tank", func(s *sheet.Sheet) {
		held := s.Given("held", "in", sheet.Field{Label: "Held", Typical: 1, Low: 0, High: 1000})
		s.Given("lost", "%", optional(sheet.Field{Label: "Lost", Typical: 10, Low: 0, High: 100}))
		s.Answer("depth", "in", held, sheet.Says{})
	})
	block := sheet.New("block", func(s *sheet.Sheet) {
		depth := s.Given("depth", "ft", sheet.Field{Label: "Depth", Typical: 1, Low: 0.5, High: 6})
		s.Given("lost", "%", optional(sheet.Field{Label: "Lost", Typical: 30, Low: 20, High: 50}))
		s.Given("own", "ft", sheet.Field{Label: "Own", Typical: 1, Low: 0.5, High: 6})
		s.Answer("answer", "ft", depth, sheet.Says{})
	})
	g := &sheet.Graph{}
	from := g.Add("tank", tank, nil)
	to := g.Add("block", block, links{
		"depth": {Use: "tank", Name: "depth"}, "lost": {Use: "tank", Name: "lost"},
	})
	closed(t, g)
	if _, linked := to.Outside("own"); linked {
		t.Error("a given with a field of its own has a cell for being outside")
	}
	if _, linked := from.Outside("held"); linked {
		t.Error("a given that is not linked has a cell for being outside")
	}
	const unstated = -1
	for _, c := range []struct {
		held, lost          float64
		depthOut, lostIsOut float64
	}{
		{12, unstated, 0, 0}, {6, unstated, 0, 0}, {72, unstated, 0, 0}, {5.9, unstated, 1, 0}, {72.1, unstated, 1, 0},
		{12, 30, 0, 0}, {12, 20, 0, 0}, {12, 50, 0, 0}, {12, 19, 0, 1}, {12, 51, 0, 1},
	} {
		values := map[string]map[string]float64{"tank": {"held": c.held}, "block": {"own": 1}}
		if c.lost != unstated {
			values["tank"]["lost"] = c.lost
		}
		o := runGraph(g, values)("block")
		depth, _ := to.Outside("depth")
		lost, _ := to.Outside("lost")
		if o.Cells[depth] != c.depthOut || o.Cells[lost] != c.lostIsOut {
			t.Errorf("%v in and %v %%: outside %v and %v, want %v and %v", c.held, c.lost,
				o.Cells[depth], o.Cells[lost], c.depthOut, c.lostIsOut)
		}
	}
}

// A value that is linked as the second kind of a given has that kind's range.
func TestALinkedSecondKindHasItsOwnRange(t *testing.T) {
	for rate, want := range map[float64]float64{14: 0, 15: 1} { // 96.25 and 103.1 lb N/ac fed, of 0 to 100
		g := &sheet.Graph{}
		g.Add("from", put, nil)
		use := g.Add("to", wanted, links{"need": {Use: "from", Name: "nitrogen"}})
		closed(t, g)
		o := runGraph(g, map[string]map[string]float64{
			"from": {"rate": rate, "trees": 110}, "to": {"share": 70, "credit": 0},
		})("to")
		if cell, _ := use.Outside("need"); o.Cells[cell] != want {
			t.Errorf("%v oz a tree, %s: outside is %v, want %v", rate, o.Text("need"), o.Cells[cell], want)
		}
	}
}
