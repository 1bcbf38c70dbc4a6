package wire_test

import (
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/wire"
)

var imported = regexp.MustCompile(`(?m)^import (?:[^t;]|t[^y;])[^;]*?from "\./(\w+)";`)

// reachable gives the text of a script and of all that it imports, but for types.
func reachable(t *testing.T, name string, seen map[string]bool) string {
	t.Helper()
	if seen[name] {
		return ""
	}
	seen[name] = true
	text, err := os.ReadFile("../../../../theme/script/" + name + ".ts")
	if err != nil {
		t.Fatal(err)
	}
	all := string(text)
	for _, found := range imported.FindAllStringSubmatch(all, -1) {
		all += reachable(t, found[1], seen)
	}
	return all
}

// Each script has the words that it may ask for.
func TestEachScriptHasItsWords(t *testing.T) {
	for script, words := range map[string][]wire.Word{"start": wire.WordsOfPage, "after": wire.WordsOfAfter,
		"course": wire.WordsOfCourse, "offline": wire.WordsOfOffline, "find": wire.WordsOfFind} {
		text := reachable(t, script, map[string]bool{})
		for _, c := range constants(t) {
			if c.kind != "Word" {
				continue
			}
			name, _ := strconv.Unquote(c.value)
			asked, given := strings.Contains(text, c.value), slices.Contains(words, wire.Word(name))
			if asked && !given {
				t.Errorf("%s.ts asks for the word %q, which it is not given", script, name)
			} else if given && !asked {
				t.Errorf("%s.ts is given the word %q, which it does not ask for", script, name)
			}
		}
	}
}
