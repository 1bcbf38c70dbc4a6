package epub

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"io/fs"
	"maps"
	"net/url"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/nodes"
	"acreleaf/cmd/acreleaf/internal/output"
)

// made gives the books of a content folder by their paths, and what there is to say of them.
func made(t *testing.T, content fs.FS, edition book.New) (map[string][]byte, message.List) {
	t.Helper()
	var mutex sync.Mutex
	books := map[string][]byte{}
	_, said := book.Make(book.Options{Content: content, Name: "content"}, edition, func(f output.File) error {
		mutex.Lock()
		defer mutex.Unlock()
		books[f.Path] = f.Bytes
		return nil
	})
	return books, said
}

func demo() fs.FS { return os.DirFS("../../../../../content") }

// opened gives the files of a book by their names.
func opened(t *testing.T, book []byte) map[string]string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		content, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		files[f.Name] = string(content)
	}
	return files
}

// marks gives the values of an attribute in a text, which must be well formed.
func marks(t *testing.T, name, text, attribute string) []string {
	t.Helper()
	var values []string
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return values
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if start, is := token.(xml.StartElement); is {
			for _, a := range start.Attr {
				if a.Name.Local == attribute && a.Name.Space == "" {
					values = append(values, a.Value)
				}
			}
		}
	}
}

// Every guide, workshop and course of the demo is a book: the type first and as it is, all files listed, ids once, and
// every link leads somewhere.
func TestTheDemo(t *testing.T) {
	books, said := made(t, demo(), Of(demo(), nil))
	if len(said) > 0 {
		t.Fatal(said)
	}
	// The course, a folder, is a book in each of its two languages.
	if pages := Books(demo()); len(books) != len(pages)+1 || len(books) < 16 {
		t.Errorf("%d books of %d pages and courses", len(books), len(pages))
	}
	for _, name := range slices.Sorted(maps.Keys(books)) {
		// OCF 3.3, section 4.3: the name and the type are at these places of the file.
		if b := books[name]; string(b[30:58]) != "mimetypeapplication/epub+zip" {
			t.Errorf("%s begins with %q", name, b[:60])
		}
		files := opened(t, books[name])
		if !strings.Contains(files["META-INF/container.xml"], `full-path="book/package.opf"`) {
			t.Errorf("%s: the container does not lead to the package", name)
		}
		listed := []string{"META-INF/container.xml", "book/package.opf", "mimetype"}
		for _, href := range marks(t, name, files["book/package.opf"], "href") {
			listed = append(listed, "book/"+href)
		}
		slices.Sort(listed)
		if have := slices.Sorted(maps.Keys(files)); !slices.Equal(have, listed) {
			t.Errorf("%s has %q and lists %q", name, have, listed)
		}
		waysLead(t, name, files)
	}
}

// waysLead looks at the links of the text and the contents of a book.
func waysLead(t *testing.T, name string, files map[string]string) {
	ids := map[string]map[string]bool{}
	var texts []string
	for file := range files {
		if path.Ext(file) == ".xhtml" {
			texts = append(texts, path.Base(file))
		}
	}
	for _, file := range texts {
		ids[file] = map[string]bool{}
		for _, id := range marks(t, name, files[inBook+file], "id") {
			if ids[file][id] {
				t.Errorf("%s: the id %q is in %s twice", name, id, file)
			}
			ids[file][id] = true
		}
	}
	inside := 0
	for _, file := range texts {
		for _, href := range marks(t, name, files[inBook+file], "href") {
			to, err := url.Parse(href)
			if err != nil || to.IsAbs() {
				continue
			}
			inside++
			target := path.Join(path.Dir(inBook+file), to.Path)
			if to.Path == "" {
				target = inBook + file
			}
			if files[target] == "" || to.Fragment != "" && !ids[path.Base(target)][to.Fragment] {
				t.Errorf("%s: %s leads to %s, which is nowhere", name, file, href)
			}
		}
	}
	if inside < 5 {
		t.Errorf("%s has %d ways inside", name, inside)
	}
	for _, file := range texts {
		for _, live := range []string{"<script", "<button", "<input", "<select", "data-", " hidden"} {
			if strings.Contains(files[inBook+file], live) {
				t.Errorf("%s: %s has %q", name, file, live)
			}
		}
	}
}

