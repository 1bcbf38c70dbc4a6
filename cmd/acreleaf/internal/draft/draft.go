// Package draft starts what an author writes: a page from a pattern, the twin of a page in another language, and a
// small site.
//
// It owns the patterns and what is in a new page before its author has written a word. A small site gets the shapes
// of package schema, too. It must never write over a file, and it does not judge pages: what is still to be written
// says so in words that proof knows.
package draft

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"time"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
)

// A Request is for one page.
type Request struct {
	Content fs.FS  // the content folder
	Folder  string // what the user calls it: "content"
	Page    string // as it was typed: "guides/frost.md"
	Today   time.Time

	Language   string         // of the page; "" for the main language of the site, or for a translation the only other one
	Translates string         // the page that it translates, as it was typed; "" for a page of its own
	With       []*sheet.Sheet // the calculations that the page begins with
}

// A File is a page that is not written yet.
type File struct {
	Name     string // slash path in the content folder
	Original string // the page that it is the twin of; "" for a page of its own
	Mark     string // what begins each text that is to be written
	Text     []byte // with the line ends of Unix, on every system
}

// An Error says why there is no page, and what to type.
type Error struct{ Text, Note string }

func (e *Error) Error() string { return e.Text + "; " + e.Note }

// The files of a content folder that are read here.
const siteFile = "site.yaml"

// A drafter makes one page.
type drafter struct {
	Request
	site    config.Site
	name    string // slash path in the content folder
	address page.Address
	code    string // the language of the page
}

// Page makes the text of a page. The error is an *Error.
func Page(r Request) (File, error) {
	d := &drafter{Request: r}
	if err := d.place(); err != nil {
		return File{}, err
	}
	f := File{Name: d.name, Mark: page.MarksOf(d.code).Write}
	var text string
	var err error
	if d.Translates != "" {
		f.Original = d.original()
		text, err = d.twin()
	} else {
		text, err = d.fill()
	}
	f.Text = []byte(text)
	return f, err
}

// place finds where the page stands, and sees that it may be there.
func (d *drafter) place() error {
	d.site, _, _ = config.Load(d.Content, siteFile) // what is wrong in it, a proof tells
	d.name = d.inside(d.Page)
	if err := d.speak(); err != nil {
		return err
	}
	var with []*sheet.Sheet // with the labels of the page's language
	for _, s := range d.With {
		with = append(with, s.In(d.code))
	}
	d.With = with
	m := page.Metadata{Language: d.code}
	if d.Translates != "" {
		m.Translates.Text = path.Base(d.original())
	}
	address, err := page.AddressOf(d.name, m, d.site.Languages[0])
	if err != nil {
		return d.misplaced(err)
	}
	d.address = address
	if said := output.Check([]string{address.File()}); len(said) > 0 {
		return &Error{Text: said[0].Text, Note: "choose another name"}
	}
	if _, err := fs.Stat(d.Content, d.name); err == nil {
		return Taken(d.called(d.name))
	}
	if d.Translates != "" {
		return d.placeTwin()
	}
	return nil
}

// speak finds the language of the page.
func (d *drafter) speak() error {
	languages := d.site.Languages
	d.code = d.Language
	if d.code == "" {
		d.code = languages[0]
		if d.Translates != "" && len(languages) == 2 {
			d.code = languages[1]
		}
	}
	if said := page.CheckLanguage(nil, page.Metadata{Language: d.code}, languages); len(said) > 0 {
		return &Error{Text: said[0].Text, Note: strings.ReplaceAll(said[0].Note, "the site file", d.called(siteFile))}
	}
	if d.Translates == "" || d.code != languages[0] {
		return nil
	}
	if len(languages) == 1 {
		return &Error{Text: "a translation needs a second language, and the site has one",
			Note: fmt.Sprintf("list both in %s, the main one first: \"language: [%s, es]\"", d.called(siteFile), languages[0])}
	}
	return &Error{Text: fmt.Sprintf("a page in the site's main language (%s) is not a translation", languages[0]),
		Note: "name the language of the new page, as in --language=" + languages[1]}
}

