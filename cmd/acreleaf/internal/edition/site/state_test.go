package site

import (
	"strings"
	"testing"
	"testing/fstest"
)

// A page says what it takes: numbers over the example where it has fields, answers where it has exercises alone. One
// that takes nothing says nothing of it, whatever kind of page it is.
func TestAPageSaysWhatItTakes(t *testing.T) {
	const numbers, cards = "Type your own numbers over the example.", "Work your card by hand, and type your answer."
	const sheet = "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n"
	const exercise = "```exercise dig\ncalculation: soil-nitrogen\nnitrate: 4 to 24 ppm NO3-N, every 1\n" +
		"depth: 6, 12, 18 in\nstory: A report says {nitrate} in {depth}.\nask: nitrogen\n```\n\n"
	const table = "```reckoner\ncalculation: soil-nitrogen\ndown: depth = 6, 12 in\nacross: nitrate = 5, 10 ppm NO3-N\n" +
		"show: nitrogen\n```\n\n"
	bodies := []struct{ body, says string }{
		{"Text.", ""}, {table, ""}, {sheet, numbers}, {sheet + table, numbers}, {exercise, cards}, {exercise + table, cards},
		{sheet + exercise, numbers},
	}
	pages := map[string]string{ // of each kind that somebody writes: the file, and its page
		"guides/a.md": "guides/a", "workshops/a.md": "workshops/a", "courses/young/a.md": "courses/young/a",
		"courses/young/course.md": "courses/young", "manual/a.md": "manual/a", "home.md": "",
	}
	for file, folder := range pages {
		for _, b := range bodies {
			files := content(map[string]string{"other": guide("Other", 2, "Text.")})
			files[file] = &fstest.MapFile{Data: []byte(guide("This", 1, b.body))}
			text := mustMake(t, files)[strings.TrimPrefix(folder+"/index.html", "/")]
			for _, one := range []string{numbers, cards} {
				if strings.Contains(text, one) != (one == b.says) {
					t.Errorf("%s does not say %q alone:\n%s", file, b.says, text)
				}
			}
		}
	}
}