// A listening edition keeps what the worksheets of each page are given, and what they answer.
type listening struct {
	book.Edition
	mutex *sync.Mutex
	of    map[string][]string
}

func (l listening) Page(p *book.Page) ([]output.File, message.List) {
	files, said := l.Edition.Page(p)
	if len(files) > 0 {
		var numbers []string
		for _, b := range p.Work.Sheets {
			if b.Kind != construct.Worksheet {
				continue
			}
			o := p.Work.Example(b)
			for _, g := range b.Sheet.Givens {
				if len(g.Choices) == 0 && o.Stated(g.Name) {
					numbers = append(numbers, o.Text(g.Name))
				}
			}
			for _, a := range o.Answers() {
				if o.There(a.Name) {
					numbers = append(numbers, o.Text(a.Name))
				}
			}
		}
		l.mutex.Lock()
		l.of[files[0].Path] = numbers
		l.mutex.Unlock()
	}
	return files, said
}

// below is how a number that a laboratory found to be below its limit begins.
var below = regexp.MustCompile(`^0 (to|a) `)

// Every number that the worksheets of the demo are given and answer is in the book, as a person reads it.
func TestNumbersOfTheExample(t *testing.T) {
	l := listening{mutex: new(sync.Mutex), of: map[string][]string{}}
	books, _ := made(t, demo(), func(s *book.Settings) book.Edition {
		l.Edition = Of(demo(), nil)(s)
		return l
	})
	count := 0
	for name, numbers := range l.of {
		body, err := read([]byte(opened(t, books[name])["book/text.xhtml"]))
		if err != nil {
			t.Fatal(err)
		}
		text := strings.ReplaceAll(textOf(body), ",", "") // a field has "1800", as it would be typed
		for _, number := range numbers {
			count++
			number = strings.Join(strings.Fields(strings.ReplaceAll(number, ",", "")), " ")
			// What a laboratory found to be below its limit is given as "<5".
			if !strings.Contains(text, number) && !strings.Contains(text, below.ReplaceAllString(number, "<")) {
				t.Errorf("%s lacks %q", name, number)
			}
		}
	}
	if count < 150 {
		t.Errorf("only %d numbers were looked for", count)
	}
}

const soilPage = `---
title: Soil & water
summary: A <page>.
language: en
reviewed: 2026-09-14
---

## One

See [the well](water.md#well), [the start](../home.md) and [the first part](#one).

![a row of trees](../rows.svg)
`

