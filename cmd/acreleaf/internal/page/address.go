package page

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
)

// folderNames are the folders of the pages that somebody writes, in the order to show them.
var folderNames = kind.Folders(func(r kind.Row) bool { return r.Written })

// Address says where a page is in the site. It is comparable; every file name has one address of its own.
type Address struct {
	Kind     kind.Kind
	Language string // the code in the file name; empty for the site's main language
	Name     string // "guides/soil", the same for a page in all languages; empty for the home page
}

// AddressError says why a file name gives no address.
type AddressError struct{ Text, Note string }

func (e *AddressError) Error() string { return e.Text + ": " + e.Note }

const (
	contentFolder = "content/"
	extension     = ".md"
	homeName      = "home"
)

var nameElement = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// AddressOf gives the address of a page from its slash path: "content/guides/soil.es.md", with or without the content
// folder in front. The error is an *AddressError.
func AddressOf(path string) (Address, error) {
	inside := strings.TrimPrefix(path, contentFolder)
	stem, ok := strings.CutSuffix(inside, extension)
	if !ok {
		return Address{}, &AddressError{fmt.Sprintf("%q is not the name of a page", path), `end it with ".md"`}
	}
	stem, code, hasCode := strings.Cut(stem, ".")
	if hasCode && !config.IsLanguage(code) {
		return Address{}, &AddressError{fmt.Sprintf("%q has a dot in its name", path),
			`only a language code may stand between dots, as in "soil.es.md"; use a hyphen in place of the dot`}
	}
	if stem == homeName {
		return Address{Kind: kind.Home, Language: code}, nil
	}
	elements := strings.Split(stem, "/")
	for _, e := range elements {
		if !nameElement.MatchString(e) {
			return Address{}, &AddressError{fmt.Sprintf("the name %q cannot be part of an address", e),
				fmt.Sprintf("use small letters, digits and single hyphens: %q", suggest(e))}
		}
	}
	of, ok := kind.Of(elements[0])
	switch {
	case !ok || len(elements) == 1:
		return Address{}, &AddressError{fmt.Sprintf("%q is not in a folder for pages", path), wrongFolder(elements)}
	case elements[len(elements)-1] == "index":
		return Address{}, &AddressError{`a page cannot be named "index"`, "name it after what it is about"}
	}
	return Address{Kind: of, Language: code, Name: stem}, nil
}

func wrongFolder(elements []string) string {
	if len(elements) > 1 {
		if nearest, ok := message.Nearest(elements[0], folderNames); ok {
			return fmt.Sprintf("move it to the folder %q", nearest)
		}
	}
	return "move it to one of the folders " + strings.Join(folderNames, ", ") + `; the home page is "home.md"`
}

// suggest makes a name that can be part of an address.
func suggest(name string) string {
	words := strings.FieldsFunc(strings.ToLower(plainLetters.Replace(name)), func(r rune) bool {
		return r > unicode.MaxASCII || !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	return cmp.Or(strings.Join(words, "-"), "soil")
}

// plainLetters takes the accents off the letters of Spanish.
var plainLetters = strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ü", "u", "ñ", "n",
	"Á", "a", "É", "e", "Í", "i", "Ó", "o", "Ú", "u", "Ü", "u", "Ñ", "n")

// String is the page's folder in the site, with a slash at its end: "es/guides/soil/"; empty for the home page of the
// main language.
func (a Address) String() string {
	var s string
	if a.Language != "" {
		s = a.Language + "/"
	}
	if a.Name != "" {
		s += a.Name + "/"
	}
	return s
}

// File is the page's file in the site: "es/guides/soil/index.html".
func (a Address) File() string {
	if a.Kind == kind.Missing {
		return "404.html" // where most servers look for it
	}
	return a.String() + "index.html"
}

// To is the link from a page to another, always relative, so that the site works in any folder of a server:
// "../water/", "./" for the page itself.
func (a Address) To(to Address) string { return a.ToPath(to.String()) }

// ToPath is the link from a page to a path of the site, a file ("assets/page.css") or a folder with a slash at its
// end; the empty path is the site's root.
func (a Address) ToPath(path string) string {
	from, to := strings.SplitAfter(a.String(), "/"), strings.SplitAfter(path, "/")
	from = from[:len(from)-1] // what follows the last slash is empty
	same := 0
	for same < len(from) && same < len(to)-1 && from[same] == to[same] {
		same++
	}
	link := strings.Repeat("../", len(from)-same) + strings.Join(to[same:], "")
	return cmp.Or(link, "./")
}

// CheckLanguage compares the language of a page's file name and of its metadata with the site's languages, the main
// one first.
func CheckLanguage(src *message.Source, a Address, m Metadata, site []string) message.List {
	fault := func(id, text, note string) message.List {
		return message.List{{ID: id, Source: src, Span: m.Places.Language, Text: text, Note: note}}
	}
	named := cmp.Or(a.Language, site[0])
	switch {
	case a.Language == site[0]:
		return fault("language-name", fmt.Sprintf("%q is the site's main language, and its pages have no code in "+
			"their name", a.Language), fmt.Sprintf("rename the file: take %q out", "."+a.Language))
	case !slices.Contains(site, named):
		return fault("language-unknown", fmt.Sprintf("the site has no language %q", named),
			fmt.Sprintf("list it in the site file: \"language: [%s, %s]\"", strings.Join(site, ", "), named))
	case m.Language != "" && m.Language != named:
		return fault("language-differs", fmt.Sprintf("the page says its language is %q, its file name says %q",
			m.Language, named), fmt.Sprintf("write %q here, or rename the file", named))
	}
	return nil
}
