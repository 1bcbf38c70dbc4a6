package nitrogen

import "acreleaf/calc/sheet"

// TreeDensity counts the trees on an acre from their spacing. The count is not rounded: rounding is for display.
var TreeDensity = sheet.New("tree-density", treeDensity)

func treeDensity(s *sheet.Sheet) {
	pattern := s.Choice("pattern", []sheet.Option{
		{Name: "square"},
		{Name: "rectangle"},
		{Name: "hexagon"},
		{Name: "quincunx"},
		{Name: "double-row"},
	}, sheet.Field{Typical: 1, Usual: true})
	tree := s.Given("tree", "ft", sheet.Field{Typical: 18, Low: 1, High: 200, Units: []string{"m", "yd"}})
	row := s.Given("row", "ft", sheet.Field{
		Typical: 22, Low: 1, High: 200, Units: []string{"m", "yd"}, Optional: true,
	})
	acre := s.Constant("acre", "43,560 ft2/ac", sheet.Fact{Sources: []string{"nist-44"}})
	one := s.Constant("one-tree", "1 tree", sheet.Fact{Sources: []string{"geometry"}})
	two := s.Constant("two-trees", "2 trees", sheet.Fact{Sources: []string{"geometry"}})
	// The rows of a hexagon are the height of an equal triangle apart: half the root of three.
	height := tree.Times(s.Number(3).SquareRoot()).Over(s.Number(2))
	across := s.Step("row-distance", "ft",
		sheet.If(pattern.Is("hexagon"), height, sheet.If(s.Stated(row), row, tree)), sheet.Says{Also: "m"})
	area := s.Answer("area", "ft2/tree", sheet.If(pattern.Is("quincunx").Or(pattern.Is("double-row")),
		across.Times(tree).Over(two), across.Times(tree).Over(one)), sheet.Says{Also: "m2/tree"})
	s.Answer("trees", "trees/ac", acre.Over(area), sheet.Says{Also: "trees/ha"})

	s.InWords("trees", sheet.Otherwise("trees"))

	needsRow := pattern.Is("rectangle").Or(pattern.Is("double-row"))
	s.Refuse(needsRow.And(s.Stated(row).Not()), "no-row")
	s.Refuse(pattern.Is("square").And(across.Same(tree).Not()), "two-distances")
	s.Say(sheet.Note, pattern.Is("hexagon").And(s.Stated(row)), "row-unused")
	s.Say(sheet.Note, pattern.Is("quincunx"), "middle-tree")
	s.Say(sheet.Note, sheet.Always, "count-them")

	s.SlipWhen(pattern.Is("square").Not(), "rows-for-trees", "trees", acre.Over(across.Times(across)).Times(one))
	s.Slip("added", "trees", acre.Over(across.Plus(tree)))
	s.Slip("upside-down", "trees", area.Over(acre))
	s.Slip("hexagon-for-square", "trees",
		sheet.If(pattern.Is("hexagon"), acre.Over(tree.Times(tree)).Times(one), acre.Over(height.Times(tree)).Times(one)))
}
