package nitrogen

import "acreleaf/calc/sheet"

// TreeDensity counts the trees on an acre from their spacing. The count is not rounded: rounding is for display.
var TreeDensity = sheet.New("tree-density", treeDensity)

func treeDensity(s *sheet.Sheet) {
	s.Head("Trees on an acre", "Turns tree spacing into trees an acre.")
	pattern := s.Choice("pattern", []sheet.Option{
		{Name: "square", Label: "Square"},
		{Name: "rectangle", Label: "Rectangle"},
		{Name: "hexagon", Label: "Hexagon (equal triangles)"},
		{Name: "quincunx", Label: "Quincunx (a square and one in the middle)"},
		{Name: "double-row", Label: "Double row"},
	}, sheet.Field{Label: "Planting pattern", Hint: "How the trees stand to each other. A rectangle unless you say.",
		Typical: 1, Usual: true})
	tree := s.Given("tree", "ft", sheet.Field{
		Label: "Tree to tree, in the row", Hint: "Measure trunk to trunk.",
		Typical: 18, Low: 1, High: 200, Units: []string{"m", "yd"},
	})
	row := s.Given("row", "ft", sheet.Field{
		Label: "Row to row", Hint: "For a double row: middle of one pair to middle of the next. For a hexagon: not used.",
		Typical: 22, Low: 1, High: 200, Units: []string{"m", "yd"}, Optional: true,
	})
	acre := s.Constant("acre", "43,560 ft2/ac", sheet.Fact{
		Label: "Square feet in an acre", Sources: []string{"nist-44"},
	})
	one := s.Constant("one-tree", "1 tree", sheet.Fact{
		Label: "Trees to a spacing", Sources: []string{"geometry"},
	})
	two := s.Constant("two-trees", "2 trees", sheet.Fact{
		Label: "Trees to a spacing, in a quincunx or a double row", Sources: []string{"geometry"},
	})
	// The rows of a hexagon are the height of an equal triangle apart: half the root of three.
	height := tree.Times(s.Number(3).SquareRoot()).Over(s.Number(2))
	across := s.Step("row-distance", "ft",
		sheet.If(pattern.Is("hexagon"), height, sheet.If(s.Stated(row), row, tree)),
		sheet.Says{Label: "Row to row, as used", Also: "m"})
	area := s.Answer("area", "ft2/tree", sheet.If(pattern.Is("quincunx").Or(pattern.Is("double-row")),
		across.Times(tree).Over(two), across.Times(tree).Over(one)),
		sheet.Says{Label: "Ground to a tree", Also: "m2/tree"})
	s.Answer("trees", "trees/ac", acre.Over(area), sheet.Says{Label: "Trees on an acre", Also: "trees/ha"})

	s.InWords("trees", sheet.Otherwise("This spacing gives {area}, which is {trees}."))

	needsRow := pattern.Is("rectangle").Or(pattern.Is("double-row"))
	s.Refuse(needsRow.And(s.Stated(row).Not()), "This pattern needs the distance from row to row. Put it in. If the "+
		"trees are as far apart both ways, choose square.")
	s.Refuse(pattern.Is("square").And(across.Same(tree).Not()),
		"A square has one distance both ways. Choose rectangle, or make the two distances the same.")
	s.Say(sheet.Note, pattern.Is("hexagon").And(s.Stated(row)),
		"In a hexagon the rows stand 0.866 of the tree spacing apart, so the distance from row to row is not used.")
	s.Say(sheet.Note, pattern.Is("quincunx"),
		"The spacing is along the sides of the square. The tree in the middle is nearer than that.")
	s.Say(sheet.Note, sheet.Always,
		"A real block has ends, roads and missing trees. For what a block holds, count the trees.")

	s.Slip("rows-for-trees", "trees", acre.Over(across.Times(across)).Times(one),
		"That has row spacing both ways. Multiply row spacing by tree spacing.")
	s.Slip("added", "trees", acre.Over(across.Plus(tree)),
		"The two distances were added. Multiply them: the ground to a tree is an area.")
	s.Slip("upside-down", "trees", area.Over(acre),
		"That is the acres to a tree. Divide 43,560 by the ground to a tree.")
	s.Slip("hexagon-for-square", "trees",
		sheet.If(pattern.Is("hexagon"), acre.Over(tree.Times(tree)).Times(one), acre.Over(height.Times(tree)).Times(one)),
		"A hexagon was taken for a square, or the other way round. A hexagon holds 15 % more trees.")
}
