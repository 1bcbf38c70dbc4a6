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
	{"figures", "Messages about figures", "What is said when a number in a sentence does not hold."},
	{"worksheets", "Messages about worksheets", "What is said of a worksheet or a reckoner that cannot be worked."},
	{"calculations", "Messages about calculations", "What is said of a calculation that an author wrote."},
	{"pages", "Messages about pages", "What is said of a page's metadata, its name and its place in the site."},
	{"text", "Messages about text", "What is said of headings, tables, footnotes, examples and other Markdown."},
	{"links", "Messages about links", "What is said of links and images that lead nowhere."},
	{"sources", "Messages about sources", "What is said of the list of sources and of what rests on it."},
	{"files", "Messages about files", "What is said of files and folders, and of the file of the site."},
}

// firstMessages is the place in the manual of the first page of messages.
const firstMessages = 17

const messagesBefore = `When something is wrong, the program says what, where, and what to type next.
The name of the message stands in square brackets at the end of its first line. Look it up here.
Each message has the smallest page that brings it about, and what is said of it, word for word.

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

// messagePages are made from the faulty cases: a list of all messages, and a page for each subject.
func messagePages(t *testing.T) []*manualPage {
	bySubject := map[string][]faultyCase{}
	titles := map[string]string{}
	for _, s := range manualSubjects {
		titles[s.folder] = s.title
	}
	var list strings.Builder
	list.WriteString(messagesBefore)
	last := ""
	for _, c := range faultyCases(t) {
		if titles[c.folder] == "" {
			t.Errorf("testdata/fault/%s is no subject of the manual", c.folder)
		}
		if c.id != last {
			fmt.Fprintf(&list, "| [`%s`](messages-%s.md#%s) | %s |\n", c.id, c.folder, anchorOf(c.id), c.folder)
			last = c.id
		}
		bySubject[c.folder] = append(bySubject[c.folder], c)
	}
	pages := []*manualPage{{name: "messages", title: "What messages mean", order: firstMessages, body: list.String(),
		summary: "Every message by its name, and the page that has it with its cause."}}
	for _, s := range manualSubjects {
		if cases := bySubject[s.folder]; len(cases) > 0 {
			pages = append(pages, &manualPage{name: "messages-" + s.folder, title: s.title, summary: s.summary,
				order: firstMessages + len(pages), body: caseList(cases)})
		}
	}
	return pages
}

// anchorOf is the id of a message's heading.
func anchorOf(id string) string { return "message-" + id }

func caseList(cases []faultyCase) string {
	var b strings.Builder
	last := ""
	for _, c := range cases {
		if c.id != last {
			fmt.Fprintf(&b, "\n## %s {#%s}\n", c.id, anchorOf(c.id))
			last = c.id
		}
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
		fmt.Fprintf(&b, "\nYou are told:\n\n%s", fenced("text", fileOf(c.archive, "said")))
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

// Every message that content can bring about is in the manual, which is made from the cases, and each is said by one.
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
		if told[id] == unreachable[id] {
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
