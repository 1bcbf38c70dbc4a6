package nitrogen

import (
	"acreleaf/calc/sheet"
	"fmt"
	"testing"
)

func TestTry(t *testing.T) {
	o, err := SoilNitrogen.Evaluate(map[string]float64{"nitrate": 12, "depth": 12})
	fmt.Println(err, o.Value("nitrogen"), o.Cells)
	for _, l := range o.Lines(nil) {
		fmt.Println(l.Taken, l.Words, l.Symbols, l.Numbers)
	}
	o, err = SoilNitrogen.Evaluate(map[string]float64{"nitrate": 10, "depth": 12, "bulk-density": 1.3})
	fmt.Println(err, o.Work(), o.Said())
	fmt.Println(SoilNitrogen.SlipValues(map[string]float64{"nitrate": 12, "depth": 12}))
	for _, s := range Shelf() {
		v := map[string]float64{}
		for _, g := range s.Givens {
			if !g.Optional || g.Name == "row" {
				v[g.Name] = g.Typical
			}
		}
		o, err := s.Evaluate(v)
		fmt.Println(s.Name, err)
		if o.Use != nil {
			for _, w := range o.Work() {
				fmt.Println("   ", w)
			}
			fmt.Println("   ", o.Said())
		}
		fmt.Println(s.SlipValues(v))
	}
	var _ sheet.Op
}