// Taken is the error for a page that is there already.
func Taken(name string) error {
	return &Error{Text: name + " is there already, and stays as it is",
		Note: "open it in your editor, or choose another name"}
}

// called is a file of the content folder as the user would type it.
func (d *drafter) called(name string) string { return path.Join(d.Folder, name) }

// inside is what was typed as a slash path in the content folder. People type the way from where they are, too, and on
// Windows with its own slashes.
func (d *drafter) inside(typed string) string {
	name := path.Clean(strings.ReplaceAll(typed, `\`, "/"))
	return strings.TrimPrefix(name, path.Clean(d.Folder)+"/")
}

// folders are those that a page can be drafted into.
var folders = kind.Folders(func(r kind.Row) bool { return r.Pattern != "" })

// misplaced words why a name is no place for a page.
func (d *drafter) misplaced(err error) error {
	elements := strings.Split(d.name, "/")
	switch first := elements[0]; {
	case first == ".." || first == "" || strings.HasSuffix(first, ":"):
		return &Error{Text: fmt.Sprintf("%q is not in the content folder, %s", d.name, d.Folder),
			Note: "write the way from there, such as guides/frost.md"}
	case path.Ext(stem(d.name)) != "" && config.IsLanguage(path.Ext(stem(d.name))[1:]):
		code := path.Ext(stem(d.name))
		return &Error{Text: fmt.Sprintf("%q has the code of a language in its name", d.name),
			Note: fmt.Sprintf("name the page in its own language, and what it translates: acreleaf draft %s --translates=%s "+
				"--language=%s", path.Join(path.Dir(d.name), "NAME.md"), stem(stem(d.name))+".md", code[1:])}
	case first == kind.Calculation.Row().Folder:
		return &Error{Text: "there is no pattern for a calculation",
			Note: "write the file by hand, as the manual shows under calculations of your own; " +
				"draft a page for its worksheet: guides/" + stem(d.name) + ".md"}
	case len(elements) == 1 && strings.HasSuffix(d.name, ".md"):
		return &Error{Text: fmt.Sprintf("%q names no folder, and the folder says what the page is", d.name),
			Note: eachKind(d.name)}
	case len(elements) > 1 && !isWritten(first):
		note := eachKind(stem(d.name) + ".md")
		if near, ok := message.Nearest(first, folders); ok {
			note = "write " + path.Join(near, path.Join(elements[1:]...))
		}
		return &Error{Text: fmt.Sprintf("%q is not a folder for pages", first), Note: note}
	}
	var named *page.AddressError
	if errors.As(err, &named) {
		return &Error{Text: named.Text, Note: named.Note}
	}
	return err
}

// isWritten says whether somebody writes the pages of a folder.
func isWritten(folder string) bool {
	_, written := kind.Of(folder)
	return written
}

// noHome is the error for the home page, of which a site has one.
func noHome(name string) error {
	return &Error{Text: "there is no pattern for the home page", Note: "write " + name +
		" in your editor, and begin it so:\n---\ntitle: Guides for our orchards\nsummary: What a reader finds here.\n---"}
}

// noCourse is the error for the page of a course, which is made from its lessons.
func noCourse(name string) error {
	return &Error{Text: "there is no pattern for the page of a course, which is made from its lessons",
		Note: "draft a lesson, such as " + path.Join(path.Dir(name), "soil.md") + "; for a text of your own, write " + name +
			" in your editor, and begin it so:\n---\ntitle: Feeding young trees\nsummary: What a learner can do at the end.\n" +
			"language: en\n---"}
}

// stem is the name of a file without its folders and its ending.
func stem(name string) string { return strings.TrimSuffix(path.Base(name), path.Ext(name)) }

// eachKind is a note that says what can be drafted.
func eachKind(name string) string {
	return fmt.Sprintf("write guides/%[1]s for a guide, workshops/%[1]s for a workshop, or courses/young-trees/%[1]s "+
		"for a lesson", name)
}
