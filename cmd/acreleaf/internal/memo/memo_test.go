package memo

import "testing"

func TestAResultIsMadeForAnotherKeyAlone(t *testing.T) {
	var r Result[string, int]
	if r.Kept() != nil {
		t.Error("a new result has a value")
	}
	calls := 0
	ask := func(key string) *int {
		return r.Get(key, func() int {
			calls++
			return len(key)
		})
	}
	first := ask("soil")
	if *first != 4 || ask("soil") != first || calls != 1 || r.Key() != "soil" {
		t.Errorf("after %d calls the value is %d", calls, *r.Kept())
	}
	if second := ask("water"); *second != 5 || second == first || *first != 4 || calls != 2 {
		t.Errorf("after %d calls the value is %d", calls, *second)
	}
}

// A value of the zero key is made, too.
func TestTheZeroKey(t *testing.T) {
	var r Result[int, string]
	if got := r.Get(0, func() string { return "made" }); *got != "made" {
		t.Errorf("the value is %q", *got)
	}
}

func TestSame(t *testing.T) {
	same := func(a, b *int) bool { return *a == *b }
	a, b, c := 1, 1, 2
	if Same(nil, &a, same) != &a || Same(&a, &b, same) != &a || Same(&a, &c, same) != &c {
		t.Error("the wrong one is kept")
	}
}
