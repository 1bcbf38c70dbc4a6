package book

import (
	"fmt"
	"slices"

	"acreleaf/cmd/acreleaf/internal/memo"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// A joined is what Join gives.
type joined struct {
	used  *[]string // the files that a page shows or links to; no other is part of the book
	parts *parts
	book  *Book // without the pages that could not be worked
}

// join checks what one page says of another.
func (p *press) join() {
	before := p.before.joined
	if before == nil {
		before = new(joined)
	}
	p.joined = new(joined)
	all := &parts{tree: p.tree}
	used := map[string]bool{}
	for _, d := range p.walked {
		all.anchors = append(all.anchors, d.anchors())
		if l := d.linked.Kept(); l != nil {
			for _, name := range l.uses {
				used[name] = true
			}
		}
	}
	files := slices.DeleteFunc(slices.Clone(p.listing.files), func(name string) bool { return !used[name] })
	p.used = memo.Same(before.used, &files, func(a, b *[]string) bool { return slices.Equal(*a, *b) })
	p.checkFiles()
	p.parts = memo.Same(before.parts, all, (*parts).same)
	for _, d := range p.pages {
		p.checkAnchors(d, p.parts)
		p.say(d.said())
	}
	p.checkHome()
	p.checkQuestions()
	p.checkLessons()
	p.checkOrders()
	p.book = p.gather()
	p.checkSees()
	p.checkEdition()
	p.proofTogether()
}

// checkHome sees that the site has the page that every other page leads back to.
func (p *press) checkHome() {
	home := p.index[homeFileName]
	switch {
	case len(p.pages) > 0 && home == nil:
		p.say(message.List{{ID: "no-home", Text: "the site has no home page",
			Note: "write " + p.options.called(homeFileName) + ", with a title, a summary and a link to each guide"}})
	case home != nil && home.address.Language != "" && slices.Contains(p.languages, home.address.Language):
		p.say(message.List{home.fault(home.metadata.Places.Language, "home-language", fmt.Sprintf(
			"the home page is in the main language of the site (%s)", p.languages[0]),
			"write it in that language, and put this one into a file of its own, with \"translates: "+homeFileName+"\"")})
	}
}

// checkedFrom is what an edition's check depends on: of the pages, on where they are.
type checkedFrom struct {
	settings *Settings
	tree     *tree
	used     *[]string
}

// checkEdition asks the edition what keeps it from being made.
func (p *press) checkEdition() {
	p.say(*p.whole.checked.Get(checkedFrom{p.Settings, p.tree, p.used}, func() message.List {
		return p.edition().Check(p.book)
	}))
}

// proofTogether checks the pages against each other.
func (p *press) proofTogether() {
	site := p.proofedSite()
	if p.rules.Advice && !message.HasFault(p.messages) { // a page with a fault may hide what it cites
		site.Cited = map[string]bool{}
		for id := range p.book.Cited() {
			site.Cited[id] = true
		}
	}
	var quotes []proof.Quote
	for _, d := range p.pages {
		if proofed := d.proofed.Kept(); proofed != nil {
			quotes = append(quotes, proofed.quotes...)
		}
	}
	p.say(proof.Together(quotes, site, p.rules))
}
