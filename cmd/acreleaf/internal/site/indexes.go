package site

import (
	"bytes"
	"cmp"
	"path"
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// An index is a page that lists the pages of a folder, where nobody wrote one. With it no address that a reader cuts
// short leads nowhere.
type index struct {
	address page.Address
	of      kind.Kind // what it lists
	pages   []*draft
}

// indexes are those that a language of the site needs, by their addresses.
func (p *press) indexes(language string) []*index {
	found := map[string]*index{}
	for _, d := range p.pages {
		if d.faulty || d.address.Language != language {
			continue
		}
		for folder := path.Dir(d.address.Name); folder != "."; folder = path.Dir(folder) {
			if p.byAddress[page.Address{Kind: d.address.Kind, Language: language, Name: folder}] != nil {
				continue // somebody wrote a page there
			}
			if found[folder] == nil {
				found[folder] = &index{of: d.address.Kind, address: indexAddress(language, folder)}
			}
			found[folder].pages = append(found[folder].pages, d)
		}
	}
	var list []*index
	for _, i := range found {
		list = append(list, i)
	}
	slices.SortFunc(list, func(a, b *index) int { return cmp.Compare(a.address.Name, b.address.Name) })
	return list
}

func indexAddress(language, folder string) page.Address {
	return page.Address{Kind: kind.Index, Language: language, Name: folder}
}

// indexView is a page that lists pages that somebody wrote.
func (p *press) indexView(i *index, r *render.Renderer) *render.Index {
	v := &render.Index{Of: i.of}
	words := r.Words().Set(i.of)
	title := words.All
	if _, below, deep := strings.Cut(i.address.Name, "/"); deep {
		title += ": " + strings.ReplaceAll(below, "/", ", ")
	}
	v.Page = p.frame(i.address, title, words.About)
	for _, d := range i.pages {
		v.Entries = append(v.Entries, entry(i.address, d))
	}
	return v
}

// calculationIndex is the page that lists the calculations of a language.
func (p *press) calculationIndex(language string, sheets []*sheet.Sheet, r *render.Renderer) *render.Index {
	words := r.Words().Set(kind.Calculation)
	address := indexAddress(language, kind.Calculation.Row().Folder)
	v := &render.Index{Of: kind.Calculation, Page: p.frame(address, words.All, words.About)}
	for _, s := range sheets {
		v.Entries = append(v.Entries, render.Entry{
			Title: s.Title, Summary: s.Summary, Href: address.To(calculationAddress(language, s)),
		})
	}
	return v
}

// entry is a page as a list has it.
func entry(from page.Address, d *draft) render.Entry {
	m := d.metadata
	return render.Entry{Number: int(m.Order), Title: m.Title, Summary: m.Summary, Href: from.To(d.address)}
}

// madeHome is the home page of a language in which nobody wrote one.
func (p *press) madeHome(address page.Address, r *render.Renderer) func(w *bytes.Buffer) {
	return func(w *bytes.Buffer) {
		v := &render.Home{
			Page:    p.frame(address, p.site.Office, r.Words().Set(kind.Guide).About),
			Seasons: p.seasons(address), More: p.more(address, r.Words()),
		}
		v.Page.Languages = p.homesInLanguages(address)
		r.Home(w, v)
	}
}

// homesInLanguages are the home pages of the languages in which there are pages, if those are two or more.
func (p *press) homesInLanguages(from page.Address) []render.Language {
	var list []render.Language
	for i, code := range p.languages {
		address := page.Address{Kind: kind.Home, Language: code}
		if i == 0 {
			address.Language = ""
		}
		speaks := func(d *draft) bool { return d.address.Language == address.Language }
		if address != from && !slices.ContainsFunc(p.pages, speaks) {
			continue
		}
		list = append(list, render.Language{
			Code: code, Name: p.renderers[code].Words().Page.Language, Href: from.To(address),
			Address: address.String(), Current: address == from,
		})
	}
	if len(list) < 2 {
		return nil
	}
	return list
}

// more are the ways from a home page to the lists of what is not in its own.
func (p *press) more(from page.Address, words *render.Words) []render.Link {
	var links []render.Link
	for _, i := range p.indexes(from.Language) {
		if i.of != kind.Guide && !strings.Contains(i.address.Name, "/") {
			links = append(links, render.Link{Href: from.To(i.address), Text: words.Set(i.of).All})
		}
	}
	if sheets, _ := p.usedSheets(from.Language); len(sheets) > 0 {
		links = append(links, render.Link{
			Href: from.To(indexAddress(from.Language, kind.Calculation.Row().Folder)), Text: words.Set(kind.Calculation).All,
		})
	}
	return links
}
