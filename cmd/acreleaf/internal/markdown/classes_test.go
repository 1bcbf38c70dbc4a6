package markdown

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"acreleaf/cmd/acreleaf/internal/construct"
)

var classAttribute = regexp.MustCompile(` class="([^"]*)"`)

// TestClasses wants Classes to be exactly the classes that the cases print, less those of the packages above.
func TestClasses(t *testing.T) {
	above := append(construct.Words(), construct.SchemeWords()...)
	printed := map[string]bool{}
	for _, name := range caseFiles(t) {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		page := asMap(archive.Files)["html"]
		for _, match := range classAttribute.FindAllStringSubmatch(page, -1) {
			for _, class := range strings.Fields(match[1]) {
				if !slices.Contains(above, class) {
					printed[class] = true
				}
			}
		}
	}
	var listed []string
	for _, c := range Classes() {
		listed = append(listed, c.Name)
		if c.Meaning == "" {
			t.Errorf("class %s has no meaning", c.Name)
		}
	}
	slices.Sort(listed)
	if diff := cmp.Diff(slices.Sorted(maps.Keys(printed)), listed); diff != "" {
		t.Errorf("classes (-printed +listed):\n%s", diff)
	}
}
