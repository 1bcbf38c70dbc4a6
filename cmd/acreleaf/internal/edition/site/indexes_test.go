package site

import (
	"bytes"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// deadEnds lists the addresses that a reader can cut a page's address down to and that have no page.
func deadEnds(made map[string]string) []string {
	var dead []string
	for name := range made {
		if path.Base(name) != "index.html" {
			continue
		}
		for folder := path.Dir(path.Dir(name)); folder != "."; folder = path.Dir(folder) {
			if made[folder+"/index.html"] == "" {
				dead = append(dead, folder)
			}
		}
	}
	return dead
}

// wayOut is a link of a page to another of the site.
var wayOut = regexp.MustCompile(`<a[^>]* href="([^"#:]+)["#]`)

func TestEveryFolderHasAPage(t *testing.T) {
	small := twoTongues(map[string]string{"soil": guide("Soil", 1, soilSheet)})
	small["guides/suelo.md"] = spanish("title: El suelo\ntranslates: soil.md")
	small["manual/press.md"] = &fstest.MapFile{Data: []byte(guide("Press", 1, ""))}
	small["courses/young/buds/a.md"] = &fstest.MapFile{Data: []byte(guide("Buds", 1, ""))}
	small["courses/old/course.md"] = &fstest.MapFile{Data: []byte(guide("Old trees", 2, ""))}
	small["courses/old/b.md"] = &fstest.MapFile{Data: []byte(guide("Roots", 3, ""))}
	demo := fstest.MapFS{}
	if err := readInto(demo, filepath.Join("..", "..", "..", "..", "..", "content")); err != nil {
		t.Fatal(err)
	}
	for name, files := range map[string]fstest.MapFS{"small": small, "demo": demo} {
		made := mustMake(t, files)
		for _, folder := range deadEnds(made) {
			t.Errorf("%s: no page at %s/", name, folder)
		}
		for from, text := range made {
			for _, found := range wayOut.FindAllStringSubmatch(text, -1) {
				to := path.Join(path.Dir(from), found[1])
				if strings.HasPrefix(found[1], "/") { // from the page for an address that is not there
					to = path.Join(".", strings.TrimPrefix(found[1], "/"))
				}
				if strings.HasSuffix(found[1], "/") {
					to = path.Join(to, "index.html")
				}
				if made[to] == "" {
					t.Errorf("%s: %s leads to %s, which is not there", name, from, found[1])
				}
			}
		}
	}
}

func readInto(files fstest.MapFS, folder string) error {
	return filepath.WalkDir(folder, func(name string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.ReadFile(name)
		inside, _ := filepath.Rel(folder, name)
		files[filepath.ToSlash(inside)] = &fstest.MapFile{Data: text}
		return err
	})
}

const soilSheet = "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n"

// A list has the pages in the order of their kind, the courses, or the lessons of one.
func TestListsOfPages(t *testing.T) {
	files := content(map[string]string{"a": guide("First guide", 1, soilSheet)})
	for name, order := range map[string]int{"b": 2, "a": 3, "c": 1} {
		files["manual/"+name+".md"] = &fstest.MapFile{Data: []byte(guide("Page "+name, order, ""))}
		files["courses/"+name+"/one.md"] = &fstest.MapFile{Data: []byte(guide("Lesson "+name, order, ""))}
	}
	made := mustMake(t, files)
	for name, want := range map[string][]string{
		"manual/index.html":       {"Page c", "Page b", "Page a"},
		"courses/index.html":      {"Courses: a", "Courses: b", "Courses: c"},
		"courses/b/index.html":    {"Lesson b"},
		"guides/index.html":       {"First guide"},
		"calculations/index.html": {"Nitrogen in the soil"},
	} {
		at := 0
		for _, title := range want {
			found := strings.Index(made[name][at:], ">"+title+"</a>")
			if found < 0 {
				t.Errorf("%s does not list %s there:\n%s", name, title, made[name])
				break
			}
			at += found
		}
		if strings.Count(made[name], "<li>") != len(want) {
			t.Errorf("%s lists other pages too:\n%s", name, made[name])
		}
	}
}

// A host has one such page for all languages, so it speaks each.
func TestMissingPageSpeaksEachLanguage(t *testing.T) {
	files := twoTongues(map[string]string{"soil": guide("Soil", 1, "")})
	files["guides/suelo.md"] = spanish("title: El suelo")
	text := mustMake(t, files)["404.html"]
	for _, want := range []string{
		`<section lang="es">`, "Aquí no hay ninguna página", `<a href="/es/">Todas las guías</a>`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("there is no %s in\n%s", want, text)
		}
	}
}

// The page for an address that is not there does not grow with the site.
func TestMissingPageStaysSmall(t *testing.T) {
	pages := map[string]string{"a": guide("First guide", 1, "")}
	small := mustMake(t, content(pages))["404.html"]
	for i := range 50 {
		pages["row-"+strings.Repeat("x", i+1)] = guide("Another guide", i, "")
	}
	if large := mustMake(t, content(pages))["404.html"]; large != small {
		t.Errorf("%d bytes for one guide, and %d for many", len(small), len(large))
	}
	for _, want := range []string{`href="/"`, `href="/assets/`, `content="noindex"`} {
		if !bytes.Contains([]byte(small), []byte(want)) {
			t.Errorf("there is no %s in\n%s", want, small)
		}
	}
}
