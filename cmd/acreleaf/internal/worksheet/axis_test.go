package worksheet

import "testing"

// Of two values equally near the first is taken, as the page's script does (theme/script/tables.ts).
func TestNearestTakesTheFirstOfTwo(t *testing.T) {
	axis := Axis{Values: []float64{6, 12, 18}}
	for at, want := range map[float64]int{0: 0, 6: 0, 9: 0, 9.1: 1, 12: 1, 15: 1, 15.5: 2, 99: 2} {
		if got := axis.Nearest(at); got != want {
			t.Errorf("the value nearest to %v is number %d, want %d", at, got, want)
		}
	}
}
