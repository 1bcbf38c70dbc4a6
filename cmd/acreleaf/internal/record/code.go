// Package record writes and reads the code of a learner's record: which lessons of a course they finished, when, and
// how many answers were right at the first try, in some forty letters that can be read aloud.
//
// It owns the form of the code, and what tells one course from another and one edition of it from the next. It must
// not know pages or files. theme/script/code.ts writes the same codes; both are compared with testdata/codes.txt.
//
// A code is a letter for its version, four for the course, four for its edition, three numbers for each lesson, and
// five letters to check all others by. The letters are those of base32 (RFC 4648), in groups of five. A number is
// written in base 16, a digit a letter; letters from Q on say that another digit follows. The three numbers are the day
// on which the lesson was finished, the answers right at the first try, and those that were not. The check letters are
// the CRC-24 of OpenPGP (RFC 9580): it finds any change within 24 bits, so any one letter that is wrong, and any two
// neighbors in the wrong order.
package record

import "strings"

const (
	alphabet   = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567" // RFC 4648
	letterBits = 5
	letterMask = 1<<letterBits - 1

	version      = 1
	checkLetters = 5
	group        = 5

	digitBits  = 4 // of a number, in a letter; the bit above them says that more follow
	more       = 1 << digitBits
	mostDigits = 6

	// firstDay is the one that the first day of a code is counted from: January 1, 2026.
	firstDay = 20454
	mostDay  = 4_000_000 // no number is too small for the days between two of them
)

// Unfinished is the day of a lesson that is not finished.
const Unfinished = -1

// A Done is what a learner did in one lesson.
type Done struct {
	Day           int // on which it was finished, from January 1, 1970 on; or Unfinished
	Right, Missed int // answers that were right at the first try, and those that were not
}

// Asked is how many answers were given.
func (d Done) Asked() int { return d.Right + d.Missed }

// Code writes what was done in the lessons of a course, in order.
func Code(c *Course, lessons []Done) string { return write(c.Letters(), lessons) }

func write(course string, lessons []Done) string {
	letters := string(alphabet[version]) + course
	before := firstDay
	for _, d := range lessons {
		day := 0
		if d.Day != Unfinished {
			on := min(max(d.Day, 0), mostDay)
			day, before = 1+folded(on-before), on
		}
		letters += number(day) + number(d.Right) + number(d.Missed)
	}
	letters += check(letters)
	var groups []string
	for len(letters) > group {
		groups, letters = append(groups, letters[:group]), letters[group:]
	}
	return strings.Join(append(groups, letters), "-")
}

// folded makes a whole number one that is not below 0: 0, -1, 1, -2, 2 are 0, 1, 2, 3, 4.
func folded(n int) int {
	if n < 0 {
		return -2*n - 1
	}
	return 2 * n
}

func unfolded(n int) int {
	if n%2 == 1 {
		return -(n + 1) / 2
	}
	return n / 2
}

// number writes a whole number, its highest digit first. What is beyond all numbers is the largest.
func number(n int) string {
	n = min(max(n, 0), 1<<(digitBits*mostDigits)-1)
	letters := []byte{alphabet[n%more]}
	for n /= more; n > 0; n /= more {
		letters = append([]byte{alphabet[more|n%more]}, letters...)
	}
	return string(letters)
}

// check gives the check letters of others.
func check(letters string) string {
	const start, polynomial, top = 0xB704CE, 0x864CFB, 1 << 23
	crc := uint32(start)
	for _, letter := range []byte(letters) {
		value := strings.IndexByte(alphabet, letter)
		for bit := letterBits - 1; bit >= 0; bit-- {
			out := crc&top != 0
			crc = crc << 1 & (top<<1 - 1)
			if out != (value>>bit&1 == 1) {
				crc ^= polynomial
			}
		}
	}
	text := make([]byte, checkLetters)
	for i := range text {
		text[i] = alphabet[crc>>(letterBits*(checkLetters-1-i))&letterMask]
	}
	return string(text)
}
