package site

import (
	"encoding/xml"
	"fmt"
	"io"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Small words of English that are no words of Spanish, and no signs of units.
var englishWords = regexp.MustCompile(`(?i)\b(the|of|and|per|for|with|from|to|is|are|this|that|not|or|each|your|you|` +
	`which|when|than|what|how|type|choose|back|show|hide|answer|given|work|january|february|march|april|june|july|` +
	`august|september|october|november|december)\b`)

// What is English by right: names of bodies and the people who sign a work, and words that laboratories print, which a
// page quotes.
var names = regexp.MustCompile(`[A-Z][\w/.&-]*(,? (?:[A-Z][\w/.&-]*|of|and|for|others))+|"[^"]*"|“[^”]*”`)

// Attributes that a reader hears or sees.
var readAttributes = []string{"alt", "aria-label", "aria-description", "title", "placeholder", "label"}

// Elements whose text is no sentence of the page: programs, what is typed in a file, and titles of works.
var unread = []string{"script", "style", "template", "code", "pre", "cite"}

// A reader who has no English meets none on the Spanish pages of the demo, but where it is marked as English.
func TestSpanishPagesHaveNoEnglish(t *testing.T) {
	files := mustMake(t, os.DirFS("../../../../../content"))
	pages := 0
	for name, text := range files {
		if strings.HasPrefix(name, "es/") && path.Ext(name) == ".html" {
			pages++
			for _, fault := range english(text) {
				t.Errorf("%s: %s", name, fault)
			}
		}
	}
	if pages < 20 {
		t.Errorf("only %d pages are in Spanish", pages)
	}
}

// The test above finds English: in a sentence, and in what is only heard.
func TestEnglishIsFound(t *testing.T) {
	for text, want := range map[string]int{
		`<html lang="es"><p>Show the work</p><p>La hoja</p></html>`:                       1,
		`<html lang="es"><a aria-label="Back to the list" href="#">x</a></html>`:          1,
		`<html lang="es"><p lang="en">Show the work <b>of it</b></p><p>Un mes</p></html>`: 0,
		`<html lang="es"><p>National Institute of Standards and Technology.</p></html>`:   0,
		`<html lang="es"><p>Si dice "nitrate as of now".</p><code>from the</code></html>`: 0,
	} {
		if got := english(text); len(got) != want {
			t.Errorf("%s: %v", text, got)
		}
	}
}

// english are the texts of a page that are in English and not marked so.
func english(page string) []string {
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var found []string
	look := func(text string) {
		if word := englishWords.FindString(names.ReplaceAllString(text, "")); word != "" {
			found = append(found, fmt.Sprintf("%q in %q", word, strings.TrimSpace(text)))
		}
	}
	type open struct{ silent bool }
	stack := []open{{}}
	for {
		token, err := d.RawToken()
		if err == io.EOF {
			return found
		}
		if err != nil {
			return append(found, err.Error())
		}
		last := stack[len(stack)-1]
		switch token := token.(type) {
		case xml.StartElement:
			at := open{last.silent || slices.Contains(unread, token.Name.Local)}
			for _, a := range token.Attr {
				if a.Name.Local == "lang" {
					at.silent = at.silent && last.silent && a.Value != "es" || a.Value == "en"
				}
			}
			for _, a := range token.Attr {
				if !at.silent && slices.Contains(readAttributes, a.Name.Local) {
					look(a.Value)
				}
			}
			if !slices.Contains(xml.HTMLAutoClose, token.Name.Local) {
				stack = append(stack, at)
			}
		case xml.EndElement:
			if len(stack) > 1 {
				stack = stack[:len(stack)-1]
			}
		case xml.CharData:
			if !last.silent {
				look(string(token))
			}
		}
	}
}
