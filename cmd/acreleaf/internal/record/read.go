package record

import (
	"fmt"
	"strings"
)

// A Problem is why a code says nothing, and what to do next.
type Problem struct{ Text, Note string }

func (p *Problem) Error() string { return p.Text + "; " + p.Note }

const shortest = 1 + 2*idLetters + checkLetters

// mistyped is what may help with a code that was typed wrong.
const mistyped = "compare it with the record, letter by letter"

// Read finds the course that a code is of, and what was done in its lessons, in order. The error is a *Problem. Spaces
// and hyphens may be anywhere, and small letters are read as large ones.
func Read(code string, courses []Course) (*Course, []Done, error) {
	letters := strings.ToUpper(strings.NewReplacer(" ", "", "-", "").Replace(code))
	for _, letter := range letters {
		if !strings.ContainsRune(alphabet, letter) {
			return nil, nil, &Problem{fmt.Sprintf("%q is in no code", letter),
				"a code has letters from A to Z and digits from 2 to 7; " + mistyped}
		}
	}
	if len(letters) < shortest {
		return nil, nil, &Problem{fmt.Sprintf("a code has %d letters or more, and this has %d", shortest, len(letters)),
			"type all of its groups"}
	}
	if letters[0] != alphabet[version] {
		return nil, nil, &Problem{fmt.Sprintf("the code begins with %c, and this Acreleaf reads those that begin with %c",
			letters[0], alphabet[version]), "it is mistyped, or it was made by a newer Acreleaf: look at its first letter"}
	}
	body, end := letters[:len(letters)-checkLetters], letters[len(letters)-checkLetters:]
	if check(body) != end {
		return nil, nil, &Problem{"the code is damaged: its last letters do not fit the others", mistyped}
	}
	id, edition := body[1:1+idLetters], body[1+idLetters:1+2*idLetters]
	c, err := find(id, edition, courses)
	if err != nil {
		return nil, nil, err
	}
	lessons, ok := readLessons(body[1+2*idLetters:], len(c.Lessons))
	if !ok {
		return nil, nil, &Problem{fmt.Sprintf("the code does not have the %d lessons of %q", len(c.Lessons), c.Title),
			"no page of this course makes such a code: ask for a new one"}
	}
	return c, lessons, nil
}

// find gives the course of a code.
func find(id, edition string, courses []Course) (*Course, error) {
	var other *Course
	for i := range courses {
		c := &courses[i]
		switch {
		case c.ID() != id:
		case c.Edition() != edition:
			other = c
		default:
			return c, nil
		}
	}
	if other != nil {
		return nil, &Problem{
			fmt.Sprintf("the code is of another edition of %q, with other lessons or exercises", other.Title),
			"name the content folder of that edition: --from=FOLDER"}
	}
	return nil, &Problem{"the code is of no course of this site", "name the content folder of its site: --from=FOLDER"}
}

// readLessons reads the numbers of so many lessons, and nothing after them.
func readLessons(letters string, count int) ([]Done, bool) {
	lessons, before := make([]Done, count), firstDay
	for i := range lessons {
		var numbers [3]int
		for j := range numbers {
			if numbers[j], letters = readNumber(letters); numbers[j] < 0 {
				return nil, false
			}
		}
		lessons[i] = Done{Day: Unfinished, Right: numbers[1], Missed: numbers[2]}
		if numbers[0] > 0 {
			if before += unfolded(numbers[0] - 1); before < 0 || before > mostDay {
				return nil, false // a page writes no such day
			}
			lessons[i].Day = before
		}
	}
	return lessons, letters == ""
}

// readNumber reads a number and gives what is behind it; -1 where there is none.
func readNumber(letters string) (n int, rest string) {
	for i := range min(len(letters), mostDigits) {
		value := strings.IndexByte(alphabet, letters[i])
		n = n*more + value%more
		if value < more {
			return n, letters[i+1:]
		}
	}
	return -1, ""
}