func small(site string) fstest.MapFS {
	files := fstest.MapFS{}
	for name, text := range map[string]string{
		"site.yaml":      "office: An office\nlanguage: en\n" + site,
		"home.md":        "---\ntitle: Home\nsummary: The start.\nlanguage: en\n---\n",
		"guides/soil.md": soilPage, "rows.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>`,
		"guides/water.md": "---\ntitle: Water\nsummary: The well.\nlanguage: en\n---\n\n## Well\n",
	} {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return files
}

// Ways to other pages are at the site's address, or text where there is none. The identifier stays the same.
func TestWaysToTheSite(t *testing.T) {
	for _, test := range []struct{ site, well, id string }{
		{"", "See the well, the start and", ">urn:uuid:"},
		{"address: https://example.org/g/\n", `<a href="https://example.org/g/guides/water/#well">the well</a>`,
			">https://example.org/g/guides/soil/<"},
	} {
		content := small(test.site)
		books, said := made(t, content, Of(content, []string{"guides/soil.md"}))
		if message.HasFault(said) || len(books) != 1 {
			t.Fatal(said, len(books))
		}
		files := opened(t, books["guides/soil.epub"])
		text, opf := files["book/text.xhtml"], files["book/package.opf"]
		if !strings.Contains(text, test.well) || !strings.Contains(text, `<a href="#one">the first part</a>`) {
			t.Errorf("the text is %s", text)
		}
		for _, stated := range []string{test.id, "<dc:title>Soil &amp; water</dc:title>", "<dc:language>en</dc:language>",
			"<dc:creator>An office</dc:creator>", `"dcterms:modified">2026-09-14T00:00:00Z<`,
			`href="pictures/rows.svg" media-type="image/svg+xml"`, `"schema:accessMode">visual<`} {
			if !strings.Contains(opf, stated) {
				t.Errorf("the package lacks %q: %s", stated, opf)
			}
		}
		if !strings.Contains(text, `<img src="pictures/rows.svg" alt="a row of trees" width="640" height="640"/>`) {
			t.Errorf("the text lacks the picture: %s", text)
		}
		again, _ := made(t, content, Of(content, []string{"guides/soil.md"}))
		if !bytes.Equal(again["guides/soil.epub"], books["guides/soil.epub"]) {
			t.Error("made twice, the book has other bytes")
		}
	}
}

// A page without a day is told, and no book of it is made.
func TestUndated(t *testing.T) {
	content := small("")
	books, said := made(t, content, Of(content, nil))
	if len(books) != 1 || len(said) != 1 || said[0].ID != "book-undated" {
		t.Errorf("%d books, and %v", len(books), said)
	}
}

// A line of the work parts before its signs, and keeps every piece in its order.
func TestLinesOfWork(t *testing.T) {
	body, err := read([]byte(`<div class="work"><p><math><mrow><mi>a</mi><mo>=</mo><mo>(</mo><mi>b</mi><mo>−</mo>` +
		`<mn>2</mn><mo>)</mo><mo>÷</mo><mrow><mn>3</mn><mtext> in</mtext></mrow></mrow></math></p></div>`))
	if err != nil {
		t.Fatal(err)
	}
	breakLines(body)
	var lines []string
	for _, part := range all(body, isElement("math")) {
		lines = append(lines, textOf(part))
	}
	if want := []string{"a", "=(b", "−2)", "÷3 in"}; !slices.Equal(lines, want) {
		t.Errorf("the parts are %q, want %q", lines, want)
	}
}

// Each exercise of the demo leads to its answer, which is after all exercises and has a number in it.
func TestAnswersAtTheEnd(t *testing.T) {
	books, _ := made(t, demo(), Of(demo(), []string{"workshops/report.md"}))
	body, err := read([]byte(opened(t, books["workshops/report.epub"])["book/text.xhtml"]))
	if err != nil {
		t.Fatal(err)
	}
	end := find(body, isOf("answers"))
	exercises := all(body, isOf("exercise"))
	if end == nil || len(exercises) < 2 || find(end, isOf("exercise")) != nil {
		t.Fatalf("%d exercises", len(exercises))
	}
	options := 0
	for _, exercise := range exercises {
		id := nodes.Attribute(exercise, "id") + "-answer"
		answer := find(end, func(n *html.Node) bool { return nodes.Attribute(n, "id") == id })
		way := find(exercise, func(n *html.Node) bool { return nodes.Attribute(n, "href") == "#"+id })
		if answer == nil || way == nil {
			t.Fatalf("%s: no answer, or no way to it", id)
		}
		if key := find(answer, isOf("key")); key == nil || !strings.ContainsAny(textOf(key), "0123456789") {
			t.Errorf("%s has no number", id)
		}
		if find(exercise, isElement("input")) != nil || find(exercise, isElement("select")) != nil {
			t.Errorf("%s has something to fill in", id)
		}
		options += len(all(exercise, isOf("option")))
		if find(exercise, isOf("key")) != nil {
			t.Errorf("%s is told with the exercise", id)
		}
	}
	if reasons := all(end, isOf("reasons")); options < 2 || len(reasons) == 0 || textOf(reasons[0]) == "" {
		t.Errorf("%d options to choose from, and %d reasons", options, len(reasons))
	}
}
