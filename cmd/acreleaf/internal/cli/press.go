package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"syscall"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/folder"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

type pressCommand struct {
	place
	To string `help:"The folder for the site (${default})." default:"public" placeholder:"FOLDER"`
	turn
}

// Run makes the site. Nothing is put in place when there is a fault.
func (c *pressCommand) Run(t *terminal) error {
	defer book.GiveRoom()()
	options, err := c.openApart(c.To, "site")
	if err != nil {
		return err
	}
	var changed []string
	for range attempts {
		if changed, err = c.make(t, options); len(changed) == 0 {
			return err
		}
		fmt.Fprintf(t.err, "%s changed while the site was made from it.\n", path.Join(options.Name, changed[0]))
	}
	return fault{fmt.Sprintf("%s changes again and again, so that no site was made; %s is as it was",
		path.Join(options.Name, changed[0]), c.To), "wait until the other program has written it, then press again"}
}

// attempts are how often a site is made from files that change meanwhile.
const attempts = 3

// make makes the site, unless something of the content changed meanwhile: then it gives the names, and nothing is put
// in place.
func (c *pressCommand) make(t *terminal, options book.Options) (changed []string, err error) {
	content := book.MarkOf(options)
	if report, mark, current := output.Current(c.To, content.Hash); current {
		c.done(t, mark.Pages, report)
		return nil, nil
	}
	to, err := c.begin(t, c.To, aSite)
	if err != nil {
		return nil, err
	}
	list := site.NewList()
	pages, messages := book.Make(content.Options, site.New, list.Through(to.Put))
	if changed := content.Changed(); len(changed) > 0 {
		to.Drop()
		return changed, nil
	}
	for _, f := range list.Files() {
		if to.Put(f) != nil {
			break // Commit says why
		}
	}
	return nil, c.finish(t, to, output.Mark{From: content.Hash, Pages: pages}, messages)
}

// finish puts the files of the site in their places, if no message is a fault.
func (c *pressCommand) finish(t *terminal, to *output.Writer, mark output.Mark, messages message.List) error {
	pages := mark.Pages
	if len(messages) > 0 {
		mark = output.Mark{} // the next press must say them again
	}
	report, err := t.commit(to, c.To, mark, messages)
	if err != nil {
		return err
	}
	c.done(t, pages, report)
	return nil
}

func (c *pressCommand) done(t *terminal, pages int, report output.Report) {
	fmt.Fprintf(t.out, "%d %s in %s: %d files written, %d unchanged, %d removed\n",
		pages, plural(pages, "page", "pages"), c.To, report.Written, report.Unchanged, report.Removed)
}

// open opens the content folder. Links in it that lead outside are not followed.
func (p place) open() (book.Options, error) {
	content, err := folder.Open(p.From)
	if err != nil {
		return book.Options{}, cannotOpen(p.From, err)
	}
	return book.Options{Content: content, Name: filepath.ToSlash(filepath.Clean(p.From))}, nil
}

// openApart opens the content folder for what is made into another one.
func (p place) openApart(to, made string) (book.Options, error) {
	options, err := p.open()
	if err != nil {
		return options, err
	}
	return options, apart(p.From, to, made)
}

func cannotOpen(folder string, err error) error {
	const note = "go to the folder of your site, or name the content folder: --from=FOLDER"
	info, errStat := os.Stat(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fault{fmt.Sprintf("there is no content folder %q here", folder), note}
	case errStat == nil && !info.IsDir():
		return fault{fmt.Sprintf("%q is a file, and the content folder is needed", folder), note}
	case errors.Is(err, fs.ErrPermission):
		return fault{fmt.Sprintf("you may not read the content folder %q", folder), "give yourself the right to read it"}
	case errors.Is(err, syscall.ENAMETOOLONG):
		return fault{fmt.Sprintf("the name of the content folder has %d bytes, more than this computer allows", len(folder)),
			"go to a folder that is nearer to it, and name it from there: --from=FOLDER"}
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err // the message has the path already
	}
	return fault{fmt.Sprintf("the content folder %q cannot be opened: %v", folder, err), note}
}

// apart sees that what is made is not written into the content, nor the content read from it.
func apart(from, to, made string) error {
	a, b := real(from), real(to)
	const note = "name a folder beside the content folder: --to=FOLDER"
	switch {
	case a == b:
		return errUsage{fault{fmt.Sprintf("%q is the content folder, and cannot be the %s too", to, made), note}}
	case inside(b, a):
		return errUsage{fault{fmt.Sprintf("the folder for the %s, %q, lies in the content folder, %q", made, to, from), note}}
	case inside(a, b):
		return errUsage{fault{fmt.Sprintf("the content folder, %q, lies in the folder for the %s, %q", from, made, to), note}}
	}
	return nil
}

// inside says whether a folder lies in another, by their real names.
func inside(folder, of string) bool {
	way, err := filepath.Rel(of, folder)
	return err == nil && filepath.IsLocal(way)
}

// real is the full name of a folder without links. The end of it need not be there yet.
func real(folder string) string {
	full, err := filepath.Abs(folder)
	if err != nil {
		return folder
	}
	if found, err := filepath.EvalSymlinks(full); err == nil {
		return found
	}
	if above := filepath.Dir(full); above != full {
		return filepath.Join(real(above), filepath.Base(full))
	}
	return full
}

// report prints messages, and gives errFaults if one is a fault.
func (t *terminal) report(messages message.List) error {
	if len(messages) > 0 {
		t.printer.Print(t.err, messages)
	}
	if message.HasFault(messages) {
		return errFaults
	}
	return nil
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}
