package site

import (
	"bytes"
	"fmt"
	"io/fs"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

const office = "office: Test Row Orchard Office\n"

// content is a content folder with a home page, a bibliography and the guides given, by name.
func content(guides map[string]string) fstest.MapFS {
	files := fstest.MapFS{
		"site.yaml": {Data: []byte(office)},
		"sources.yaml": {Data: []byte("row-book:\n  title: The book of rows\n  kind: memory\n" +
			"  figures:\n    2 lb N/ac: for each\n    3 lb N/ac: for some\n")},
		"home.md": {Data: []byte("---\ntitle: Test Row\nsummary: Guides.\n---\n")},
	}
	for name, text := range guides {
		files["guides/"+name+".md"] = &fstest.MapFile{Data: []byte(text)}
	}
	return files
}

func guide(title string, order int, body string) string {
	return fmt.Sprintf("---\ntitle: %s\nsummary: It is short.\norder: %d\nseason: spring\n---\n%s\n", title, order, body)
}

func mustMake(t *testing.T, files fs.FS) map[string]string {
	t.Helper()
	texts, _, messages := collect(book.Options{Content: files, Name: "content"})
	if len(messages) > 0 {
		var said bytes.Buffer
		message.Printer{}.Print(&said, messages)
		t.Fatal(said.String())
	}
	return texts
}

// many is enough guides that workers meet.
func many(faulty bool) map[string]string {
	guides := map[string]string{}
	for i := range 40 {
		body := "```worksheet soil\ncalculation: soil-nitrogen\nnitrate: 12 ppm NO3-N\ndepth: 12 in\n```\n\n" +
			"Here are [48 lb/ac](worked:soil.nitrogen), and [2 lb/ac](source:row-book \"for each\").\n"
		if faulty {
			body += "[47 lb/ac](worked:soil.nitrogen), [it](gone.md), [2 lb/ac](source:rowbook)\n"
		}
		guides[fmt.Sprintf("block-%02d", i)] = guide(fmt.Sprintf("Block %d", i), 40-i, body)
	}
	return guides
}

// However many workers there are, a site has the same bytes.
func TestMakeIsTheSameForAnyNumberOfWorkers(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	files := content(many(false))
	first := ""
	for _, workers := range []int{1, 2, 7, 1} {
		runtime.GOMAXPROCS(workers)
		all := pressed(book.Options{Content: files, Name: "content"})
		if first == "" {
			first = all
		}
		if first != all || !strings.HasPrefix(all, "41\n") {
			t.Errorf("%d workers make another site", workers)
		}
	}
}

// So have the messages, and each page has all of its own.
func TestMessagesAreTheSameForAnyNumberOfWorkers(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	files := content(many(true))
	first := ""
	for _, workers := range []int{1, 2, 7, 1} {
		runtime.GOMAXPROCS(workers)
		made, _, messages := collect(book.Options{Content: files, Name: "content"})
		var said bytes.Buffer
		err := message.JSON(&said, messages, message.Counts{}) // all of them, where a terminal gets the first
		if err != nil || made != nil || len(messages) != 120 {
			t.Fatal(said.String())
		}
		if first == "" {
			first = said.String()
		}
		if said.String() != first {
			t.Errorf("%d workers say\n%s\nnot\n%s", workers, &said, first)
		}
	}
}

// What is checked is what is made: a check finds the faults that a press finds, and counts what it read.
func TestCheckFindsWhatMakeFinds(t *testing.T) {
	for _, faulty := range []bool{false, true} {
		o := book.Options{Content: content(many(faulty)), Name: "content"}
		_, _, messages := collect(o)
		checked := book.Check(o, New, proof.Rules{})
		if len(checked.Messages) != len(messages) || checked.Pages != 41 || checked.Sourced < 40 || checked.Worked < 40 {
			t.Errorf("%d messages, not %d; %d pages, %d worked and %d sourced figures", len(checked.Messages),
				len(messages), checked.Pages, checked.Worked, checked.Sourced)
		}
	}
}

// Guides are in the order of the season, whatever their files are called, and so do those that cite a source.
func TestOrderOfTheSeason(t *testing.T) {
	const cites = "[2 lb/ac](source:row-book \"for each\"), twice: [3 lb/ac](source:row-book \"for some\")."
	files := mustMake(t, content(map[string]string{
		"a": guide("Third", 3, cites), "b": guide("First", 1, cites), "c": guide("Second", 2, ""),
	}))
	titles := regexp.MustCompile(`First|Second|Third`)
	if found := titles.FindAllString(files["sources/index.html"], -1); !slices.Equal(found, []string{"First", "Third"}) {
		t.Errorf("the source is cited in %v", found)
	}
	middle := files["guides/c/index.html"]
	before, after := strings.Index(middle, `href="../b/"`), strings.Index(middle, `href="../a/"`)
	if before < 0 || after < 0 || before > after {
		t.Errorf("the second guide leads to neither side:\n%s", middle)
	}
	if first := files["guides/b/index.html"]; strings.Contains(first, `href="../a/"`) {
		t.Error("the first guide leads to the third")
	}
}

// A file that a page shows is copied; one that no page asks for, or a hidden one, is no part of the site.
func TestOnlyFilesInUseAreCopied(t *testing.T) {
	files := content(map[string]string{"a": guide("A", 1, "![The block](../plan.svg)")})
	files["plan.svg.bak"] = &fstest.MapFile{Data: []byte("x")}
	files[".git/config"] = &fstest.MapFile{Data: []byte("x")}
	files["guides/.soil.md.swp"] = &fstest.MapFile{Data: []byte("x")}
	const plan = `<svg xmlns="http://www.w3.org/2000/svg"/>`
	files["plan.svg"] = &fstest.MapFile{Data: []byte(plan)}
	made := mustMake(t, files)
	if made["plan.svg"] != plan {
		t.Error("the picture is not copied")
	}
	for path := range made {
		if strings.Contains(path, "/.") || strings.HasPrefix(path, ".") || strings.HasSuffix(path, ".bak") {
			t.Errorf("%s is part of the site", path)
		}
	}
}

// A press lets the text of a finished page go. A message that is found later shows its line all the same.
func TestALateMessageShowsItsLine(t *testing.T) {
	files := content(map[string]string{"a": guide("A", 1, "See [it](b.md#gone)."), "b": guide("B", 2, "## Here")})
	said := pressed(book.Options{Content: files, Name: "content"})
	if !strings.Contains(said, "guides/a.md:7:10: error: ") || !strings.Contains(said, "7 | See [it](b.md#gone).\n") {
		t.Errorf("the press says\n%s", said)
	}
}
