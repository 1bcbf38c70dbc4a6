package unit_test

import (
	"fmt"

	"acreleaf/calc/unit"
)

// A soil report in ppm, a depth and the weight of soil make pounds an acre.
func Example() {
	nitrate := unit.MustParse("ppm NO3-N").Carried("soil")
	whole := nitrate.Nitrogen().Times(unit.MustParse("in")).Times(unit.MustParse("lb soil/ac per 6 in"))
	factor, err := whole.To(unit.MustParse("lb N/ac"))
	fmt.Println(unit.Text(factor.Apply(12*12*2_000_000)), err)
	// Output: 48 <nil>
}

func ExampleParseQuantity() {
	for _, text := range []string{"1,200 lb/ac", "$0.62/lb", "12 ppm N03"} {
		q, err := unit.ParseQuantity(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(q, "measures", q.Unit.Dimension())
	}
	// Output:
	// 1,200 lb/ac measures mass on an area
	// $0.62/lb measures money for each mass
	// "N03" is not a unit or a substance known here; did you mean "NO3"?
}

func ExampleQuantity_In() {
	q, _ := unit.ParseQuantity("54 ppm NO3")
	fmt.Println(q.In(unit.MustParse("ppm NO3-N")))
	_, err := q.In(unit.MustParse("lb N/ac"))
	fmt.Println(err)
	// Output:
	// 12.2 ppm NO3-N <nil>
	// 54 ppm NO3 is a share of NO3; this needs lb N/ac
}

func ExampleText() {
	for _, v := range []float64{48, 20.571428, 27154.2857, 0.226613, 1.5e18} {
		fmt.Println(unit.Text(v))
	}
	// Output:
	// 48
	// 20.6
	// 27,154
	// 0.227
	// 1.5 × 10^18
}
