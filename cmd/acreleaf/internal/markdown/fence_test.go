package markdown

import (
	"testing"

	"acreleaf/cmd/acreleaf/internal/construct"
)

// Each kind of block has something that reads it, and something that prints it.
func TestEveryConstruct(t *testing.T) {
	for k := range construct.All() {
		if readers[k] == nil {
			t.Errorf("nothing reads a %s: readers in fence.go", k)
		}
		if printers()[k] == nil {
			t.Errorf("nothing prints a %s: printers in fence.go", k)
		}
	}
}
