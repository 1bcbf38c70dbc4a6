package house

import (
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// scriptImport is what a file of the page's script imports from another.
var scriptImport = regexp.MustCompile(`(?m)^(?:import|export)\b[^;]*?\bfrom "\./(\w+)";`)

// scriptCircles finds the files of the page's script that import each other, directly or through others.
func scriptCircles(t *tree) []string {
	imports := map[string][]string{}
	for name, text := range t.texts {
		if strings.HasPrefix(name, "theme/script/") && path.Ext(name) == ".ts" {
			for _, found := range scriptImport.FindAllStringSubmatch(text, -1) {
				imports[name] = append(imports[name], "theme/script/"+found[1]+".ts")
			}
		}
	}
	var broken []string
	for name := range imports {
		if way := wayBack(imports, name, name, map[string]bool{}); way != nil {
			broken = append(broken, "imports in a circle: "+strings.Join(append([]string{name}, way...), " > "))
		}
	}
	slices.Sort(broken)
	return broken
}

// wayBack gives the imports that lead from one file to another; nil for none.
func wayBack(imports map[string][]string, from, to string, seen map[string]bool) []string {
	for _, next := range imports[from] {
		if next == to {
			return []string{next}
		}
		if !seen[next] {
			seen[next] = true
			if rest := wayBack(imports, next, to, seen); rest != nil {
				return append([]string{next}, rest...)
			}
		}
	}
	return nil
}

func TestScriptCircles(t *testing.T) { hold(t, scriptCircles) }
