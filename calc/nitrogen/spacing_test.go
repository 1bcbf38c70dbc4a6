package nitrogen_test

import (
	"math"
	"testing"

	"acreleaf/calc/internal/reference"
	"acreleaf/calc/nitrogen"
)

func TestPublishedSpacing(t *testing.T) {
	rows := reference.Open(t, "d-spacing")
	trees := func(id, pattern string, distances ...string) published {
		return published{id, nitrogen.TreeDensity, "trees", "trees/ac", append(distances, "pattern="+pattern)}
	}
	both := []string{"row={row_ft} ft", "tree={tree_ft} ft"}
	checkAll(t, rows, []published{
		// D01, D02: Coder, Univ. of Georgia Warnell School, Number of trees per acre by spacing distance
		trees("D01", "square", both...), trees("D02", "rectangle", both...),
		// D03 to D05: ATTRA/NCAT, How should I space trees in a new pecan orchard? (after Oklahoma State Extension)
		trees("D03", "square", both...), trees("D04", "square", both...), trees("D05", "square", both...),
		// D07: Kains, Five Acres and Independence, Table 17 note
		trees("D07", "square", both...),
		// D08, D09: Crops That Pay (pecan section)
		trees("D08", "square", both...), trees("D09", "square", both...),
		// D10: Smith, Tree Crops: A Permanent Agriculture (1929), page 271 footnote
		trees("D10", "square", both...),
		// D13, D14: geometry, 43560/(d^2 x 0.8660)
		trees("D13", "hexagon", "tree={tree_ft} ft"), trees("D14", "hexagon", "tree={tree_ft} ft"),
		// D16: geometry, one centre tree a square
		trees("D16", "quincunx", "tree={square_ft} ft"),
		// D19: HORT 111 practical, Calculation of number of plants in different systems of planting
		{"D19", nitrogen.TreeDensity, "trees", "trees/ha",
			[]string{"pattern=square", "row={row_m} m", "tree={tree_m} m"}},
		// D20 to D23: spacings of the UC Stanislaus almond trial, Orchard spacing considerations in a tree nut orchard
		trees("D20", "rectangle", both...), trees("D21", "rectangle", both...),
		trees("D22", "rectangle", both...), trees("D23", "square", both...),
		// D24: geometry, two rows share one pair spacing
		trees("D24", "double-row", "row={pair_centre_ft} ft", "tree={tree_ft} ft"),
	})
	checkWholeFields(t, rows)
	checkPatterns(t, rows)
}

// checkWholeFields checks counts on a field of a given size: trees an area times the area.
func checkWholeFields(t *testing.T, rows *reference.Ledger) {
	// D17, D18: HORT 111 practical
	perHectare := func(id, pattern string) float64 {
		return published{id, nitrogen.TreeDensity, "trees", "trees/ha",
			[]string{"pattern=" + pattern, "row={row_m} m", "tree={tree_m} m"}}.value(t, rows.Row(id))
	}
	rows.Check("D17", perHectare("D17", "square")*rows.Row("D17").Input(t, "area_ha"))
	rows.Check("D18", perHectare("D18", "rectangle")*rows.Row("D18").Input(t, "area_m2")/10_000)
}

// checkPatterns checks what the geometry of a pattern says beyond the number of trees.
func checkPatterns(t *testing.T, rows *reference.Ledger) {
	density := func(name, in string, givens ...string) float64 {
		return answer(t, nitrogen.TreeDensity, name, in, givens...)
	}
	// D06: ATTRA/NCAT. Every other diagonal out of a square leaves a square on the diagonal, √2 as wide.
	row := rows.Row("D06")
	wide := decimal(row.Input(t, "tree_ft") / math.Sqrt(row.Input(t, "fraction_left")))
	rows.Check("D06", density("trees", "trees/ac", "pattern=square", "tree="+wide+" ft"))
	// D11: Wickson, The California Fruits and How to Grow Them
	rows.Check("D11", 100*(density("trees", "trees/ac", "pattern=hexagon", "tree=20 ft")/
		density("trees", "trees/ac", "pattern=square", "tree=20 ft")-1))
	// D12: Wickson. The ground to a tree is the tree spacing times the distance of the rows.
	spacing := rows.Row("D12").Input(t, "tree_ft")
	rows.Check("D12", density("area", "ft2/tree", "pattern=hexagon", "tree="+decimal(spacing)+" ft")/spacing)
	// D15: orchard layout text (Home fruit planting systems). A quincunx is a square lattice turned by 45 degrees, so
	// its nearest trees stand a side of the ground to a tree apart.
	side := decimal(rows.Row("D15").Input(t, "square_ft"))
	rows.Check("D15", math.Sqrt(density("area", "ft2/tree", "pattern=quincunx", "tree="+side+" ft")))
}
