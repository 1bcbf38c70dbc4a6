package house

import (
	"fmt"
	"path"
	"slices"
	"strings"
	"testing"
)

// Names that say nothing: what such a package holds belongs where it is used.
var emptyNames = []string{"util", "utils", "helper", "helpers", "common", "misc", "shared", "base", "lib", "core"}

func packageNames(t *tree) []string {
	var broken []string
	seen := map[string]bool{}
	for _, f := range t.gos {
		folder := f.folder()
		if slices.Contains(emptyNames, path.Base(folder)) && !seen[folder] {
			seen[folder] = true
			broken = append(broken, fmt.Sprintf("%s: the name says nothing of what is in it", folder))
		}
	}
	return broken
}

// packageDocs sees that every package says what it owns, in one place.
func packageDocs(t *tree) []string {
	docs := map[string][]*goFile{}
	for _, f := range t.gos {
		if f.test {
			continue
		}
		if docs[f.folder()] == nil {
			docs[f.folder()] = []*goFile{}
		}
		if f.ast.Doc != nil {
			docs[f.folder()] = append(docs[f.folder()], f)
		}
	}
	var broken []string
	for folder, files := range docs {
		if len(files) != 1 {
			broken = append(broken, fmt.Sprintf("%s: %d files have a package doc, one must", folder, len(files)))
			continue
		}
		name, doc := files[0].ast.Name.Name, files[0].ast.Doc.Text()
		if name != "main" && !strings.HasPrefix(doc, "Package "+name+" ") {
			broken = append(broken, fmt.Sprintf("%s: the package doc must begin with \"Package %s\"", files[0].name, name))
		}
	}
	return broken
}

func TestPackageNames(t *testing.T) { hold(t, packageNames) }
func TestPackageDocs(t *testing.T)  { hold(t, packageDocs) }
