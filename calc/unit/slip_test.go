package unit

import (
	"strings"
	"testing"
)

// Two letters that changed places are one slip, so a short word is still found.
func TestNearestTakesASwapForOneSlip(t *testing.T) {
	for word, want := range map[string]string{"bl": "lb", "glas": "gals", "zo": "oz", "q": ""} {
		if got := Nearest(word, []string{"lb", "gals", "oz"}); got != want {
			t.Errorf("%q is nearest to %q, want %q", word, got, want)
		}
	}
}

// An account is put to a unit that tells none, and never to one that does.
func TestInAccount(t *testing.T) {
	for _, c := range []struct {
		unit, account, want string
		fine                bool
	}{
		{"lb N/ac", "fed", "lb N/ac fed", true},
		{"lb N/ac", "taken up", "lb N/ac taken up", true},
		{"lb N/ac fed", "taken up", "lb N/ac fed", false},
		{"% taken up/fed", "fed", "% taken up/fed", false},
	} {
		got, fine := MustParse(c.unit).InAccount(c.account)
		if got.String() != c.want || fine != c.fine {
			t.Errorf("%s as %s is %s, %v", c.unit, c.account, got, fine)
		}
	}
}

// An account below the line says of what the rest is a share, and is no account of it.
func TestAccount(t *testing.T) {
	for text, want := range map[string]string{
		"lb N/ac fed": "fed", "% taken up": "taken up", "lb N/ac": "", "% taken up/fed": "", "%/fed": "",
	} {
		u := MustParse(text)
		if got := u.Account(); got != want {
			t.Errorf("%s is in the account %q, want %q", text, got, want)
		}
		if bare := u.Dimension().Uncounted(); bare.accounts() != nil || !bare.onlyAccountsDiffer(u.Dimension()) {
			t.Errorf("%s without its account is %v", text, bare)
		}
	}
	for _, word := range []string{"lb", "eaten"} {
		func() {
			defer func() {
				if got, want := recover(), "unit: "+word+" is no account"; got != want {
					t.Errorf("panics with %v, want %q", got, want)
				}
			}()
			MustParse("lb N/ac").InAccount(word)
		}()
	}
}

// A step from one substance to another is reported only where it is that step.
func TestStepsAreNotToldOfOtherSubstances(t *testing.T) {
	for _, c := range []struct{ given, wanted, not string }{
		{"oz product/tree", "oz K2O/tree", "nitrogen"},
		{"oz K2O/tree", "oz product/tree", "nitrogen"},
		{"lb P2O5/ac", "lb N/ac", "share"},
	} {
		q := Quantity{Value: 8, Unit: MustParse(c.given)}
		_, err := q.In(MustParse(c.wanted))
		if err == nil || strings.Contains(strings.TrimPrefix(err.Error(), q.String()), c.not) && c.not != "" {
			t.Errorf("%s for %s: %v", q, c.wanted, err)
		}
	}
}

// A name that starts with another letter is another word, unless it is one slip away.
func TestNearestTakesNoOtherWordForASlip(t *testing.T) {
	crops := []string{"almond", "walnut", "pistachio"}
	for word, want := range map[string]string{"hazelnut": "", "chestnut": "", "wallnut": "walnut", "qalnut": "walnut"} {
		if got := Nearest(word, crops); got != want {
			t.Errorf("%q is nearest to %q, want %q", word, got, want)
		}
	}
}
