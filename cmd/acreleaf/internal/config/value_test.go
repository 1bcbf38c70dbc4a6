package config

import (
	"strings"
	"testing"
)

// A text on one line is what the library's own way gives for it.
func TestOnOneLine(t *testing.T) {
	for _, text := range []string{"", " ", "one", "one two", " one", "one ", "one  two", "one\ttwo", "one\ntwo", "\n",
		"año\u00a0nuevo", "a\u2003b", "a b c", "a b \n c", "\u00a0a"} {
		if got, want := onOneLine(text), strings.Join(strings.Fields(text), " "); got != want {
			t.Errorf("%q on one line is %q, not %q", text, got, want)
		}
	}
}
