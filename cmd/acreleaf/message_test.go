package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// unreachable are messages that no content folder can bring about, and why.
var unreachable = map[string]string{
	"page-failed":           "a fault of the program itself, told with the file it happened on",
	"pages-failed":          "a fault of the program itself, in what it does with all pages",
	"page-unprintable":      "a fault of the program itself, told with the page it happened on",
	"worksheet-unprintable": "a fault of the program itself, told with the page it happened on",
	"book-unprintable":      "a fault of the program itself, told with the page it happened on",
	"calculation-unmade":    "a fault of the program itself, told with the calculation it happened on",
	"output-folder":         "a page is in a folder without a dot in its name, and a file that is published has an ending",
	"output-twice":          "a fault of the program itself: whatever would take the place of another is told before",
	"handout-unprintable":   "a fault of the program itself, told with the page it happened on",
	"file-changing":         "it needs a program that writes a file all the time; the tests of message have one",
}

// onDisk are messages that are in scripts, and not in a folder of testdata/fault, and why.
var onDisk = map[string]string{
	"book-undated":      "only books are told of it, and every case is pressed",
	"file-large":        "its case would be as large as the file",
	"picture-heavy":     "its case would be as large as the file",
	"file-plain":        "it needs a disk with pipes and devices",
	"file-too-large":    "its case would be as large as the file",
	"file-unreadable":   "it needs the rights of a disk",
	"folder-unreadable": "it needs the rights of a disk",
	"handout-address":   "the command handout alone says it",
	"handout-cards":     "the command handout alone says it",
	"handout-exercises": "the command handout alone says it",
	"handout-page":      "the command handout alone says it",
	"link-of-files":     "it needs the links of a disk",
	"page-crowded":      "its case would fill a page of the manual",
	"passage-long":      "its case would fill a page of the manual",
	"no-home":           "every case has a home page",
	"no-pages":          "every case has a home page",
}

// A message that no script and no faulty content folder shows is one that nobody has read.
func TestEveryMessageStandsInAScript(t *testing.T) {
	var shown strings.Builder
	for _, folder := range []string{"testdata", filepath.Join("internal", "worksheet", "testdata")} {
		err := fs.WalkDir(os.DirFS(folder), ".", func(name string, entry fs.DirEntry, err error) error {
			if err != nil || filepath.Ext(name) != ".txtar" {
				return err
			}
			text, err := os.ReadFile(filepath.Join(folder, name))
			shown.Write(text)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	ids := allMessages(t)
	if len(ids) < 150 {
		t.Errorf("only %d messages were found", len(ids))
	}
	for _, id := range ids {
		if there := strings.Contains(shown.String(), "["+id+"]\n"); there == (unreachable[id] != "") {
			t.Errorf("%s: shown by a script: %v", id, there)
		}
	}
}
