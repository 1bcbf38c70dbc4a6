package site

import (
	"cmp"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// siteView is what every page of a language states about the site.
func (e *edition) siteView(language string) render.Site {
	s := render.Site{
		Language: language, Office: e.site.Office, Crop: e.site.Crop, Tagline: e.site.Tagline,
		Invented: e.site.Invented, Notice: e.site.Notice, Base: e.site.Address,
		Licence: e.site.Licence, LocalRule: e.site.LocalRule,
		Contact: cmp.Or(e.site.Contact.Name, e.site.Contact.Email, e.site.Contact.Phone),
		Style:   e.bundle.Style.Path, Ranges: e.bundle.Ranges.Path,
		Icon: e.bundle.Icon.Path,
	}
	s.Script, s.After = scripts()[language].page.Path, scripts()[language].after.Path
	switch {
	case e.site.Contact.Email != "":
		s.ContactHref = "mailto:" + e.site.Contact.Email
	case e.site.Contact.Phone != "":
		s.ContactHref = "tel:" + strings.ReplaceAll(e.site.Contact.Phone, " ", "-")
	}
	return s
}

// homeOf is the home page that a page leads back to, that of its language.
func homeOf(address page.Address) page.Address {
	return page.Address{Kind: kind.Home, Language: address.Language}
}

// frame is what the frame of any page needs.
func (e *edition) frame(address page.Address, title, summary string) render.Page {
	v := render.Page{
		Root: address.ToPath(""), Home: address.To(homeOf(address)), Address: address.String(),
		Title: title, Summary: summary,
	}
	if e.sources.AnyListed() {
		v.Sources = address.To(sourcesAddress(address.Language))
	}
	return v
}

func (e *edition) pageView(v *view) render.Page {
	shown := e.frame(v.address, v.metadata.Title, v.metadata.Summary)
	shown.Languages = e.languages(v)
	if v.address.Kind == kind.Home {
		shown.Languages = e.lists(v).homesInLanguages(v.address)
	}
	shown.Up = up(v.address, e.renderers[v.language].Words())
	return shown
}

// up is the way from a page to the list of its kind. Guides are listed on the home page.
func up(from page.Address, words *render.Words) *render.Link {
	row := from.Kind.Row()
	if row.Folder == "" || from.Kind == kind.Guide {
		return nil
	}
	return &render.Link{Href: from.To(indexAddress(from.Language, row.Folder)), Text: words.Set(from.Kind).All}
}

// languages lists the languages that a page can be read in, if there are two or more.
func (e *edition) languages(v *view) []render.Language {
	if len(v.around.twins) < 2 {
		return nil
	}
	var list []render.Language
	for _, t := range v.around.twins {
		list = append(list, render.Language{
			Code: t.language, Name: e.renderers[t.language].Words().Page.Language, Href: v.address.To(t.address),
			Address: t.address.String(), Current: t.address == v.address,
		})
	}
	return list
}

func (e *edition) guideView(v *view) *render.Guide {
	m := v.metadata
	g := &render.Guide{
		Page: e.pageView(v), Kind: v.address.Kind, Crop: m.Crop, Season: m.Season, Number: int(m.Order),
		Reviewed: date(m.Reviewed), Glance: glance(m, v.work), From: glanceFrom(m, v.work),
		Previous: wayTo(v.address, v.around.previous), Next: wayTo(v.address, v.around.next),
	}
	if v.address.Kind.Row().Contents {
		g.Contents = contents(v.doc)
	}
	if due, ok := m.Due(); ok {
		g.ReviewBy = date(due)
	}
	return g
}

func wayTo(from page.Address, to turn) *render.Link {
	if to == (turn{}) {
		return nil
	}
	return &render.Link{Href: from.To(to.address), Text: to.title}
}

// glance is the line of answers at the top of a guide.
func glance(m page.Metadata, work *worksheet.Page) []render.Glance {
	var list []render.Glance
	for _, item := range m.Glance {
		use, name, _ := strings.Cut(item.Text, ".")
		bound := work.Find(use)
		if bound == nil {
			continue // a figure that is not there was a fault
		}
		list = append(list, render.Glance{
			Sheet: bound.Use.Index, Href: "#" + render.Anchor(use),
			Shown: *shown(work.Example(bound), name), Label: label(bound.Sheet, name),
		})
	}
	return list
}

// seasons lists the guides of a page's language by the part of the season they belong to, in order.
func (c *common) seasons(from page.Address) []render.Season {
	var seasons []render.Season
	for _, o := range *c.outlines {
		if o.address.Kind != kind.Guide || o.address.Language != from.Language {
			continue
		}
		if n := len(seasons); n == 0 || seasons[n-1].Name != o.season {
			seasons = append(seasons, render.Season{Name: o.season})
		}
		listed := entry(from, o)
		listed.Example = o.example
		last := &seasons[len(seasons)-1]
		last.Guides = append(last.Guides, listed)
	}
	return seasons
}

func (c *common) sourcesView(address page.Address, words *render.Words) *render.Sources {
	v := &render.Sources{Page: c.edition.frame(address, words.Sources.Title, words.Sources.Summary)}
	cited := citedBy(*c.outlines)
	for _, id := range c.edition.sources.IDs() {
		source := c.edition.sources[id]
		entry := sourceView(source)
		if !source.Listed && len(cited[id]) == 0 || entry.Kind == string(fact.Definition) {
			continue
		}
		for _, o := range cited[id] {
			if o.address.Language == address.Language {
				entry.Cited = append(entry.Cited, render.Link{Href: address.To(o.address), Text: o.title})
			}
		}
		v.Entries = append(v.Entries, entry)
	}
	return v
}

// missingView is served at any depth, and no way from there is known. So its ways start at the site's address, or,
// where site.yaml has none, at the top of the server.
func (c *common) missingView(words *render.Words) *render.Missing {
	root := cmp.Or(c.edition.site.Address, "/")
	top := page.Address{Kind: kind.Home}
	v := &render.Missing{
		Page: c.edition.frame(missing, words.Missing.Title, words.Missing.Summary),
		Ways: append([]render.Link{{Text: words.Page.Home}}, c.more(top, words)...),
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
