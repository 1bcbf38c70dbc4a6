package book

import (
	"fmt"
	"maps"
	"slices"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// A joined is what Join gives.
type joined struct {
	used        map[string]bool // the files that a page shows or links to; no other is part of the book
	sameAnchors bool            // the parts of pages that can be linked to are those of the run before
	checked     *checked
	now         *Book // without the pages that could not be worked
}

// A checked is what the edition said of the whole book, and all that this depends on.
type checked struct {
	settings *Settings
	listing  *listing
	used     map[string]bool
	said     message.List
}

// join checks what one page says of another.
func (p *press) join() {
	p.used = map[string]bool{}
	p.sameAnchors = p.sameTree && !slices.ContainsFunc(p.fresh, func(i int) bool {
		return !slices.Equal(p.kept[i].anchors(), p.walked[i].anchors())
	})
	for _, d := range p.pages {
		if d.linked != nil {
			for _, name := range d.linked.uses {
				p.used[name] = true
			}
		}
		p.checkAnchors(d)
		p.say(d.said.all())
	}
	p.checkHome()
	p.checkQuestions()
	p.now = p.gather()
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

// checkEdition asks the edition what keeps it from being made. It knows of the pages where they are, and no more.
func (p *press) checkEdition() {
	now := &checked{settings: p.Settings, listing: p.listing, used: p.used}
	if before := p.before.joined; before != nil && p.sameTree && now.same(before.checked) {
		now = before.checked
	} else if failed := guard(&message.Source{Name: p.options.Name}, func() {
		now.said = p.edition.Check(p.now)
	}); failed != nil {
		now = &checked{said: failed}
	}
	p.checked = now
	p.say(now.said)
}

func (c *checked) same(o *checked) bool {
	return o != nil && c.settings == o.settings && c.listing == o.listing && maps.Equal(c.used, o.used)
}

// proofTogether checks the pages against each other.
func (p *press) proofTogether() {
	site := p.proofedSite()
	if p.rules.Advice && !message.HasFault(p.messages) { // a page with a fault may hide what it cites
		site.Cited = map[string]bool{}
		for id := range p.now.Cited() {
			site.Cited[id] = true
		}
	}
	var quotes []proof.Quote
	for _, d := range p.pages {
		if d.proofed != nil {
			quotes = append(quotes, d.proofed.quotes...)
		}
	}
	p.say(proof.Together(quotes, site, p.rules))
}
