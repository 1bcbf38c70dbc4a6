package proof

import "testing"

func TestWordAt(t *testing.T) {
	for _, test := range []struct {
		text, word string
		at         int
	}{
		{"use urea here", "urea", 4},
		{"urea", "urea", 0},
		{"ureas, then urea.", "urea", 12},
		{"uan-32 and can-17", "an-32", -1},
		{"uan-320", "uan-32", -1},
		{"ñurea", "urea", -1}, // a letter of two bytes
		{"urea½", "urea", -1},
		{"“urea”", "urea", 3},
	} {
		if at := wordAt(test.text, test.word); at != test.at {
			t.Errorf("%q in %q is at %d, want %d", test.word, test.text, at, test.at)
		}
	}
}
