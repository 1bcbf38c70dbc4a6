// Package site makes a site from a content folder, in phases:
//
//	load    walk the folder in sorted order and read its files
//	read    per page, in parallel: metadata; the calculations of all pages; per page: Markdown, worksheets, proof, links,
//	        and the text in HTML
//	join    serially: anchors, sources, the order of the season, what a proof-reader checks between pages
//	stop    if anything is wrong, with every fault of the press
//	make    per page, in parallel: compile the module, fill the views, set the page in memory
//
// It owns the order of the phases and what crosses from one page to another. It must not write to the disk: the
// output package does that with what Make gives, so that a site is whole before anything is touched.
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
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
	"acreleaf/theme"
)

// Options say what to make a site from.
type Options struct {
	Content fs.FS  // the content folder
	Name    string // what messages call it: "content"
}

// Made is a finished site, in memory.
type Made struct {
	Files []output.File
	Pages int // how many of the files are pages that somebody wrote
}

// Make makes a site. With a fault among the messages there is no site; advice comes with a whole one.
func Make(o Options) (*Made, message.List) {
	return newPress(o).make()
}

func (p *press) make() (*Made, message.List) {
	p.prints = true
	p.load()
	p.read()
	p.join()
	var made *Made
	if !message.HasFault(p.messages) {
		made = p.render()
	}
	message.Sort(p.messages)
	if message.HasFault(p.messages) {
		return nil, p.messages
	}
	return made, p.messages
}

// A press is one run of Make.
type press struct {
	options Options
	before  *press          // the run whose work is kept; nil for a press from nothing
	changes Changes         // what may have changed since that one
	changed map[string]bool // the names among the changes
	prints  bool            // the pages are to be made, not only checked

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

	pages       []*draft          // as the folder is walked, and after join in the order of the season
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

	bundle    assets.Bundle
	renderers map[string]*render.Renderer // by language
	outlines  *[]*outline
	common    *common
	copied    map[string][]byte   // the used files that were read
	cited     map[string][]*draft // by source
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
