package site

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

func lesson(title string, order int, more string) *fstest.MapFile {
	return &fstest.MapFile{Data: fmt.Appendf(nil,
		"---\ntitle: %s\nsummary: It is short.\norder: %d\n%s---\n\nDig first.\n", title, order, more)}
}

// A lesson shows its place, and leads to its neighbors in its own course alone.
func TestLessonsOfACourse(t *testing.T) {
	files := content(map[string]string{"soil": guide("The soil guide", 1, "")})
	files["courses/young/b.md"] = lesson("Water", 2,
		"minutes: 20\noutcomes: [count the inches]\nafter: [a.md, ../../guides/soil.md]\n")
	files["courses/young/a.md"] = lesson("Soil", 1, "minutes: 10\n")
	files["courses/young/c.md"] = lesson("Feeds", 3, "")
	files["courses/old/d.md"] = lesson("Pruning", 2, "")
	made := mustMake(t, files)
	water := made["courses/young/b/index.html"]
	for _, want := range []string{"<li>Lesson 2 of 3</li>", "<li>20 min</li>", "<li>count the inches</li>",
		`<li><a href="../a/">Soil</a></li>`, `<li><a href="../../../guides/soil/">The soil guide</a></li>`,
		`<a rel="prev" href="../a/">`, `<a rel="next" href="../c/">`, `<a href="../">young</a>`} {
		if !strings.Contains(water, want) {
			t.Errorf("the lesson has no %s:\n%s", want, water)
		}
	}
	alone := made["courses/old/d/index.html"]
	if strings.Contains(alone, `rel="prev`) || strings.Contains(alone, `rel="next`) {
		t.Errorf("a lesson leads to one of another course:\n%s", alone)
	}
	list := made["courses/young/index.html"]
	for _, want := range []string{"Lessons: 3. Minutes in all: about 30.", `Start here: <a href="a/">Soil</a>`,
		"<small>20 min</small>", "<li>count the inches</li>"} {
		if !strings.Contains(list, want) {
			t.Errorf("the course has no %s:\n%s", want, list)
		}
	}
}

// The pages of a course and its lessons have what their script needs to keep progress, and no other page loads it.
func TestProgressOfACourse(t *testing.T) {
	files := content(map[string]string{"soil": guide("The soil guide", 1, "")})
	files["courses/young/a.md"] = lesson("Soil", 1, "")
	files["courses/young/a.md"].Data = append(files["courses/young/a.md"].Data,
		"\n```exercise layer\ntitle: One <layer>\ncalculation: soil-nitrogen\nnitrate: 4 to 24 ppm NO3-N, every 1\n"+
			"depth: 6, 12 in\nstory: The report says {nitrate} in the top {depth}.\nask: nitrogen\n```\n"...)
	files["courses/young/b.md"] = lesson("Water", 2, "")
	made := mustMake(t, files)
	data := regexp.MustCompile(`id="course">\{"code":"[A-Z2-7]{8}","lessons":(.*?)\}</script>`)
	found := data.FindStringSubmatch(made["courses/young/index.html"])
	want := `[{"name":"a","exercises":[{"name":"layer","title":"One \u003clayer\u003e","asks":1,"cards":40}]},` +
		`{"name":"b","exercises":[]}]`
	if found == nil || found[1] != want {
		t.Errorf("the course has the data %q; want %s", found, want)
	}
	if want := `<p class="told" hidden data-course="../" data-lesson="b"></p>`; !strings.Contains(
		made["courses/young/b/index.html"], want) {
		t.Errorf("the lesson has no %s", want)
	}
	for name, text := range made {
		loads := strings.Contains(text, "assets/course.en.")
		if of := strings.HasPrefix(name, "courses/young/"); strings.HasSuffix(name, ".html") && loads != of {
			t.Errorf("%s loads the script of courses: %v", name, loads)
		}
	}
}

// The page that somebody wrote of a course lists its lessons, is on the list of courses, and is where they lead up to.
func TestWrittenCourse(t *testing.T) {
	files := content(map[string]string{"soil": guide("The soil guide", 1, "")})
	files["courses/young/course.md"] = lesson("Feeding trees", 1, "")
	files["courses/young/a.md"] = lesson("Soil", 1, "")
	made := mustMake(t, files)
	for name, want := range map[string]string{
		"courses/young/index.html":   `<li><a href="a/">Soil</a>`,
		"courses/young/a/index.html": `<a href="../">Feeding trees</a>`,
		"courses/index.html":         `<a href="young/">Feeding trees</a>`,
		"index.html":                 `<a href="courses/">Courses</a>`,
	} {
		if !strings.Contains(made[name], want) {
			t.Errorf("%s has no %s:\n%s", name, want, made[name])
		}
	}
}

// The twin of a lesson leads to the twins of what comes before it, and is counted among the lessons of its language.
func TestTranslatedLesson(t *testing.T) {
	files := twoTongues(map[string]string{"soil": guide("The soil guide", 1, "")})
	files["courses/young/a.md"] = lesson("Soil", 1, "")
	files["courses/young/b.md"] = lesson("Water", 2, "after: [a.md]\n")
	files["courses/young/suelo.md"] = spanish("title: El suelo\norder: 1\ntranslates: a.md")
	files["courses/young/agua.md"] = spanish(
		"title: El agua\norder: 2\ntranslates: b.md\nafter: [a.md, ../../guides/soil.md]")
	made := mustMake(t, files)
	for _, want := range []string{"<li>Lección 2 de 2</li>", `<li><a href="../suelo/">El suelo</a></li>`,
		`<li><a href="../../../../guides/soil/">The soil guide</a></li>`, `<a rel="prev" href="../suelo/">`} {
		if page := made["es/courses/young/agua/index.html"]; !strings.Contains(page, want) {
			t.Errorf("the lesson has no %s:\n%s", want, page)
		}
	}
}
