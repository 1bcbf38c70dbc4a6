package main

import (
	"cmp"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/txtar"
)

// The manualSubjects of messages, in the order of the manual, and the titles of their pages.
var manualSubjects = []struct{ folder, title, summary string }{
	{"figures", "Messages about figures", "Messages about a number in a sentence that does not agree."},
	{"worksheets", "Messages about worksheets", "Messages about a worksheet or a reckoner that cannot be worked."},
	{"passages", "Messages about passages",
		"Messages about a text with cases, its conditions and its words for other numbers."},
	{"calculations", "Messages about calculations", "Messages about a calculation that an author wrote."},
	{"pages", "Messages about pages", "Messages about a page's metadata, its name and its place in the site."},
	{"text", "Messages about text", "Messages about headings, tables, footnotes, examples and other Markdown."},
	{"links", "Messages about links", "Messages about links and images that lead nowhere."},
	{"sources", "Messages about sources", "Messages about the list of sources and of what rests on it."},
	{"files", "Messages about files", "Messages about files and folders, and of the file of the site."},
}

// firstMessages is the place in the manual of the first page of messages.
const firstMessages = 32

const messagesBefore = `When something is wrong, the program says what, where, and what to type next.
The name of the message is in square brackets at the end of its first line. Look it up here.
Each message has the smallest page that brings it about, and what Acreleaf says about it, word for word.

An **error** stops the site from being made. **Advice** does not. You see advice when you [proof](proof.md).

| message | about |
| --- | --- |
`

// A faultyCase is one case of testdata/fault.
type faultyCase struct {
	id, folder string
	archive    *txtar.Archive
}

// faultyCases reads the cases, in the order of their ids.
func faultyCases(t *testing.T) []faultyCase {
	names, err := filepath.Glob(filepath.Join("testdata", "fault", "*", "*.txtar"))
	if err != nil || len(names) == 0 {
		t.Fatal("no cases", err)
	}
	var cases []faultyCase
	for _, name := range names {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		c := faultyCase{id: idOf(archive), folder: filepath.Base(filepath.Dir(name)), archive: archive}
		if c.id == "" {
			t.Errorf("%s has no message yet: run go test ./cmd/acreleaf -run TestFaults -update", name)
			continue
		}
		cases = append(cases, c)
	}
	slices.SortStableFunc(cases, func(a, b faultyCase) int { return cmp.Compare(a.id, b.id) })
	return cases
}

// idOf is the id of the message that a case says.
func idOf(archive *txtar.Archive) string {
	first, _, _ := strings.Cut(fileOf(archive, "said"), "\n")
	if at := strings.LastIndex(first, " ["); at >= 0 && strings.HasSuffix(first, "]") {
		return first[at+len(" [") : len(first)-len("]")]
	}
	return ""
}

func fileOf(archive *txtar.Archive, name string) string {
	for _, f := range archive.Files {
		if f.Name == name {
			return string(f.Data)
		}
	}
	return ""
}

// messagePages are made from the faulty cases: a list of all messages, and a page or more for each subject.
func messagePages(t *testing.T) []*manualPage {
	bySubject := map[string][]faultyCase{}
	for _, c := range faultyCases(t) {
		bySubject[c.folder] = append(bySubject[c.folder], c)
	}
	list := &manualPage{name: "messages", title: "What messages mean", order: firstMessages,
		summary: "Every message by its name, and the page that has it with its cause."}
	pages := []*manualPage{list}
	var rows []string
	for _, s := range manualSubjects {
		for i, text := range caseTexts(bySubject[s.folder]) {
			p := &manualPage{name: "messages-" + s.folder, title: s.title, summary: s.summary,
				order: firstMessages + len(pages), body: text.body}
			if i > 0 {
				p.name, p.title = fmt.Sprintf("%s-%d", p.name, i+1), fmt.Sprintf("%s, part %d", p.title, i+1)
			}
			pages = append(pages, p)
			for _, id := range text.ids {
				rows = append(rows, fmt.Sprintf("| [`%s`](%s.md#%s) | %s |\n", id, p.name, anchorOf(id), s.folder))
			}
		}
		delete(bySubject, s.folder)
	}
	for folder := range bySubject {
		t.Errorf("testdata/fault/%s is no subject of the manual", folder)
	}
	slices.Sort(rows)
	list.body = messagesBefore + strings.Join(rows, "")
	return pages
}

