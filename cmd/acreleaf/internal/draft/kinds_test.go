package draft

import (
	"io/fs"
	"path"
	"testing"

	"acreleaf/cmd/acreleaf/internal/kind"
)

// Each kind that is drafted has its pattern in every language, and no pattern is left over.
func TestPatternsOfKinds(t *testing.T) {
	wanted := map[string]bool{}
	for k := range kind.All() {
		if pattern := k.Row().Pattern; pattern != "" {
			wanted[pattern] = true
		}
	}
	for language := range allSentences {
		files, err := fs.ReadDir(patterns, path.Join("patterns", language))
		if err != nil {
			t.Fatal(err)
		}
		for name := range wanted {
			if _, err := fs.Stat(patterns, path.Join("patterns", language, name)); err != nil {
				t.Errorf("there is no pattern %s in %s", name, language)
			}
		}
		for _, f := range files {
			if !wanted[f.Name()] {
				t.Errorf("no kind begins as patterns/%s/%s", language, f.Name())
			}
		}
	}
}
