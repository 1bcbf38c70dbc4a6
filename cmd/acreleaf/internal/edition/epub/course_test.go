package epub

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

const lessonText = `---
title: %s
summary: It is short.
order: %d
reviewed: 2026-10-0%d
---

## Dig

%s

` + "```exercise dig\ncalculation: soil-nitrogen\nnitrate: 4 to 24 ppm NO3-N, every 1\ndepth: 6, 12, 18 in\n" +
	"story: A report says {nitrate} in {depth}.\nask: nitrogen\n```\n"

// taught is a site with a course of two lessons, whose exercises have the same name.
func taught(site string) fstest.MapFS {
	files := small(site)
	lesson := func(title string, order int, text string) *fstest.MapFile {
		return &fstest.MapFile{Data: fmt.Appendf(nil, lessonText, title, order, order, text)}
	}
	files["courses/young/z.md"] = lesson("First", 1, "On to [digging](a.md#dig) and [the second](a.md).")
	files["courses/young/a.md"] = lesson("Second", 2, "See [the well](../../guides/water.md#well), [the first](z.md).")
	return files
}

// A course is one book: its lessons in order, links among them inside it, and the answers to all exercises at its end.
// Other pages are at the site's address, or text where it has none.
func TestACourseIsOneBook(t *testing.T) {
	for site, well := range map[string]string{"": "See the well,",
		"address: https://example.org/g/\n": `<a href="https://example.org/g/guides/water/#well">the well</a>`} {
		content := taught(site)
		books, said := made(t, content, Of(content, []string{"courses/young"}))
		if len(said) > 0 || len(books) != 1 {
			t.Fatal(said, len(books))
		}
		files := opened(t, books["courses/young.epub"])
		waysLead(t, "young", files)
		for file, parts := range map[string][]string{
			"text.xhtml": {"<h1>young</h1>",
				`<ol><li><a href="lesson-1.xhtml">First</a></li><li><a href="lesson-2.xhtml">Second</a>`},
			"lesson-1.xhtml": {`<a href="lesson-2.xhtml#dig">digging</a> and <a href="lesson-2.xhtml">the second</a>`},
			"lesson-2.xhtml": {well, `<a href="lesson-1.xhtml">the first</a>`,
				`href="answers.xhtml#lesson-2-exercise-dig-answer"`},
			"answers.xhtml": {`id="lesson-1-exercise-dig-answer"`, `<a href="lesson-2.xhtml#exercise-dig">`, `class="key"`,
				`<h2 id="lesson-1">First</h2>`},
			"nav.xhtml":   {`<a href="lesson-2.xhtml#dig">Dig</a>`, `<a href="answers.xhtml#lesson-2">Second</a>`},
			"package.opf": {"<dc:title>young</dc:title>", "2026-10-02T"},
		} {
			for _, part := range parts {
				if !strings.Contains(files[inBook+file], part) {
					t.Errorf("%s lacks %q:\n%s", file, part, files[inBook+file])
				}
			}
		}
		if answers := files[inBook+"answers.xhtml"]; strings.Contains(answers, "How to cite") ||
			strings.Contains(answers, "<ol></ol>") {
			t.Errorf("the end of the book is %s", answers)
		}
		for _, file := range []string{"lesson-1.xhtml", "lesson-2.xhtml"} {
			if strings.Contains(files[inBook+file], `class="key"`) {
				t.Errorf("%s tells the answer", file)
			}
		}
		places := marks(t, "package.opf", files[inBook+opfFile], "idref")
		if want := []string{"text-1", "text-2", "text-3", "text-4"}; !slices.Equal(places, want) {
			t.Errorf("the chapters are %q", places)
		}
	}
}

// Lessons are in the book of their course. One that is asked for by its name is a book of its own.
func TestALessonAloneIsAskedFor(t *testing.T) {
	content := taught("")
	content["guides/water.md"].Data = []byte(
		"---\ntitle: Water\nsummary: The well.\nreviewed: 2026-09-14\n---\n\n## Well\n")
	for _, test := range []struct{ only, want []string }{
		{nil, []string{"courses/young.epub", "guides/soil.epub", "guides/water.epub"}},
		{[]string{"courses/young/a.md"}, []string{"courses/young/a.epub"}},
	} {
		books, said := made(t, content, Of(content, test.only))
		var names []string
		for name := range books {
			names = append(names, name)
		}
		if slices.Sort(names); !slices.Equal(names, test.want) || len(said) > 0 {
			t.Errorf("%q makes %q, %v", test.only, names, said)
		}
	}
}

// The page that somebody wrote of a course begins its book, and a course without any day is told of.
func TestTheBeginningOfACourse(t *testing.T) {
	content := taught("")
	content["courses/young/course.md"] = &fstest.MapFile{Data: []byte(
		"---\ntitle: Young trees\nsummary: Two lessons.\n---\n\nBegin [here](z.md).\n")}
	only := Of(content, []string{"courses/young"})
	books, _ := made(t, content, only)
	files := opened(t, books["courses/young.epub"])
	if end := files[inBook+"answers.xhtml"]; !strings.Contains(end, "<cite>Young trees</cite>") {
		t.Errorf("the end does not say how to cite the course: %s", end)
	}
	text := files[inBook+textFile]
	for _, part := range []string{"<h1>Young trees</h1>", `Begin <a href="lesson-1.xhtml">here</a>`,
		`<a href="lesson-2.xhtml">Second</a>`, "The exercises in this book have the numbers of their first card."} {
		if !strings.Contains(text, part) {
			t.Errorf("the text lacks %q:\n%s", part, text)
		}
	}
	for _, name := range []string{"a", "z"} {
		file := content["courses/young/"+name+".md"]
		file.Data = []byte(strings.Replace(string(file.Data), "reviewed:", "# reviewed:", 1))
	}
	if books, said := made(t, content, only); len(books) != 0 || len(said) != 1 || said[0].ID != "book-undated" {
		t.Errorf("%d books, and %v", len(books), said)
	}
}
