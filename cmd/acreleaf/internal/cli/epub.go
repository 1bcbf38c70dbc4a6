package cli

import (
	"fmt"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/epub"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

type epubCommand struct {
	Guides []string `arg:"" optional:"" name:"guide" help:"Such as guides/soil.md or courses/young; none for all."`
	To     string   `help:"The folder for these books and no others (${default})." default:"books" placeholder:"FOLDER"`
	place
	turn
}

// Run makes the books. Nothing is put in place when there is a fault.
func (c *epubCommand) Run(t *terminal) error {
	options, err := c.openApart(c.To, books)
	if err != nil {
		return err
	}
	only, err := c.named(options)
	if err != nil {
		return err
	}
	to, err := c.begin(t, c.To, books)
	if err != nil {
		return err
	}
	var count atomic.Int64
	_, messages := book.Make(options, epub.Of(options.Content, only), func(f output.File) error {
		count.Add(1)
		return to.Put(f)
	})
	report, err := t.commit(to, c.To, output.Mark{}, messages)
	if err != nil {
		return err
	}
	n := int(count.Load())
	fmt.Fprintf(t.out, "%d %s in %s: %d files written, %d unchanged, %d removed\n",
		n, plural(n, "book", "books"), c.To, report.Written, report.Unchanged, report.Removed)
	return nil
}

// named gives the files of the pages and the folders of the courses that were typed, with or without the content folder
// in front.
func (c *epubCommand) named(o book.Options) ([]string, error) {
	books, lessons := epub.Books(o.Content), epub.Lessons(o.Content)
	var only []string
	var wrong faults
	for _, typed := range c.Guides {
		name := strings.TrimPrefix(path.Clean(filepath.ToSlash(typed)), o.Name+"/")
		name = strings.TrimSuffix(name, "/"+epub.CourseFile)
		if !slices.Contains(books, name) && path.Ext(name) != ".md" {
			name += ".md"
		}
		if !slices.Contains(books, name) && !slices.Contains(lessons, name) {
			note := "books are made of the pages in guides and workshops, and of the folders in courses"
			if near, ok := message.Nearest(name, books); ok {
				note = "write " + near
			}
			wrong = append(wrong, fault{fmt.Sprintf("there is no page or course %q to make a book of", typed), note})
		}
		only = append(only, name)
	}
	if wrong != nil {
		return nil, errUsage{wrong}
	}
	return only, nil
}
