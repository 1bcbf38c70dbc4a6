package unit

// An Error says why a text is not a unit, a number or a quantity, in a sentence for the person who wrote it.
type Error struct {
	Text    string // the whole text that was read
	At      int    // the byte of Text where the trouble starts
	Message string // a whole sentence: what is wrong and what to write
	Nearest string // the known word nearest to an unknown one; empty when none is near
}

// Error gives the sentence.
func (e *Error) Error() string { return e.Message }
