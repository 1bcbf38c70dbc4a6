package unit

import "fmt"

// A Mismatch says that a quantity of one kind was given where another is needed. Its sentence is for growers.
type Mismatch struct {
	Given  string // what was given, as it is to be quoted: "54 ppm NO3"
	Unit   Unit   // its unit
	Wanted Unit   // the unit that is needed
}

// Error gives the sentence: what was given, what it is, and what is needed.
func (m *Mismatch) Error() string {
	return fmt.Sprintf("%s is %s; this needs %s", m.Given, m.Unit.dimension, m.Wanted)
}
