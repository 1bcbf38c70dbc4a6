package record

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
)

// A Course is what a code says of a course: which one it is, and in which edition.
type Course struct {
	Site    string // the address of the site; the name of the office where it has none
	Address string // of the course in the site: "courses/feeding/"
	Title   string
	Lessons []Lesson
}

// A Lesson is a lesson of a course, in its place.
type Lesson struct {
	Name      string // the last part of its address
	Title     string
	Exercises []Exercise
}

// An Exercise is one that a lesson ends with.
type Exercise struct {
	Name, Title string
	Asks        int    // how many answers a card asks for
	Cards       int    // how many cards there are
	Deal        [3]int // offset, stride and number of combinations: which numbers a card has
}

// idLetters is how many letters of a code are for the course, and how many for its edition.
const idLetters = 4

// ID is what a code names the course by.
func (c *Course) ID() string { return short(fmt.Sprintf("%q %q", c.Site, c.Address)) }

// Edition is another once the course has other lessons or exercises, asks for more or less, or deals other numbers.
// Titles and texts may change.
func (c *Course) Edition() string {
	text := ""
	for _, l := range c.Lessons {
		text += fmt.Sprintf("%q", l.Name)
		for _, e := range l.Exercises {
			text += fmt.Sprintf(" %q %d %d %d", e.Name, e.Asks, e.Cards, e.Deal)
		}
		text += "\n"
	}
	return short(text)
}

// Letters are those of a code that are for the course and its edition.
func (c *Course) Letters() string { return c.ID() + c.Edition() }

// short is the first letters of a hash.
func short(text string) string {
	sum := sha256.Sum256([]byte(text))
	bits := binary.BigEndian.Uint32(sum[:])
	letters := make([]byte, idLetters)
	for i := range letters {
		letters[i] = alphabet[bits>>(32-letterBits*(i+1))&letterMask]
	}
	return string(letters)
}
