package site

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/theme"
)

// join checks what one page says of another.
func (p *press) join() {
	p.used = map[string]bool{}
	p.sameAnchors = p.sameTree && !slices.ContainsFunc(p.fresh, func(i int) bool {
		return !slices.Equal(p.kept[i].anchors, p.walked[i].anchors)
	})
	for _, d := range p.pages {
		for _, name := range d.uses {
			p.used[name] = true
		}
		p.checkAnchors(d)
		p.say(d.said.all())
	}
	p.checkLanguages()
	p.checkHome()
	p.checkQuestions()
	p.checkPlaces()
	p.proofTogether()
}

var languageLine = regexp.MustCompile(`(?m)^language:.*$`)

// checkLanguages sees that there are interface words for every language of the site.
func (p *press) checkLanguages() {
	known := languagesOfTheme()
	for _, language := range p.site.Languages {
		if slices.Contains(known, language) {
			continue
		}
		span := message.Span{}
		if found := languageLine.FindIndex(p.siteFile.Text); found != nil {
			span = message.Span{Start: found[0], End: found[1]}
		}
		p.say(message.List{{ID: "language-words", Source: p.siteFile, Span: span,
			Text: fmt.Sprintf("there are no interface words for the language %q", language),
			Note: "take it out; there are words for: " + strings.Join(known, ", ")}})
	}
}

// languagesOfTheme lists the languages that the theme has interface words for.
func languagesOfTheme() []string {
	names, err := fs.Glob(theme.Files, "words/*.yaml")
	if err != nil {
		panic(err) // the pattern is wrong
	}
	for i, name := range names {
		names[i] = strings.TrimSuffix(path.Base(name), ".yaml")
	}
	return names
}

// checkHome sees that the site has the page that every other page leads back to.
func (p *press) checkHome() {
	home := p.index[homeFileName]
	switch {
	case len(p.pages) > 0 && home == nil:
		p.say(message.List{{ID: "no-home", Text: "the site has no home page", Note: "write " + p.called(homeFileName) +
			", with a title, a summary and a link to each guide"}})
	case home != nil && home.address.Language != "" && slices.Contains(p.languages, home.address.Language):
		p.say(message.List{home.fault(home.metadata.Places.Language, "home-language", fmt.Sprintf(
			"the home page is in the main language of the site (%s)", p.languages[0]),
			"write it in that language, and put this one into a file of its own, with \"translates: "+homeFileName+"\"")})
	}
}

// A places is where the files of a site stand: all that checkPlaces looks at, and what it says.
type places struct {
	listing      *listing
	used         map[string]bool
	languages    []string
	bibliography bool
	said         message.List
}

// checkPlaces reports files of the content folder that would be where a page stands, and names that are not the
// same on every disk. It looks at every name of the site but those of the theme, which are ours.
func (p *press) checkPlaces() {
	now := &places{p.listing, p.used, p.site.Languages, p.sources.AnyListed(), nil}
	if before := p.before; before != nil && now.same(before.places) && p.sameTree {
		p.places = before.places
	} else {
		now.said = p.findPlaces()
		p.places = now
	}
	p.say(p.places.said)
}

func (a *places) same(b *places) bool {
	return a.listing == b.listing && maps.Equal(a.used, b.used) && slices.Equal(a.languages, b.languages) &&
		a.bibliography == b.bibliography
}

func (p *press) findPlaces() message.List {
	pages := map[string]string{missing.File(): "the page for a wrong address"}
	var addresses []page.Address
	for _, d := range p.pages {
		if d.address != (page.Address{}) && !d.faulty {
			pages[d.address.File()] = d.source.Name
			addresses = append(addresses, d.address)
		}
	}
	for i, language := range p.site.Languages {
		if i == 0 {
			language = ""
		}
		if p.sources.AnyListed() {
			pages[sourcesAddress(language).File()] = "the page of the sources"
		}
		lists := []page.Address{homeOf(page.Address{Language: language}),
			indexAddress(language, kind.Calculation.Row().Folder)}
		for _, i := range indexes(addresses, language) {
			lists = append(lists, i.address)
		}
		for _, list := range lists {
			if _, written := pages[list.File()]; !written {
				pages[list.File()] = "a list of pages"
			}
		}
	}
	planned := slices.Sorted(maps.Keys(pages))
	var said message.List
	for _, name := range p.usedFiles() {
		if other, taken := pages[name]; taken {
			said = append(said, message.Message{ID: "place-taken", Source: &message.Source{Name: p.called(name)},
				Text: "in the site this file would take the place of " + other, Note: "rename one of the two"})
			continue
		}
		planned = append(planned, name)
	}
	return append(said, output.Check(planned)...)
}

