package page

import (
	"cmp"
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
)

// folderNames are the folders of the pages that somebody writes, in the order to show them.
var folderNames = kind.Folders(func(r kind.Row) bool { return r.Written })

// Address says where a page is in the site. It is comparable; every file name has one address of its own.
type Address struct {
	Kind     kind.Kind
	Language string // the code of the page's language; empty for the site's main language
	Name     string // "guides/soil"; empty for a home page
}

// AddressError says why a file name gives no address.
type AddressError struct{ Text, Note string }

func (e *AddressError) Error() string { return e.Text + ": " + e.Note }

const (
	contentFolder = "content/"
	extension     = ".md"
	homeName      = "home"
	blockName     = "block"  // of the page about one block
	courseName    = "course" // of the page that says what a course is about
	leaderName    = "leader" // of the page that a press makes for who leads another
)

var nameElement = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// AddressOf gives the address of a page from its slash path, with or without the content folder in front, and from what
// its metadata says of its language. Main is the main language of the site. The error is an *AddressError.
func AddressOf(name string, m Metadata, main string) (Address, error) {
	inside := strings.TrimPrefix(name, contentFolder)
	stem, ok := strings.CutSuffix(inside, extension)
	if !ok {
		return Address{}, &AddressError{fmt.Sprintf("%q is not the name of a page", name), `end it with ".md"`}
	}
	if plain, code, dotted := strings.Cut(stem, "."); dotted {
		return Address{}, dotInName(name, plain, code, main)
	}
	language := m.Language
	if language == main {
		language = ""
	}
	if stem == homeName || m.Translates.Text == homeName+extension && !strings.Contains(stem, "/") {
		return Address{Kind: kind.Home, Language: language}, nil
	}
	elements := strings.Split(stem, "/")
	ofBlock := stem == blockName || m.Translates.Text == blockName+extension
	if ofBlock && nameElement.MatchString(stem) {
		return Address{Kind: kind.Block, Language: language, Name: stem}, nil
	}
	for _, e := range elements {
		if !nameElement.MatchString(e) {
			return Address{}, &AddressError{fmt.Sprintf("the name %q cannot be part of an address", e),
				fmt.Sprintf("use small letters, digits and single hyphens: %q", suggest(e))}
		}
	}
	of, ok := kind.Of(elements[0])
	switch {
	case !ok || len(elements) == 1:
		return Address{}, &AddressError{fmt.Sprintf("%q is not in a folder for pages", name), wrongFolder(elements)}
	case elements[len(elements)-1] == "index":
		return Address{}, &AddressError{`a page cannot be named "index"`, "name it after what it is about"}
	case of.Row().Led && len(elements) > 2 && path.Base(stem) == leaderName:
		return Address{}, &AddressError{fmt.Sprintf("a page cannot be named %q here: the notes for who leads %s are there",
			leaderName, path.Dir(stem)+extension), "name it after what it is about"}
	case of == kind.Lesson && len(elements) == 2:
		return Address{}, &AddressError{fmt.Sprintf("%q is not in a course", name),
			fmt.Sprintf("make a folder for its course, and move it there: courses/young-trees/%s", path.Base(name))}
	case of == kind.Lesson && (path.Base(stem) == courseName || m.Translates.Text == courseName+extension):
		return Address{Kind: kind.Course, Language: language, Name: path.Dir(stem)}, nil
	}
	return Address{Kind: of, Language: language, Name: stem}, nil
}

// dotInName says what to do about a dot: a name such as "soil.es.md" once said the language of a page.
func dotInName(name, plain, code, main string) error {
	text := fmt.Sprintf("%q has the code of a language in its name", name)
	switch {
	case !config.IsLanguage(code):
		return &AddressError{fmt.Sprintf("%q has a dot in its name", name), "use a hyphen in place of the dot"}
	case code == main:
		return &AddressError{text, fmt.Sprintf("take %q out", "."+code)}
	}
	return &AddressError{text, fmt.Sprintf(`give the file a name in its own language, as "suelo.md" is for "soil.md", `+
		"and say in its metadata:\nlanguage: %s\ntranslates: %s", code, path.Base(plain)+extension)}
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
	words := strings.FieldsFunc(strings.ToLower(plainLetters.Replace(norm.NFC.String(name))), func(r rune) bool {
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

// Course is the folder of the course that a page belongs to; "" for one that belongs to none.
func (a Address) Course() string {
	switch a.Kind {
	case kind.Course:
		return a.Name
	case kind.Lesson:
		return path.Dir(a.Name)
	}
	return ""
}

// Leader is the address of the notes for who leads a page: "workshops/report/leader/".
func (a Address) Leader() Address {
	return Address{Kind: kind.Leader, Language: a.Language, Name: a.Name + "/" + leaderName}
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
func (a Address) ToPath(to string) string {
	from, parts := strings.SplitAfter(a.String(), "/"), strings.SplitAfter(to, "/")
	from = from[:len(from)-1] // what follows the last slash is empty
	same := 0
	for same < len(from) && same < len(parts)-1 && from[same] == parts[same] {
		same++
	}
	link := strings.Repeat("../", len(from)-same) + strings.Join(parts[same:], "")
	return cmp.Or(link, "./")
}

// CheckLanguage compares the language of a page with those of the site, the main one first.
func CheckLanguage(src *message.Source, m Metadata, site []string) message.List {
	if m.Language == "" || slices.Contains(site, m.Language) {
		return nil
	}
	return message.List{{ID: "language-unknown", Source: src, Span: m.Places.Language,
		Text: fmt.Sprintf("the site has no language %q", m.Language),
		Note: fmt.Sprintf("list it in the site file: \"language: [%s, %s]\"", strings.Join(site, ", "), m.Language)}}
}

// Original is the slash path of the page that a page translates, which is in the same folder; "" for a page of its own.
func Original(name string, m Metadata) string {
	if m.Translates.Text == "" {
		return ""
	}
	return path.Join(path.Dir(name), m.Translates.Text)
}
