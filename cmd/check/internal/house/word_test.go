package house

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// What no text of the project may hold. The patterns are put together from parts, so that this file holds none.
var barred = []struct {
	pattern *regexp.Regexp
	why     string
}{
	{regexp.MustCompile(`\b(?:TO` + `DO|FIX` + `ME|XX` + `X|HA` + `CK)\b`),
		"work that is left is written down where work is planned, not here"},
	{regexp.MustCompile(`(?:^|[\s"'=(:` + "`" + `])/(?:work|root|home|Users|farm|tmp|mnt)/[\w.-]`),
		"a path of one machine"},
	{regexp.MustCompile(`\b[A-Z]:\\\\?Users\b`),
		"a path of one machine"},
	{regexp.MustCompile(`\b(?:registry\.npm` + `js|proxy\.go` + `lang|pypi\.py` + `thon|goprox` + `y)\b`),
		"a package registry: every machine uses its own"},
}

// made are files that hold texts of others, word for word.
var made = []string{"package-lock.json", "commonmark/"}

func barredWords(t *tree) []string {
	var broken []string
	for _, name := range slices.Sorted(maps.Keys(t.texts)) {
		if slices.ContainsFunc(made, func(part string) bool { return strings.Contains(name, part) }) {
			continue
		}
		for i, line := range strings.Split(t.texts[name], "\n") {
			for _, b := range barred {
				if found := b.pattern.FindString(line); found != "" {
					broken = append(broken, fmt.Sprintf("%s:%d: %q: %s", name, i+1, found, b.why))
				}
			}
		}
	}
	return broken
}

func TestBarredWords(t *testing.T) { hold(t, barredWords) }
