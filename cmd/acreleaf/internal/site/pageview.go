package site

import (
	"cmp"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// siteView is what every page of a language states about the site.
func (p *press) siteView(language string) render.Site {
	s := render.Site{
		Language: language, Office: p.site.Office, Crop: p.site.Crop, Tagline: p.site.Tagline,
		Invented: p.site.Invented, Notice: p.site.Notice, Base: p.site.Address,
		Licence: p.site.Licence, LocalRule: p.site.LocalRule,
		Contact: cmp.Or(p.site.Contact.Name, p.site.Contact.Email, p.site.Contact.Phone),
		Style:   p.bundle.Style.Path, Script: p.bundle.Script.Path, Ranges: p.bundle.Ranges.Path,
		Icon: p.bundle.Icon.Path,
	}
	switch {
	case p.site.Contact.Email != "":
		s.ContactHref = "mailto:" + p.site.Contact.Email
	case p.site.Contact.Phone != "":
		s.ContactHref = "tel:" + strings.ReplaceAll(p.site.Contact.Phone, " ", "-")
	}
	return s
}

// homeOf is the home page that a page leads back to, that of its language.
func homeOf(address page.Address) page.Address {
	return page.Address{Kind: kind.Home, Language: address.Language}
}

// frame is what the frame of any page needs.
func (p *press) frame(address page.Address, title, summary string) render.Page {
	v := render.Page{
		Root: address.ToPath(""), Home: address.To(homeOf(address)), Address: address.String(),
		Title: title, Summary: summary,
	}
	if p.sources.AnyListed() {
		v.Sources = address.To(sourcesAddress(address.Language))
	}
	return v
}

func (p *press) pageView(d *draft) render.Page {
	v := p.frame(d.address, d.metadata.Title, d.metadata.Summary)
	v.Languages = p.twins(d)
	if d.address.Kind == kind.Home {
		v.Languages = p.homesInLanguages(d.address)
	}
	v.Up = up(d.address, p.renderers[p.language(d)].Words())
	return v
}

// up is the way from a page to the list of its kind. Guides are listed on the home page.
func up(from page.Address, words *render.Words) *render.Link {
	row := from.Kind.Row()
	if row.Folder == "" || from.Kind == kind.Guide {
		return nil
	}
	return &render.Link{Href: from.To(indexAddress(from.Language, row.Folder)), Text: words.Set(from.Kind).All}
}

// twins lists the languages that a page can be read in, if there are two or more.
func (p *press) twins(d *draft) []render.Language {
	var list []render.Language
	for _, twin := range p.inLanguages(d) {
		code := p.language(twin)
		list = append(list, render.Language{
			Code: code, Name: p.renderers[code].Words().Page.Language, Href: d.address.To(twin.address),
			Address: twin.address.String(), Current: twin == d,
		})
	}
	if len(list) < 2 {
		return nil
	}
	return list
}

func (p *press) guideView(d *draft) *render.Guide {
	m := d.metadata
	g := &render.Guide{
		Page: p.pageView(d), Kind: d.address.Kind, Crop: m.Crop, Season: m.Season, Number: int(m.Order),
		Reviewed: date(m.Reviewed), Glance: glance(d),
		Previous: wayTo(d, d.previous), Next: wayTo(d, d.next),
	}
	if d.address.Kind.Row().Contents {
		g.Contents = contents(d)
	}
	if due, ok := m.Due(); ok {
		g.ReviewBy = date(due)
	}
	return g
}

func wayTo(from, to *draft) *render.Link {
	if to == nil {
		return nil
	}
	return &render.Link{Href: from.address.To(to.address), Text: to.metadata.Title}
}

// glance is the line of answers at the top of a guide.
func glance(d *draft) []render.Glance {
	var list []render.Glance
	for _, item := range d.metadata.Glance {
		use, name, _ := strings.Cut(item.Text, ".")
		bound := d.work.Find(use)
		if bound == nil {
			continue // a figure that is not there was a fault
		}
		list = append(list, render.Glance{
			Sheet: bound.Use.Index, Href: "#" + render.Anchor(use),
			Shown: *shown(d.work.Example(bound), name), Label: label(bound.Sheet, name),
		})
	}
	return list
}

// seasons lists the guides of a page's language by the part of the season they belong to, in order.
func (p *press) seasons(from page.Address) []render.Season {
	var seasons []render.Season
	for _, d := range p.pages {
		if d.address.Kind != kind.Guide || d.address.Language != from.Language {
			continue
		}
		if n := len(seasons); n == 0 || seasons[n-1].Name != d.metadata.Season {
			seasons = append(seasons, render.Season{Name: d.metadata.Season})
		}
		listed := entry(from, d)
		for _, g := range glance(d)[:min(1, len(d.metadata.Glance))] {
			listed.Answer = g.Shown.Before + g.Shown.Text + g.Shown.After
		}
		last := &seasons[len(seasons)-1]
		last.Guides = append(last.Guides, listed)
	}
	return seasons
}

func (p *press) sourcesView(address page.Address, words *render.Words) *render.Sources {
	v := &render.Sources{Page: p.frame(address, words.Sources.Title, words.Sources.Summary)}
	for _, id := range p.sources.IDs() {
		entry := sourceView(p.sources[id])
		if !p.sources[id].Listed && len(p.cited[id]) == 0 || entry.Kind == string(fact.Definition) {
			continue
		}
		for _, d := range p.cited[id] {
			if d.address.Language == address.Language {
				entry.Cited = append(entry.Cited, render.Link{Href: address.To(d.address), Text: d.metadata.Title})
			}
		}
		v.Entries = append(v.Entries, entry)
	}
	return v
}

// missingView is served at any depth, and no way from there is known. So its ways start at the site's address, or,
// where site.yaml has none, at the top of the server.
func (p *press) missingView(words *render.Words) *render.Missing {
	root := cmp.Or(p.site.Address, "/")
	top := page.Address{Kind: kind.Home}
	v := &render.Missing{
		Page: p.frame(missing, words.Missing.Title, words.Missing.Summary),
		Ways: append([]render.Link{{Text: words.Page.Home}}, p.more(top, words)...),
	}
	for i := range v.Ways {
		v.Ways[i].Href = root + strings.TrimPrefix(v.Ways[i].Href, "./")
	}
	v.Page.Root, v.Page.Home, v.Page.Unlisted = root, root, true
	if v.Page.Sources != "" {
		v.Page.Sources = root + sourcesAddress("").String()
	}
	return v
}
