// Package kind lists the kinds of pages, a row each.
//
// It owns what tells the kinds apart: the folder, who writes a page and who reads it, what a draft begins with, what a
// proof asks of it. It must not know an address, a word of the interface or a rule: those who do ask the row. A kind
// that is added needs a row here; the tests of page, render, draft and site walk all rows, and name what each lacks.
package kind

import "iter"

// Kind is what sort of page a page is. The zero Kind is no page.
type Kind uint8

// The kinds, in the order in which pages are listed: what growers read first, what is for authors last.
const (
	None Kind = iota
	Home
	Block
	Guide
	Workshop
	Course
	Lesson
	Manual
	Calculation
	Sources
	Index
	Terms
	Leader
	Offline
	Missing
	count
)

// Reader is who a page is for.
type Reader uint8

// The readers.
const (
	Grower Reader = iota
	Author
)

// Row is what is true of a kind.
type Row struct {
	Name    string
	Folder  string // of its pages, in the site and under the content folder; empty for a page that is in none
	Written bool   // somebody writes its pages; all others are made by the press
	Reader  Reader
	Pattern string // the file that a drafted page begins as; empty where pages are not drafted

	Numbered bool // a page shows its place in the order of its kind
	Turns    bool // a page leads to the one before it and the one after it
	Contents bool // a page lists its parts at its top
	Led      bool // a page may have notes for who leads it, which are on a page of their own
	Lists    bool // a page shows something of all others, so that it is made after them

	Reviewed bool // a proof asks when a page was last reviewed
	Warns    bool // a page that handles a hazard must warn of it
	Typed    bool // the numbers in its listings are there to be typed, and nothing is claimed of them
}

var rows = [count]Row{
	None: {Warns: true}, // its name gives no kind, and once it does it may be a guide
	Home: {Name: "home", Written: true, Lists: true},
	// In no folder, one for each language; it shows which guides explain its answers.
	Block: {Name: "block", Written: true, Lists: true, Reviewed: true, Warns: true},
	Guide: {Name: "guide", Folder: "guides", Written: true, Pattern: "guide.md",
		Numbered: true, Turns: true, Contents: true, Reviewed: true, Warns: true},
	Workshop: {Name: "workshop", Folder: "workshops", Written: true, Pattern: "workshop.md",
		Numbered: true, Contents: true, Led: true, Warns: true},
	Course: {Name: "course", Written: true, Lists: true, Warns: true}, // in the folder of its lessons
	Lesson: {Name: "lesson", Folder: "courses", Written: true, Pattern: "lesson.md",
		Turns: true, Contents: true, Warns: true},
	Manual: {Name: "manual", Folder: "manual", Written: true, Reader: Author,
		Numbered: true, Turns: true, Contents: true, Typed: true},
	Calculation: {Name: "calculation", Folder: "calculations"},
	Sources:     {Name: "sources"},
	Index:       {Name: "index"},
	Terms:       {Name: "terms"},
	Leader:      {Name: "leader"}, // the leader's page of another, under its address
	Offline:     {Name: "offline"},
	Missing:     {Name: "missing"},
}

// Row gives what is true of a kind.
func (k Kind) Row() Row { return rows[k] }

func (k Kind) String() string { return rows[k].Name }

// All gives every kind, in order.
func All() iter.Seq[Kind] {
	return func(yield func(Kind) bool) {
		for k := None + 1; k < count && yield(k); k++ {
		}
	}
}

// Of gives the kind of the pages that somebody writes in a folder under the content folder.
func Of(folder string) (Kind, bool) {
	for k := range All() {
		if row := rows[k]; row.Written && row.Folder == folder && folder != "" {
			return k, true
		}
	}
	return None, false
}

// Folders lists the folders of the kinds for which a condition holds, in order.
func Folders(has func(Row) bool) []string {
	var folders []string
	for k := range All() {
		if row := rows[k]; row.Folder != "" && has(row) {
			folders = append(folders, row.Folder)
		}
	}
	return folders
}
