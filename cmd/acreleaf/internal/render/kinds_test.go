package render

import (
	"testing"

	"acreleaf/cmd/acreleaf/internal/kind"
)

// Every kind has the words that its row asks for, and no others.
func TestWordsOfKinds(t *testing.T) {
	w := new(Words)
	for k := range kind.All() {
		row := k.Row()
		if got := w.Set(k) != nil; got != (row.Folder != "") {
			t.Errorf("%s: words for the list of its pages: %v, want %v; see kinds.go", k, got, row.Folder != "")
		}
		if got := w.number(k) != nil; got != row.Numbered {
			t.Errorf("%s: a word for its number: %v, want %v; see kinds.go", k, got, row.Numbered)
		}
		if got := w.turn(k) != nil; got != row.Turns {
			t.Errorf("%s: words for the page before and after: %v, want %v; see kinds.go", k, got, row.Turns)
		}
	}
}
