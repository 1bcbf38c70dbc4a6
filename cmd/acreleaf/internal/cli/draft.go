package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"time"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/draft"
	"acreleaf/cmd/acreleaf/internal/message"
)

type draftCommand struct {
	Page       string   `arg:"" optional:"" help:"A page in guides, workshops or courses, such as guides/frost.md."`
	Translates string   `help:"Begin the page as the translation of this one, in the same folder." placeholder:"PAGE"`
	Language   string   `help:"The language of the page, as es; without it the site's main language." placeholder:"CODE"`
	With       []string `help:"Begin the page with these calculations, such as soil-nitrogen." placeholder:"NAME"`
	Site       string   `help:"Make a small working site in a new or empty folder, and no page." placeholder:"FOLDER"`
	Today      day      `help:"The day of the review, as 2026-11-02 (today, by this computer's clock)." placeholder:"DATE"`
	place
}

// Run starts a page, or a site.
func (c *draftCommand) Run(t *terminal) error {
	today := c.Today.Time
	if today.IsZero() {
		today = localDay(time.Now())
	}
	switch {
	case c.Site != "" && (c.Page != "" || c.Translates != "" || c.Language != "" || len(c.With) > 0):
		return errUsage{fault{"--site makes a whole site, and begins no page",
			"make the site first, then draft the page in its folder"}}
	case c.Site != "":
		return c.newSite(t, today)
	case c.Page == "":
		return errUsage{fault{"no page was named",
			"type its folder and name, as in: acreleaf draft guides/frost.md"}}
	}
	return c.newPage(t, today)
}

func (c *draftCommand) newPage(t *terminal, today time.Time) error {
	options, err := c.open()
	if err != nil {
		if _, missing := os.Stat(c.From); errors.Is(missing, fs.ErrNotExist) {
			return fault{fmt.Sprintf("there is no content folder %q here", c.From), "go to the folder of your site, name " +
				"the content folder with --from=FOLDER, or start a site: acreleaf draft --site here"}
		}
		return err
	}
	with, err := c.calculations(t, options)
	if err != nil {
		return err
	}
	file, err := draft.Page(draft.Request{
		Content: options.Content, Folder: options.Name, Page: c.Page, Today: today, With: with,
		Language: c.Language, Translates: c.Translates,
	})
	if err != nil {
		return refused(err)
	}
	root, err := os.OpenRoot(c.From)
	if err != nil {
		return cannotOpen(c.From, err)
	}
	defer func() { _ = root.Close() }() // what was written into it is closed
	if err := draft.Write(root, options.Name, file); err != nil {
		return refused(err)
	}
	c.tell(t, options.Name, file)
	return nil
}

// tell says what was written and what to do next.
func (c *draftCommand) tell(t *terminal, folder string, file draft.File) {
	fmt.Fprintln(t.out, path.Join(folder, file.Name))
	if file.Original != "" {
		fmt.Fprintf(t.out, "It has the text of %s. Write the translation over each part.\n", path.Join(folder, file.Original))
	} else {
		fmt.Fprintf(t.out, "Write over each text that begins with %s.\n", file.Mark)
	}
	fmt.Fprintln(t.out, "To see the page as you save it: acreleaf desk")
	fmt.Fprintln(t.out, "To see what is left to do: acreleaf proof")
}

// calculations are those that the page begins with, the site's own among them.
func (c *draftCommand) calculations(t *terminal, options book.Options) ([]*sheet.Sheet, error) {
	if len(c.With) == 0 {
		return nil, nil
	}
	catalogue, messages := book.Catalogue(options)
	var with []*sheet.Sheet
	var wrong faults
	for i, name := range c.With {
		s := catalogue.Find(name)
		switch {
		case slices.Contains(c.With[:i], name):
			wrong = append(wrong, fault{fmt.Sprintf("--with names %s twice", name), "leave one out"})
		case s != nil:
			with = append(with, s)
		case catalogue.Faulty(name):
			t.printer.Print(t.err, messages)
			wrong = append(wrong, fault{fmt.Sprintf("the calculation %q has an error, and cannot be worked", name),
				"correct it first, as the messages above say"})
		default:
			wrong = append(wrong, fault{fmt.Sprintf("there is no calculation %q", name), meantCalculation(name, catalogue)})
		}
	}
	if wrong != nil {
		return nil, wrong
	}
	return with, nil
}

func meantCalculation(name string, catalogue *calc.Catalogue) string {
	if near, ok := message.Nearest(name, catalogue.Names()); ok {
		return "write --with=" + near
	}
	return `type "acreleaf reckon" to list them`
}

func (c *draftCommand) newSite(t *terminal, today time.Time) error {
	names, err := draft.Site(c.Site, today)
	if err != nil {
		return refused(err)
	}
	folder := filepath.Clean(c.Site)
	for _, name := range names {
		fmt.Fprintln(t.out, path.Join(filepath.ToSlash(folder), name))
	}
	fmt.Fprintln(t.out, "This is a small site with made-up numbers. To see it, type:")
	if folder != "." {
		fmt.Fprintf(t.out, "  cd %s\n", folder)
	}
	fmt.Fprintln(t.out, "  acreleaf desk")
	return nil
}

// refused is an error of the package draft in the form of the command line.
func refused(err error) error {
	var refusal *draft.Error
	if errors.As(err, &refusal) {
		return fault{refusal.Text, refusal.Note}
	}
	return err
}
