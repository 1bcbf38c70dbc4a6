package cli

import (
	"cmp"
	"fmt"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/chromium"
	"acreleaf/cmd/acreleaf/internal/edition/handout"
	"acreleaf/cmd/acreleaf/internal/output"
)

type handoutCommand struct {
	Page  string    `arg:"" optional:"" help:"A workshop, such as report, or a lesson, such as courses/feeding/soil."`
	Cards cardRange `help:"The cards to print, as 1-40 or 7; without it, all that an exercise has." placeholder:"RANGE"`
	Side  int       `help:"Cards on a side: 2, or 4 of short ones (${default})." enum:"2,4" default:"4" placeholder:"N"`
	Paper string    `help:"The paper: letter or a4 (${default})." enum:"letter,a4" default:"letter" placeholder:"SIZE"`
	place
	To string `help:"The folder for the handout (handout/PAGE)." placeholder:"FOLDER"`
	turn
}

// A cardRange is the first and the last card of those that are asked for; the zero one is all.
type cardRange struct{ first, last int }

var cardRangeText = regexp.MustCompile(`^([0-9]{1,6})(?:-([0-9]{1,6}))?$`)

// UnmarshalText reads a range that was typed.
func (c *cardRange) UnmarshalText(text []byte) error {
	found := cardRangeText.FindStringSubmatch(string(text))
	if found != nil {
		c.first, _ = strconv.Atoi(found[1]) // six digits at most
		c.last, _ = strconv.Atoi(cmp.Or(found[2], found[1]))
	}
	note := "write the first and the last card, as in --cards=1-40, or one alone: --cards=7"
	switch {
	case found == nil:
		return fault{fmt.Sprintf("--cards: a range of cards is needed here, and this is %q", text), note}
	case c.first == 0:
		return fault{fmt.Sprintf("--cards: cards are numbered from 1 on, and this is %q", text), note}
	case c.last < c.first:
		return fault{fmt.Sprintf("--cards: %q ends before it begins", text), note}
	}
	return nil
}

// papers are the sizes of paper with their names.
var papers = map[string]struct {
	name string
	handout.Paper
}{"letter": {"Letter", handout.Letter}, "a4": {"A4", handout.A4}}

// Run makes the handout of a page. Nothing is put in place when there is a fault.
func (c *handoutCommand) Run(t *terminal) error {
	if c.Page == "" {
		return errUsage{fault{"no page was named",
			"type the name of a workshop or a lesson, as in: acreleaf handout report"}}
	}
	page := handout.PageOf(c.Page)
	if c.To == "" {
		c.To = path.Join("handout", strings.TrimSuffix(path.Base(page), path.Ext(page)))
	}
	options, err := c.openApart(c.To, "handout")
	if err != nil {
		return err
	}
	pages, err := c.pages(t, options, page)
	if err != nil {
		return err
	}
	to, err := c.begin(t, c.To, aHandout)
	if err != nil {
		return err
	}
	files, told := c.printed(pages)
	for _, f := range files {
		if err := to.Put(f); err != nil {
			break // Commit gives the error
		}
	}
	if _, err := to.Commit(output.Mark{}); err != nil {
		return err
	}
	for _, f := range files {
		fmt.Fprintln(t.out, path.Join(filepath.ToSlash(c.To), f.Path))
	}
	fmt.Fprint(t.out, told)
	return nil
}

// pages makes the pages of the handout, in order.
func (c *handoutCommand) pages(t *terminal, options book.Options, page string) ([]output.File, error) {
	edition := handout.New(handout.Options{Page: page, First: c.Cards.first, Last: c.Cards.last, PerSide: c.Side,
		Paper: papers[c.Paper].Paper})
	var pages []output.File
	var mutex sync.Mutex
	_, messages := book.Make(options, edition, func(f output.File) error {
		mutex.Lock()
		defer mutex.Unlock()
		pages = append(pages, f)
		return nil
	})
	if err := t.report(messages); err != nil {
		fmt.Fprintln(t.err, "Nothing was written.")
		return nil, err
	}
	slices.SortFunc(pages, func(a, b output.File) int { return cmp.Compare(a.Path, b.Path) })
	return pages, nil
}

// printed adds a PDF to each page where that can be made, and says what to do next.
func (c *handoutCommand) printed(pages []output.File) (files []output.File, told string) {
	const byHand = "To print, open each page in a browser and print it on %s paper at full size, without the browser's " +
		"own header and footer.\n"
	paper := papers[c.Paper].name
	browser := chromium.Find()
	if browser == "" {
		return pages, "No PDF was made, because there is no Chromium here.\n" + fmt.Sprintf(byHand, paper)
	}
	for _, page := range pages {
		pdf, err := chromium.PDF(browser, page.Bytes)
		if err != nil {
			return pages, fmt.Sprintf("No PDF was made: %s, %v.\n"+byHand, browser, err, paper)
		}
		name := strings.TrimSuffix(page.Path, path.Ext(page.Path)) + ".pdf"
		files = append(files, page, output.File{Path: name, Bytes: pdf})
	}
	return files, fmt.Sprintf("Print the PDF files on %s paper at full size.\n", paper)
}
