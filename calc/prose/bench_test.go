package prose

import (
	"strings"
	"testing"
)

// BenchmarkFind looks through prose that has no amount in it, as most of a page.
func BenchmarkFind(b *testing.B) {
	text := strings.Repeat("The marked cells hold about that much, so use your own report of 2026 and not the one of a "+
		"neighbour. Two layers were tested, and block 12 was one of them. ", 20)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if len(For("en").Find(text)) > 0 {
			b.Fatal("an amount was found")
		}
	}
}
