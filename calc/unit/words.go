package unit

// String says in words what d measures, for a sentence: "mass of N on an area", "trees on an area", "a length", "a
// plain number". It is never empty.
func (d Dimension) String() string {
	if d.Plain() {
		return "a plain number"
	}
	return "a measure"
}
