package render

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"
	"strings"
)

// The blanks of the frame: what differs from page to page.
const (
	blankRoot = iota
	blankTitle
	blankSummary
	blankAddress
	blankScript
	blankHome
	blankUp
	blankSources
	blankTerms
	blankLanguages
	blankMain
	blankTurn
	blankCite
	blankCount
)

// A form is the frame of a page with the site's facts and words filled in and the page's blanks open. The template is
// run once, with a mark for each blank, and cut at the marks. The marks are plain letters and digits, which the
// template's escaping leaves alone wherever they stand: in text, in an attribute and in an address.
type form struct {
	pieces []string // the fixed text; pieces[i] comes before blanks[i], and the last one ends the page
	blanks []int
}

// frameData is what the template of the frame sees.
type frameData struct {
	Site  Site
	Words *Words
	Blank struct {
		Root, Title, Summary, Address, Script, Home, Up, Sources, Terms, Languages, Main, Turn, Cite string
	}
}

// newForm fills in the frame.
func newForm(files fs.FS, site Site, words *Words) (form, error) {
	frame, err := template.ParseFS(files, "page/frame.html")
	if err != nil {
		return form{}, fmt.Errorf("the page frame: %w", err)
	}
	data := frameData{Site: site, Words: words}
	data.Blank.Root = mark(blankRoot)
	data.Blank.Title = mark(blankTitle)
	data.Blank.Summary = mark(blankSummary)
	data.Blank.Address = mark(blankAddress)
	data.Blank.Script = mark(blankScript)
	data.Blank.Home = mark(blankHome)
	data.Blank.Up = mark(blankUp)
	data.Blank.Sources = mark(blankSources)
	data.Blank.Terms = mark(blankTerms)
	data.Blank.Languages = mark(blankLanguages)
	data.Blank.Main = mark(blankMain)
	data.Blank.Turn = mark(blankTurn)
	data.Blank.Cite = mark(blankCite)
	var filled bytes.Buffer
	if err := frame.Execute(&filled, data); err != nil {
		return form{}, fmt.Errorf("the page frame: %w", err)
	}
	return cut(filled.String())
}

const markStart, markEnd = "Blank9begins", "Blank9ends"

func mark(blank int) string { return markStart + string(rune('a'+blank)) + markEnd }

// cut parts the filled template at its marks.
func cut(text string) (form, error) {
	var f form
	seen := make([]bool, blankCount)
	for {
		before, rest, found := strings.Cut(text, markStart)
		f.pieces = append(f.pieces, before)
		if !found {
			break
		}
		name, after, closed := strings.Cut(rest, markEnd)
		if !closed || len(name) != 1 || name[0] < 'a' || name[0] >= 'a'+blankCount {
			return form{}, fmt.Errorf("the page frame: a text of the site holds %q, which the frame keeps for itself", markStart)
		}
		blank := int(name[0] - 'a')
		seen[blank] = true
		f.blanks = append(f.blanks, blank)
		text = after
	}
	for blank, there := range seen {
		if !there {
			return form{}, fmt.Errorf("the page frame has no place for its blank number %d", blank)
		}
	}
	return f, nil
}
