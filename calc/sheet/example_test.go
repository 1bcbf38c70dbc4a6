package sheet_test

import (
	"fmt"
	"strings"

	"acreleaf/calc/sheet"
)

// A calculation is written once. The units are checked while it is built: gallons a minute over acres are inches an
// hour, and nothing else.
func ExampleNew() {
	sprinkler := sheet.New("sprinkler-rate", func(s *sheet.Sheet) {
		s.Head("How fast the water falls", "Turns the flow onto a block into inches an hour.")
		flow := s.Given("flow", "gpm", sheet.Field{
			Label: "Flow onto the block", Hint: "Read it off the meter.", Typical: 450, Low: 0, High: 10_000,
		})
		block := s.Given("block", "ac", sheet.Field{Label: "Size of the block", Typical: 10, Low: 0.1, High: 500})
		rate := s.Answer("rate", "in/h", flow.Over(block), sheet.Says{Label: "Water in an hour", Also: "mm/h"})

		intake := s.Constant("intake", "0.2 in/h", sheet.Fact{
			Label: "What a tight soil takes in", Sources: []string{"common-practice"},
		})
		s.Say(sheet.Notice, rate.More(intake), "{rate} may run off a tight soil.")
		s.Slip("multiplied", "rate", flow.Times(block), "Share the flow out over the acres: divide.")
	})

	o, err := sprinkler.Evaluate(map[string]float64{"flow": 1200, "block": 10})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(o.Value("rate"))
	fmt.Println(strings.Join(o.Work(), "\n"))
	for _, said := range o.Said() {
		fmt.Printf("%s: %s\n", said.Signal, said.Text)
	}
	// Output:
	// 0.265 in/h
	// rate = flow ÷ block × 0.0022096 = 1,200 gpm ÷ 10 ac × 0.0022096 = 0.265 in/h
	// NOTICE: 0.265 in/h may run off a tight soil.
}

// Build reports what New would panic with. An author's own calculation goes this way.
func ExampleBuild() {
	_, err := sheet.Build("wrong", func(s *sheet.Sheet) {
		depth := s.Given("depth", "in", sheet.Field{Label: "Depth", Typical: 12, Low: 1, High: 72})
		s.Answer("nitrogen", "lb N/ac", depth, sheet.Says{Label: "Nitrogen"})
	})
	fmt.Println(err)
	// Output:
	// sheet "wrong": cannot give as nitrogen "depth": it is a length, and mass of N on an area is needed
}

// A result may be worked in more than one way. An If is at the top of it, and only the way taken is told.
func ExampleIf() {
	pond := sheet.New("pond", func(s *sheet.Sheet) {
		across := s.Given("across", "ft", sheet.Field{Label: "Across", Typical: 60, Low: 1, High: 1000})
		along := s.Given("along", "ft", sheet.Field{
			Label: "Along", Hint: "Leave it empty if the pond is square.", Typical: 90, Low: 1, High: 1000, Optional: true,
		})
		s.Answer("ground", "ft2", sheet.If(s.Stated(along), across.Times(along), across.Power(2)),
			sheet.Says{Label: "Ground under it", Also: "ac"})
	})
	for _, values := range []map[string]float64{{"across": 60}, {"across": 60, "along": 90}} {
		o, err := pond.Evaluate(values)
		fmt.Println(o.Work()[0], err)
	}
	// Output:
	// ground = across to the power 2 = (60 ft) to the power 2 = 3,600 ft2 <nil>
	// ground = across × along = 60 ft × 90 ft = 5,400 ft2 <nil>
}

// Sheets of one page work together: what one answers, another takes, in whatever unit it wants.
func ExampleGraph() {
	ground := sheet.New("ground", func(s *sheet.Sheet) {
		row := s.Given("row", "ft", sheet.Field{Label: "Row to row", Typical: 22, Low: 1, High: 200})
		tree := s.Given("tree", "ft", sheet.Field{Label: "Tree to tree", Typical: 18, Low: 1, High: 200})
		one := s.Constant("one-tree", "1 tree", sheet.Fact{Sources: []string{"geometry"}})
		s.Answer("area", "ft2/tree", row.Times(tree).Over(one), sheet.Says{Label: "Ground to a tree"})
	})
	water := sheet.New("water", func(s *sheet.Sheet) {
		area := s.Given("area", "m2/tree", sheet.Field{Label: "Ground to a tree", Typical: 37, Low: 0.1, High: 4000})
		depth := s.Given("depth", "mm", sheet.Field{Label: "Water", Typical: 5, Low: 0, High: 100})
		s.Answer("volume", "L/tree", area.Times(depth), sheet.Says{Label: "Water to a tree"})
	})

	graph := &sheet.Graph{}
	day := graph.Add("day", water, map[string]sheet.Link{"area": {Use: "block", Name: "area"}})
	block := graph.Add("block", ground, nil)
	if err := graph.Close(); err != nil {
		fmt.Println(err)
		return
	}
	cells := make([]float64, graph.Program.Cells)
	block.Set(cells, "row", 22)
	block.Set(cells, "tree", 18)
	day.Set(cells, "depth", 5)
	graph.Program.Run(cells)
	fmt.Println(sheet.Outcome{Use: day, Cells: cells}.Work()[0])
	// Output:
	// volume = area × depth = 36.8 m2/tree × 5 mm = 184 L/tree
}

// What a person writes is read in any unit of the given's dimension, and in the other chemical form of the same
// element.
func ExampleGiven_Read() {
	s := sheet.New("well", func(s *sheet.Sheet) {
		nitrate := s.Given("nitrate", "ppm NO3-N", sheet.Field{
			Label: "Nitrate", Typical: 10, Low: 0, High: 200, Of: "water", Units: []string{"ppm NO3"},
		})
		s.Answer("nitrogen", "ppm NO3-N of water", nitrate, sheet.Says{Label: "Nitrogen"})
	})
	for _, text := range []string{"10 mg/L NO3-N", "45 ppm NO3", "45", "ND", "45 lb"} {
		entry, err := s.FindGiven("nitrate").Read(text)
		if err != nil {
			fmt.Println("cannot:", err)
			continue
		}
		fmt.Printf("%s is %.4g %s\n", text, entry.Value, s.FindGiven("nitrate").Unit)
	}
	// Output:
	// 10 mg/L NO3-N is 10 ppm NO3-N
	// 45 ppm NO3 is 10.17 ppm NO3-N
	// cannot: 45 has no unit; write 45 ppm NO3-N or 45 ppm NO3, as the report says
	// cannot: "ND" means less than the lab can measure; look up that limit and write it with < and the unit of the report
	// cannot: 45 lb is a mass; this needs ppm NO3-N; write for example 10 ppm NO3-N
}
