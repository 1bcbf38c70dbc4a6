package record

import (
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the cases that the page is compared with")

const casesFile = "testdata/codes.txt"

func course(title string, lessons int) Course {
	c := Course{Site: "https://row.example.org/", Address: "courses/" + title + "/", Title: title}
	for i := range lessons {
		c.Lessons = append(c.Lessons, Lesson{Name: fmt.Sprint("lesson-", i),
			Exercises: []Exercise{{Name: "soil", Asks: 2, Cards: 40, Deal: [3]int{5, 7, 60}}}})
	}
	return c
}

// anyLessons are lessons with days from all over, as a clock that is wrong gives them.
func anyLessons(r *rand.Rand, count int) []Done {
	lessons := make([]Done, count)
	for i := range lessons {
		lessons[i] = Done{Day: Unfinished, Right: r.IntN(5), Missed: r.IntN(4)}
		switch r.IntN(8) {
		case 0:
			lessons[i].Day = r.IntN(mostDay + 1)
		case 1:
			lessons[i].Right, lessons[i].Missed = r.IntN(1<<24), r.IntN(900)
		case 2, 3, 4, 5:
			lessons[i].Day = firstDay + 300 + r.IntN(60)
		}
	}
	return lessons
}

func TestCodesReadBack(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 6))
	for range 20_000 {
		courses := []Course{course("young", r.IntN(9)), course("old", 3)}
		want := anyLessons(r, len(courses[0].Lessons))
		code := Code(&courses[0], want)
		typed := []string{code, strings.ToLower(code), strings.ReplaceAll(code, "-", " "), " " + code + " "}[r.IntN(4)]
		c, got, err := Read(typed, courses)
		if err != nil || c != &courses[0] || !reflect.DeepEqual(got, want) {
			t.Fatalf("%s of %v reads as %v of %v, %v", typed, want, got, c, err)
		}
	}
}

// A letter that is wrong, two neighbors in the wrong order, one too many or one too few: none gives another record.
func TestSlipsInACodeAreFound(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 7))
	changed, swapped := 0, 0
	for range 60 {
		courses := []Course{course("young", 6)}
		letters := strings.ReplaceAll(Code(&courses[0], anyLessons(r, 6)), "-", "")
		refuse := func(slip, typed string) {
			if _, got, err := Read(typed, courses); err == nil {
				t.Errorf("%s: %s for %s is read as %v", slip, typed, letters, got)
			}
		}
		for i := range letters {
			for _, other := range alphabet {
				if byte(other) != letters[i] {
					refuse("another letter", letters[:i]+string(other)+letters[i+1:])
					changed++
				}
			}
			if i > 0 && letters[i] != letters[i-1] {
				refuse("neighbors swapped", letters[:i-1]+string(letters[i])+string(letters[i-1])+letters[i+1:])
				swapped++
			}
			refuse("one letter too few", letters[:i]+letters[i+1:])
			refuse("one letter twice", letters[:i]+letters[i:i+1]+letters[i:])
		}
	}
	if changed < 50_000 || swapped < 1_500 {
		t.Errorf("only %d changes and %d swaps were tried", changed, swapped)
	}
}

