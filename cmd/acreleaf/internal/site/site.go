// Package site makes a site from a content folder, in phases:
//
//	load    walk the folder in sorted order and read its files
//	read    per page, in parallel: metadata and Markdown; the calculations of all pages; per page: worksheets
//	join    serially: addresses, links, anchors, sources, the order of the season
//	proof   per page, in parallel, and then together: what a proof-reader would check
//	stop    if anything is wrong, with every fault of the press
//	make    per page, in parallel: compile the module, fill the views, render into memory
//
// It owns the order of the phases and what crosses from one page to another. It must not write to the disk: the
// output package does that with what Make gives, so that a site is whole before anything is touched.
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
	p := newPress(o)
	p.load()
	p.read()
	p.join()
	if message.HasFault(p.messages) {
		message.Sort(p.messages)
		return nil, p.messages
	}
	made := p.render()
	message.Sort(p.messages)
	if message.HasFault(p.messages) {
		return nil, p.messages
	}
	return made, p.messages
}

// A press is one run of Make.
type press struct {
	options     Options
	catalogue   *calc.Catalogue
	site        config.Site
	siteFile    *message.Source
	sourcesFile *message.Source // nil when there is none
	sources     config.Sources
	rules       proof.Rules
	own         map[*sheet.Sheet]*worksheet.Definition
	pages       []*draft

	calculations []string        // the files that hold one, in sorted order
	files        []string        // of the content folder, that are neither pages nor our own YAML
	used         map[string]bool // those of them that a page shows or links to; no other is published
	messages     message.List

	bundle    assets.Bundle
	renderers map[string]*render.Renderer // by language
	cited     map[string][]*draft         // by source
	byAddress map[page.Address]*draft
	works     sync.Map // of the source's id by what a calculation calls it; workOf fills it
}

func newPress(o Options) *press {
	return &press{options: o, catalogue: calc.Standard(), own: map[*sheet.Sheet]*worksheet.Definition{},
		used: map[string]bool{}, cited: map[string][]*draft{}}
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
