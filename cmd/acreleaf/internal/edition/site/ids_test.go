package site

import (
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

var (
	ids        = regexp.MustCompile(` id="([^"]*)"`)
	references = regexp.MustCompile(` (?:for|aria-labelledby|aria-describedby)="([^"]*)"`)
)

// A heading or an exercise has no id of another part of its page, be it that of a course or of who leads a workshop: a
// script would find the wrong one.
func TestHeadingsTakeNoIDsOfOtherParts(t *testing.T) {
	var headings strings.Builder
	for _, text := range []string{"Course", "Module", "State", "Text", "Units", "Exercise dig", "Exercise dig title",
		"Worksheet soil", "Soil nitrate", "Reference 0", "Wall title", "Wall dig", "Wall card", "Tally title", "Tally card"} {
		headings.WriteString("## " + text + "\n\nText.\n\n")
	}
	live := "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n" +
		"```reference\ntable: material\n```\n\n"
	for _, name := range []string{"dig", "dig-1", "dig-title", "title", "card"} {
		live += "```exercise " + name + "\ncalculation: soil-nitrogen\nnitrate: 4 to 24 ppm NO3-N, every 1\n" +
			"depth: 6, 12, 18 in\nstory: A report says {nitrate} in {depth}.\nask: nitrogen\nhint: Count the slices.\n" +
			"choose: Is it much?\noptions:\n" +
			"  much: {when: nitrogen > \"50 lb N/ac present\", say: It is, because: It is over that much.}\n" +
			"  little: {when: nitrogen <= \"50 lb N/ac present\", say: It is not, because: It is no more than that.}\n```\n\n"
	}
	files := content(map[string]string{"soil": guide("Soil", 1, live+headings.String())})
	files["workshops/hour.md"] = &fstest.MapFile{
		Data: []byte(guide("An hour", 1, live+"````leader\n"+headings.String()+"````\n"))}
	files["courses/young/course.md"] = &fstest.MapFile{Data: []byte(guide("Young", 1, headings.String()))}
	files["courses/young/a.md"] = lesson("Soil", 1, "")
	made := mustMake(t, files)
	for _, page := range []string{"guides/soil", "workshops/hour/leader", "courses/young"} {
		seen := map[string]bool{}
		for _, found := range ids.FindAllStringSubmatch(made[page+"/index.html"], -1) {
			if seen[found[1]] {
				t.Errorf("%s has the id %q twice", page, found[1])
			}
			seen[found[1]] = true
		}
		for _, found := range references.FindAllStringSubmatch(made[page+"/index.html"], -1) {
			for _, id := range strings.Fields(found[1]) {
				if !seen[id] {
					t.Errorf("%s refers to the id %q, and has none", page, id)
				}
			}
		}
		if len(seen) < 15 {
			t.Errorf("%s has only %d ids", page, len(seen))
		}
	}
}
