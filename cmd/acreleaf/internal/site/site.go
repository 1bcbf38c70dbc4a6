// Package site makes a site from a content folder, in phases:
//
//	load    walk the folder in sorted order and read its files
//	read    per page, in parallel: its text and metadata; then the calculations of all pages, and the order of the season
//	work    per page, in parallel: Markdown, worksheets, proof, links; the finished page, which is given away; of what
//	        the page is made from only a few facts stay, for other pages
//	join    serially: anchors, sources, what a proof-reader checks between pages
//	stop    if anything is wrong, with every fault of the press
//	finish  the pages that list others
//
// It owns the order of the phases and what crosses from one page to another. It must not write to the disk: the
// output package does that with the files that Make gives away, and puts none in place before the site is whole.
//
// A Maker makes a site again and again, and keeps what did not change (see kept.go). There is one way to make a site: a
// press from nothing is one with nothing kept.
package site

import (
	"io/fs"
	"runtime"
	"sync"
	"sync/atomic"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/assets"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/proof"
	"acreleaf/cmd/acreleaf/internal/worksheet"
	"acreleaf/theme"
)

// Options say what to make a site from.
type Options struct {
	Content fs.FS  // the content folder
	Name    string // what messages call it: "content"
}

// Make makes a site, and gives each of its files away as soon as it is made, in no certain order and from several
// goroutines at once. It gives how many pages there are that somebody wrote. With a fault among the messages the site
// is not whole, and what was given away is of no use; advice comes with a whole one. It stops when a file is not taken.
func Make(o Options, put func(output.File) error) (pages int, messages message.List) {
	p := newPress(o)
	p.put = put
	p.make()
	return len(p.pages), p.messages
}

// make makes every file, and says whether the site is whole.
func (p *press) make() bool {
	p.prints = true
	p.load()
	p.read()
	p.work()
	p.join()
	if !message.HasFault(p.messages) {
		p.finish()
	}
	message.Sort(p.messages)
	return !message.HasFault(p.messages)
}

// A press is one run of Make.
type press struct {
	options Options
	before  *press          // the run whose work is kept; nil for a press from nothing
	changes Changes         // what may have changed since that one
	changed map[string]bool // the names among the changes
	prints  bool            // the pages are to be made, not only checked

	put     func(output.File) error // takes the finished files; nil where they are made when they are asked for
	stopped atomic.Bool             // what is made now would be thrown away

	listing     *listing
	site        config.Site
	siteFile    *message.Source
	siteSaid    message.List
	languages   []string // of the site; nil while site.yaml cannot tell
	sources     config.Sources
	sourcesFile *message.Source // nil when there is none
	sourcesSaid message.List
	references  map[string]*config.Reference // the sources; one that did not change is the same one as before
	rules       proof.Rules

	catalogue *calc.Catalogue
	own       map[*sheet.Sheet]*worksheet.Definition
	added     []*sheet.Sheet                   // the sheets of the calculations of this site, and
	unmade    []string                         // the names of those that could not be made
	texts     map[string]*worksheet.Definition // the files of calculations, by name

	pages       []*draft          // in the order of the season
	walked      []*draft          // as the folder is walked
	kept        []*draft          // what the run before had in their places
	fresh       []int             // the places where that is not the same
	sameTree    bool              // the files are those of the run before
	sameAnchors bool              // and so are the parts of pages that can be linked to
	index       map[string]*draft // by name
	byAddress   map[page.Address]*draft
	used        map[string]bool // the files that a page shows or links to; no other is published
	places      *places
	messages    message.List

	edition  *edition
	outlines *[]*outline // of all pages, in their order
	common   *common
	copied   map[string][]byte // the used files that were read
	files    []File            // of the finished site
}

func newPress(o Options) *press {
	return &press{options: o, catalogue: calc.Standard(), own: map[*sheet.Sheet]*worksheet.Definition{}}
}

// bundle builds the theme once a process: the theme is part of the program.
var bundle = sync.OnceValues(func() (assets.Bundle, message.List) { return assets.Build(theme.Files) })

// each calls do for 0 to n-1, on every core.
func each(n int, do func(i int)) {
	var next atomic.Int64
	var group sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	group.Wait()
}
