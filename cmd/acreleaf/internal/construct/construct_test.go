package construct

import (
	"slices"
	"testing"
)

// A row that contradicts itself would make a block that no part of the program expects.
func TestRows(t *testing.T) {
	for k := range All() {
		row := k.Row()
		if got, ok := Of(row.Word); row.Word == "" || !ok || got != k {
			t.Errorf("block %d has the word %q, which is empty or another's", k, row.Word)
		}
		if row.Manual == "" {
			t.Errorf("no page of the manual explains a %s", k)
		}
		if row.Numbers && row.Naming != Named {
			t.Errorf("a %s gives numbers by its name, and may have none", k)
		}
	}
	if !slices.IsSorted(Words()) {
		t.Errorf("%v are not in the order of the alphabet", Words())
	}
	if k, ok := Of("sql"); ok || k != Listing {
		t.Errorf("sql is %v, %v", k, ok)
	}
}

func TestOne(t *testing.T) {
	for k, want := range map[Kind]string{Worksheet: "a worksheet", Exercise: "an exercise"} {
		if k.One() != want {
			t.Errorf("%q, want %q", k.One(), want)
		}
	}
}

func TestSchemes(t *testing.T) {
	for s := range AllSchemes() {
		row := s.Row()
		if got, ok := SchemeOf(row.Word); row.Word == "" || !ok || got != s {
			t.Errorf("scheme %d has the word %q, which is empty or another's", s, row.Word)
		}
		if row.Example == "" {
			t.Errorf("nothing tells an author how %s: is written", s)
		}
	}
	if s, ok := SchemeOf("https"); ok || s != NoFigure {
		t.Errorf("https is %v, %v", s, ok)
	}
	if s, ok := SchemeOf("Worked"); !ok || s != Worked {
		t.Errorf("Worked is %v, %v", s, ok)
	}
	if len(SchemeWords()) != int(Schemes)-1 {
		t.Errorf("%v are not all schemes", SchemeWords())
	}
}