// fault is something that is wrong in a page.
func (d *draft) fault(span message.Span, id, text, note string) message.Message {
	return message.Message{Level: message.Fault, ID: id, Source: d.source, Span: span, Text: text, Note: note}
}

// checkSources sees that every sourced figure has an entry in the bibliography.
func (p *press) checkSources(d *draft) message.List {
	var said message.List
	unread := !p.sources.AnyListed() && message.HasFault(p.sourcesSaid) // whatever is cited may be there
	for _, f := range d.doc.Figures {
		if f.Scheme != construct.Sourced || f.Target == "" || unread {
			continue
		}
		if _, ok := p.sources[f.Target]; !ok {
			said = append(said, d.fault(f.TargetSpan, "source-unknown",
				fmt.Sprintf("there is no source %q in %s", f.Target, p.called(sourcesFileName)),
				nearestSource(f, p.sources)))
		}
	}
	return said
}

func nearestSource(f *markdown.Figure, sources config.Sources) string {
	if near, ok := message.Nearest(f.Target, sources.IDs()); ok {
		return "write source:" + near
	}
	lines := "add lines to that file, such as:\n" + f.Target + ":\n  title: The title of the work\n" +
		"  address: https://www.example.org/\n  kind: handbook"
	if own := sources.Own(); len(own) > 0 {
		return lines + "\nor write one of: source:" + strings.Join(own, ", source:")
	}
	return lines
}

// checkGlance sees that the line at a glance asks for what the page's worksheets have.
func checkGlance(d *draft) message.List {
	var said message.List
	for _, item := range d.metadata.Glance {
		use, name, _ := strings.Cut(item.Text, ".")
		bound := d.work.Find(use)
		if bound == nil {
			if !hasBlock(d, use) {
				said = append(said, d.fault(item.Span, "figure-unknown",
					fmt.Sprintf("there is no worksheet %q in this page", use), nearestAnswer(d, use)))
			}
			continue
		}
		if _, ok := bound.Sheet.UnitOf(name); !ok {
			note := "write one of: " + strings.Join(bound.Sheet.Names(), ", ")
			if near, ok := message.Nearest(name, bound.Sheet.Names()); ok {
				note = "write " + use + "." + near
			}
			said = append(said,
				d.fault(item.Span, "figure-unknown", fmt.Sprintf("worksheet %q has no figure %q", use, name), note))
		}
	}
	return said
}

// nearestAnswer is a note that offers an answer of the worksheet that was most likely meant.
func nearestAnswer(d *draft, use string) string {
	var names []string
	for _, b := range d.work.Sheets {
		if b.Kind == construct.Worksheet {
			names = append(names, b.Block.Name)
		}
	}
	near, ok := message.Nearest(use, names)
	switch {
	case len(names) == 0:
		return "write a worksheet of that name in the page, or take this out"
	case !ok:
		near = names[0]
	}
	return "write an answer of a worksheet, such as " + near + "." + d.work.Find(near).Sheet.Answers()[0].Name
}

// hasBlock says whether the page has a worksheet of that name, even one with a fault.
func hasBlock(d *draft, name string) bool {
	return slices.ContainsFunc(d.doc.Blocks, func(b *markdown.Block) bool { return b.Name == name })
}

// orderSeason ties each guide to the ones before and after it in the season's work, and so the pages of the manual.
func (p *press) orderSeason() {
	if !p.keepOrder() {
		p.pages = slices.SortedFunc(slices.Values(p.walked), inSeason)
	}
	for i, d := range p.pages {
		d.rank, d.previous, d.next = i, nil, nil
	}
	type row struct {
		kind     kind.Kind
		language string
	}
	last := map[row]*draft{}
	for _, d := range p.pages {
		if !d.address.Kind.Row().Turns {
			continue
		}
		r := row{d.address.Kind, d.address.Language}
		if before := last[r]; before != nil {
			before.next, d.previous = d, before
		}
		last[r] = d
	}
}

// isTranslation says whether a page is in a language of the site that is not the main one.
func (p *press) isTranslation(d *draft) bool {
	return slices.Index(p.site.Languages, d.address.Language) > 0
}

func inSeason(a, b *draft) int { return page.Compare(a.address, a.metadata, b.address, b.metadata) }
