package worksheet

import (
	"testing"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// Each kind of block has something that binds it. Two are bound elsewhere: see binders.
func TestEveryConstruct(t *testing.T) {
	for k := range construct.All() {
		if elsewhere := k == construct.Calculation || k == construct.Passage; (binders[k] == nil) != elsewhere {
			t.Errorf("nothing binds a %s: binders in block.go", k)
		}
	}
}
