package unit

import (
	"errors"
	"testing"
)

// What to write comes after the last semicolon, and what is needed is no advice.
func TestAdvice(t *testing.T) {
	for _, c := range []struct{ whole, sentence, advice string }{
		{"this breaks off; write its end", "this breaks off", "write its end"},
		{"a; b; c", "a; b", "c"},
		{"; write a unit", "", "write a unit"},
		{"12 ft is a length; this needs lb", "12 ft is a length; this needs lb", ""},
		{"there is none", "there is none", ""},
	} {
		if sentence, advice := Advice(errors.New(c.whole)); sentence != c.sentence || advice != c.advice {
			t.Errorf("%q parts into %q and %q", c.whole, sentence, advice)
		}
	}
}