// mostText is what a page of messages holds, so that it stays light on the wire.
const mostText = 45_000 // bytes

// A caseText is what one page of messages has.
type caseText struct {
	body string
	ids  []string
}

// caseTexts parts the cases of a subject into pages. The cases of one message stay together.
func caseTexts(cases []faultyCase) []caseText {
	var texts []caseText
	for len(cases) > 0 {
		n := 1
		for n < len(cases) && cases[n].id == cases[0].id {
			n++
		}
		body := caseList(cases[:n])
		if last := len(texts) - 1; last < 0 || len(texts[last].body)+len(body) > mostText {
			texts = append(texts, caseText{})
		}
		text := &texts[len(texts)-1]
		text.body += body
		text.ids = append(text.ids, cases[0].id)
		cases = cases[n:]
	}
	return texts
}

// anchorOf is the id of a message's heading.
func anchorOf(id string) string { return "message-" + id }

// caseList writes the cases of one message.
func caseList(cases []faultyCase) string {
	var b strings.Builder
	fmt.Fprintf(&b, "\n## %s {#%s}\n", cases[0].id, anchorOf(cases[0].id))
	for _, c := range cases {
		fmt.Fprintf(&b, "\n%s\n", escaped(strings.TrimSpace(string(c.archive.Comment))))
		for _, f := range c.archive.Files {
			if f.Name == "said" {
				continue
			}
			name := strings.TrimPrefix(f.Name, "content/")
			if !utf8.Valid(f.Data) || strings.ContainsFunc(string(f.Data), unseen) {
				fmt.Fprintf(&b, "\n`%s` holds signs that cannot be shown here.\n", name)
				continue
			}
			fmt.Fprintf(&b, "\n`%s`\n\n%s", name, fenced(languageOf(name), string(f.Data)))
		}
		fmt.Fprintf(&b, "\nAcreleaf says:\n\n%s", fenced("text", fileOf(c.archive, "said")))
	}
	return b.String()
}

// unseen is a control character that a listing cannot show, or would break lines differently.
func unseen(r rune) bool { return r < ' ' && r != '\n' && r != '\t' || r == 0x7f || r == '\uFEFF' }

func languageOf(name string) string {
	return map[string]string{".md": "markdown", ".yaml": "yaml"}[filepath.Ext(name)]
}

// fenced is a listing whose fence is longer than any in it.
func fenced(language, text string) string {
	fence := "```"
	for strings.Contains(text, fence) {
		fence += "`"
	}
	return fence + language + "\n" + strings.TrimRight(text, "\n") + "\n" + fence + "\n"
}

// Every message that content can bring about is in the manual, which is made from the cases, and each has one.
func TestManualHasEveryMessage(t *testing.T) {
	told := map[string]bool{}
	for _, c := range faultyCases(t) {
		told[c.id] = true
	}
	ids := allMessages(t)
	if len(ids) < 80 {
		t.Errorf("only %d messages were found", len(ids))
	}
	for _, id := range ids {
		if told[id] == (unreachable[id]+onDisk[id] != "") {
			t.Errorf("%s: a case of testdata/fault has it: %v", id, told[id])
		}
	}
	for _, id := range slices.Sorted(maps.Keys(told)) {
		if !slices.Contains(ids, id) {
			t.Errorf("%s is said by a case, and the code was not seen to say it", id)
		}
	}
	if _, err := os.Stat(filepath.Join(manualFolder, "messages.md")); err != nil {
		t.Error(err)
	}
}