// What is not read says why, in one sentence for each cause.
func TestCodesThatSayNothing(t *testing.T) {
	young, old := course("young", 6), course("old", 3)
	newer := course("young", 7)
	done := make([]Done, 6)
	code := Code(&young, done)
	unfit := write(young.Letters(), done[:5])
	// A day before 1970 in the first lesson, and no other finished.
	early := string(alphabet[version]) + young.Letters() + number(1+folded(-firstDay-1)) + strings.Repeat(number(0), 17)
	for _, tc := range []struct{ typed, want string }{
		{"", "a code has 14 letters or more, and this has 0"},
		{code[:12], "a code has 14 letters or more, and this has 10"},
		{code + "1", "'1' is in no code"},
		{"ñ", "'Ñ' is in no code"},
		{"C" + code[1:], "the code begins with C, and this Acreleaf reads those that begin with B"},
		{code[:len(code)-1], "the code is damaged"},
		{Code(&newer, make([]Done, 7)), `the code is of another edition of "young"`},
		{Code(&Course{Site: "https://other.example.org/", Address: young.Address, Lessons: young.Lessons}, done),
			"the code is of no course of this site"},
		{unfit, `the code does not have the 6 lessons of "young"`},
		{early + check(early), `the code does not have the 6 lessons of "young"`},
		{strings.Repeat("A", 100_000), "the code begins with A"},
	} {
		_, _, err := Read(tc.typed, []Course{old, young})
		var problem *Problem
		if !errors.As(err, &problem) || !strings.Contains(problem.Text, tc.want) || problem.Note == "" {
			t.Errorf("%.40q: %v; want %s", tc.typed, err, tc.want)
		}
	}
}

// A course is another edition once what is asked in it changes, and the same one with other titles.
func TestEditions(t *testing.T) {
	base := course("young", 2)
	for name, change := range map[string]func(*Course){
		"another lesson":   func(c *Course) { c.Lessons = append(c.Lessons, Lesson{Name: "new"}) },
		"another order":    func(c *Course) { c.Lessons[0], c.Lessons[1] = c.Lessons[1], c.Lessons[0] },
		"another exercise": func(c *Course) { c.Lessons[1].Exercises = append(c.Lessons[1].Exercises, Exercise{Name: "b"}) },
		"more asked":       func(c *Course) { c.Lessons[1].Exercises[0].Asks++ },
		"other cards":      func(c *Course) { c.Lessons[1].Exercises[0].Deal[0]++ },
	} {
		c := course("young", 2)
		change(&c)
		if c.Edition() == base.Edition() || c.ID() != base.ID() {
			t.Errorf("%s: the edition is %s as before, or the course is another one", name, c.Edition())
		}
	}
	titled := course("young", 2)
	titled.Title, titled.Lessons[0].Title, titled.Lessons[0].Exercises[0].Title = "a", "b", "c"
	if titled.Letters() != base.Letters() {
		t.Error("titles make another edition")
	}
}

// The cases that the page writes too: the letters of a course, the lessons as day/right/missed, and the code.
func TestSharedCases(t *testing.T) {
	if *update {
		writeCases(t)
	}
	text, err := os.ReadFile(casesFile)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")
	if len(lines) < 100 {
		t.Errorf("only %d cases", len(lines))
	}
	for _, line := range lines {
		words := strings.Fields(line)
		var lessons []Done
		for _, word := range words[1 : len(words)-1] {
			lessons = append(lessons, readCase(t, word))
		}
		if got := write(words[0], lessons); got != words[len(words)-1] {
			t.Errorf("%s: %s", line, got)
		}
	}
}

func readCase(t *testing.T, text string) Done {
	t.Helper()
	var numbers []int
	for _, word := range strings.Split(text, "/") {
		n, err := strconv.Atoi(word)
		if err != nil {
			t.Fatal(err)
		}
		numbers = append(numbers, n)
	}
	return Done{numbers[0], numbers[1], numbers[2]}
}

func writeCases(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 8))
	var out strings.Builder
	for i := range 200 {
		letters := make([]byte, 2*idLetters)
		for j := range letters {
			letters[j] = alphabet[r.IntN(len(alphabet))]
		}
		lessons := anyLessons(r, i%8)
		if i%50 == 7 {
			lessons[0] = Done{Day: mostDay + 5, Right: 1 << 30} // beyond what a code can say
		}
		out.Write(letters)
		for _, d := range lessons {
			fmt.Fprintf(&out, " %d/%d/%d", d.Day, d.Right, d.Missed)
		}
		fmt.Fprintf(&out, " %s\n", write(string(letters), lessons))
	}
	if err := os.WriteFile(casesFile, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
