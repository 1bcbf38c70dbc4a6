package reference

import "testing"

// A Ledger keeps account of the rows of some topics, so that none is forgotten: at the end of the test every row must
// have been checked or left out with a reason, and none may be both.
type Ledger struct {
	t       testing.TB
	rows    []*Value // in the order of the file
	checked map[string]bool
	left    map[string]string
}

// Open starts a ledger for topics; it is closed when the test ends.
func Open(t testing.TB, topics ...string) *Ledger {
	t.Helper()
	l := &Ledger{t: t, checked: map[string]bool{}, left: map[string]string{}}
	for _, topic := range topics {
		l.rows = append(l.rows, Topic(t, topic)...)
	}
	t.Cleanup(l.close)
	return l
}

// Row gives a row of the ledger's topics for its inputs; the row still has to be checked.
func (l *Ledger) Row(id string) *Value {
	l.t.Helper()
	for _, v := range l.rows {
		if v.ID == id {
			return v
		}
	}
	l.t.Fatalf("row %s is not among the topics of this ledger", id)
	return nil
}

// Check compares a result with a row, as Value.Check does.
func (l *Ledger) Check(id string, got float64) {
	l.t.Helper()
	l.checked[id] = true
	l.Row(id).Check(l.t, got)
}

// LeaveOut says why a row is not checked.
func (l *Ledger) LeaveOut(id, reason string) {
	l.t.Helper()
	if reason == "" {
		l.t.Errorf("row %s is left out without a reason", l.Row(id).ID)
	}
	l.left[l.Row(id).ID] = reason
}

// close fails the test for every row that nobody settled, and for those settled both ways.
func (l *Ledger) close() {
	for _, v := range l.rows {
		_, left := l.left[v.ID]
		switch {
		case !l.checked[v.ID] && !left:
			l.t.Errorf("row %s (%s) is neither checked nor left out with a reason", v.ID, v.Quantity)
		case l.checked[v.ID] && left:
			l.t.Errorf("row %s (%s) is checked and left out at once", v.ID, v.Quantity)
		}
	}
}
