package sheet

// A trend is a Trend of a sheet.
type trend struct {
	of, from *node
	up       bool
}

// Trend tells of a value that never goes down when one of some others goes up, and never up when one of the rest does.
// It must follow from nothing else. Ranges are worked with what can be seen from a formula; the area that two circles
// share grows with both of them, and its formula does not show that. Both kinds must be steps, answers or givens.
func (s *Sheet) Trend(of Term, up, down []Term) {
	for _, from := range up {
		s.trends = append(s.trends, trend{of.n, from.n, true})
	}
	for _, from := range down {
		s.trends = append(s.trends, trend{of.n, from.n, false})
	}
}

// placeTrends writes what is told of the values of a use.
func (l *layout) placeTrends(u *Use, k known) {
	for _, t := range u.Sheet.trends {
		p := &l.assembler.program
		p.Trends = append(p.Trends, Trend{l.assembler.work(t.of, k), l.assembler.work(t.from, k), t.up})
		u.trends = append(u.trends, CellTrend{u.cells[t.of.name], u.cells[t.from.name], t.up})
	}
}

// A CellTrend is a Trend by the cells of the two values.
type CellTrend struct {
	Of, From int
	Up       bool
}

// Trends lists what ranges are told of the values of a use.
func (u *Use) Trends() []CellTrend { return u.trends }
