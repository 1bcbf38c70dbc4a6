package page

import (
	"fmt"

	"acreleaf/cmd/acreleaf/internal/config"
)

// longestLesson is a day's work, in minutes. What is above it is a slip.
const longestLesson = 480

// lessonKeys are those of a lesson alone.
var lessonKeys = []string{"outcomes", "minutes", "after"}

func readLesson(t *config.Table) Lesson {
	l := Lesson{Outcomes: t.List("outcomes"), After: t.List("after")}
	minutes, said := t.Number("minutes")
	l.Minutes = int(min(max(minutes, 0), longestLesson))
	if said && (float64(l.Minutes) != minutes || l.Minutes == 0) {
		t.Fault("minutes", "minutes", fmt.Sprintf("a lesson cannot take %s minutes", t.Text("minutes")),
			fmt.Sprintf("type a whole number from 1 to %d, as in \"minutes: 20\"", longestLesson))
		l.Minutes = 0
	}
	known := t.Keys()
	for _, key := range known {
		for _, own := range lessonKeys {
			if key == own && l.Span.End == 0 {
				l.Span = t.KeySpan(key)
			}
		}
	}
	return l
}
