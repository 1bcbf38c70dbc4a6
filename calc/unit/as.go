package unit

// As gives the same unit under another text, for a page that leaves unsaid what its reader knows: g/cm3 for
// g soil/cm3. The text must say nothing else.
func (u Unit) As(text string) Unit {
	u.written = text
	return u
}
