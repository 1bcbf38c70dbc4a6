package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/site"
)

type pressCommand struct {
	place
	To string `help:"The folder for the site." default:"public" placeholder:"FOLDER"`
}

// Run makes the site. Nothing is written when there is a fault.
func (c *pressCommand) Run(t *terminal) error {
	options, err := c.open()
	if err != nil {
		return err
	}
	if err := apart(c.From, c.To); err != nil {
		return err
	}
	made, messages := site.Make(options)
	if err := t.report(messages); err != nil {
		fmt.Fprintf(t.err, "Nothing was written: %s is as it was.\n", c.To)
		return err
	}
	report, err := output.Write(c.To, made.Files)
	if err != nil {
		return err
	}
	fmt.Fprintf(t.out, "%d %s in %s: %d files written, %d unchanged, %d removed\n",
		made.Pages, plural(made.Pages, "page", "pages"), c.To, report.Written, report.Unchanged, report.Removed)
	return nil
}

// open opens the content folder. Links in it that lead outside are not followed.
func (p place) open() (site.Options, error) {
	root, err := os.OpenRoot(p.From)
	if err != nil {
		return site.Options{}, fmt.Errorf("the content folder %q cannot be opened: %w\n   note: go to the folder of "+
			"your site, or name the folder: --from FOLDER", p.From, plainCause(err))
	}
	return site.Options{Content: root.FS(), Name: filepath.ToSlash(filepath.Clean(p.From))}, nil
}

// plainCause is the reason of a file error without its path, which the message has already.
func plainCause(err error) error {
	if path, ok := err.(*os.PathError); ok {
		return path.Err
	}
	return err
}

// apart sees that the site is not written into the content, nor the content read from the site.
func apart(from, to string) error {
	a, errA := filepath.Abs(from)
	b, errB := filepath.Abs(to)
	if errA != nil || errB != nil {
		return nil
	}
	inside := func(folder, of string) bool {
		way, err := filepath.Rel(of, folder)
		return err == nil && (way == "." || way != ".." && !strings.HasPrefix(way, ".."+string(filepath.Separator)))
	}
	if inside(a, b) || inside(b, a) {
		return errUsage{fmt.Errorf("the folder for the site, %q, and the content folder, %q, lie in each other\n"+
			"   note: name a folder beside it: --to FOLDER", to, from)}
	}
	return nil
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
