// Package book reads a content folder, and gives its pages to an edition, in phases:
//
//	load    walk the folder in sorted order and read its files
//	read    per page, in parallel: its text and metadata; then the order of the season, and the calculations of all pages
//	work    per page, in parallel: Markdown, worksheets, proof, links; the edition makes the files of the page, which are
//	        given away; of what the page is made from only a few facts stay, for other pages
//	join    serially: anchors, sources, what a proof-reader checks between pages
//	stop    if anything is wrong, with every fault of the press
//	finish  the pages that list others, and the files that the edition makes of no page alone
//
// It owns the order of the phases and what crosses from one page to another. What a link leads to is a Target, and what
// other pages may show of a page an Outline. It must not know in what form the pages come to readers: an Edition makes
// their files. Nor may it write to the disk: the output package does that with the files that Make gives away, and puts
// none in place before the book is whole.
//
// A Maker makes the files again and again. What is worked is kept by what it was worked from (package memo), and what
// is read until its file changes (kept.go). There is one way to make them: a press from nothing is one with nothing
// kept.
package book

import (
	"io/fs"
	"path"
	"runtime"
	"sync"
	"sync/atomic"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// Options say what to make a book from.
type Options struct {
	Content fs.FS  // the content folder
	Name    string // what messages call it: "content"
}

// called is how messages call a file of the content folder.
func (o Options) called(name string) string { return path.Join(o.Name, name) }

// Make makes the files of an edition, and gives each of them away as soon as it is made, in no certain order and from
// several goroutines at once. It gives how many pages there are that somebody wrote. With a fault among the messages
// the edition is not whole, and what was given away is of no use; advice comes with a whole one. It stops when a file
// is not taken.
func Make(o Options, edition New, put func(output.File) error) (pages int, messages message.List) {
	p := newPress(o, edition)
	p.out, p.room = &taker{put: put}, newTextRoom(mostText)
	p.make()
	return len(p.pages), p.messages
}

// make makes every file, and says whether the edition is whole.
func (p *press) make() (made []File, whole bool) {
	p.check()
	if !message.HasFault(p.messages) {
		p.between(func() { made = p.finish() })
	}
	p.between(p.showLines)
	message.Sort(p.messages)
	return made, !message.HasFault(p.messages)
}

// check does all phases but the last. It makes the files of pages if there is somebody to take them.
func (p *press) check() {
	p.between(func() {
		p.loaded = load(p.options, p.before.loaded, p.changes)
		p.library = read(p.loaded, p.before.library, p.changes, p.room)
		p.calculations = define(p.loaded, p.walked, p.before.calculations, p.changes)
		p.say(p.loaded.said)
		p.say(p.library.said)
		p.say(p.calculations.said)
		p.whole.edition.Get(p.Settings, func() Edition { return p.new(p.Settings) })
		p.work()
		p.join()
	})
}

// A press is one run of Make. Each of its parts is what a phase gave.
type press struct {
	options Options
	new     New
	rules   proof.Rules
	changes changes
	before  *press // the run whose work is kept; an empty one for a press from nothing
	out     *taker // nil when the pages are only checked
	room    *textRoom

	*loaded
	*library
	*calculations
	*joined
	whole    *whole
	messages message.List
	half     bool // the program failed between the pages
}

func newPress(o Options, edition New) *press {
	return &press{options: o, new: edition, before: new(press), changes: changes{all: true}, whole: new(whole),
		library: new(library)} // without a page, for one that fails before it reads them
}

func (p *press) say(messages message.List) { p.messages = append(p.messages, messages...) }

func (p *press) edition() Edition { return *p.whole.edition.Kept() }

// language is the language that a page is written in.
func (l *loaded) language(d *draft) string {
	if d.address.Language != "" {
		return d.address.Language
	}
	return l.mainLanguage()
}

// mainLanguage is the first language of the site.
func (l *loaded) mainLanguage() string {
	if len(l.Site.Languages) == 0 { // site.yaml has a fault; the pages are looked through all the same
		return "en"
	}
	return l.Site.Languages[0]
}

// each calls do for 0 to n-1, on every core. What fails in it fails where each was called, when all is done.
func each(n int, do func(i int)) {
	failed := make([]*failure, n)
	var next atomic.Int64
	var group sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				failed[i] = guard(func() { do(i) })
			}
		})
	}
	group.Wait()
	for _, f := range failed {
		if f != nil {
			panic(f)
		}
	}
}
