package site

import (
	"bytes"
	"cmp"
	"maps"
	"path"
	"slices"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// An index is a page that lists the pages of a folder, where nobody wrote one. With it no address that a reader cuts
// short leads nowhere.
type index struct {
	address page.Address
	of      kind.Kind // what it lists
	pages   []int     // places in the list of all pages
}

// indexes are those that a language of the site needs, by their addresses.
func indexes(all []page.Address, language string) []*index {
	written := make(map[string]bool, len(all))
	for _, address := range all {
		written[address.String()] = true
	}
	found := map[string]*index{}
	for i, address := range all {
		if address.Language != language {
			continue
		}
		for folder := path.Dir(address.Name); folder != "."; folder = path.Dir(folder) {
			if written[indexAddress(language, folder).String()] {
				continue // somebody wrote a page there
			}
			if found[folder] == nil {
				of, _ := kind.Of(strings.Split(folder, "/")[0])
				found[folder] = &index{of: of, address: indexAddress(language, folder)}
			}
			found[folder].pages = append(found[folder].pages, i)
		}
	}
	return slices.SortedFunc(maps.Values(found), func(a, b *index) int {
		return cmp.Compare(a.address.Name, b.address.Name)
	})
}

func indexAddress(language, folder string) page.Address {
	return page.Address{Kind: kind.Index, Language: language, Name: folder}
}

// foldersOf are the folders that hold pages, by the addresses that their indexes have.
func foldersOf(all []page.Address) map[page.Address]bool {
	folders := map[page.Address]bool{}
	for _, address := range all {
		for folder := path.Dir(address.Name); folder != "."; folder = path.Dir(folder) {
			folders[indexAddress(address.Language, folder)] = true
		}
	}
	return folders
}

// indexView is a page that lists pages that somebody wrote, in one of the folders that there are.
func (c *common) indexView(i *index, r *render.Renderer, folders map[page.Address]bool) *render.Index {
	v := &render.Index{Of: i.of}
	words := r.Words().Set(i.of)
	v.Page = c.edition.frame(i.address, folderTitle(i.address.Name, words), words.About)
	v.Page.Languages = c.sameInLanguages(i.address, func(code string) bool {
		return folders[indexAddress(code, i.address.Name)]
	})
	if i.of == kind.Lesson {
		if v.Course = c.courseView(i.address); len(v.Course.Lessons) == 0 {
			v.Course, v.Entries = nil, c.courses(i.address, r.Words())
		}
		return v
	}
	for _, at := range i.pages {
		v.Entries = append(v.Entries, entry(i.address, c.book.Outlines[at]))
	}
	return v
}

// calculationIndex is the page that lists the calculations of a language.
func (c *common) calculationIndex(language string, sheets []*sheet.Sheet, r *render.Renderer) *render.Index {
	words := r.Words().Set(kind.Calculation)
	address := indexAddress(language, kind.Calculation.Row().Folder)
	tag := cmp.Or(language, c.Site.Languages[0])
	v := &render.Index{Of: kind.Calculation, Page: c.edition.frame(address, words.All, words.About)}
	v.Page.Languages = c.sameInLanguages(address, func(code string) bool {
		used, _ := c.usedSheets(code)
		return len(used) > 0
	})
	for _, s := range sheets {
		v.Entries = append(v.Entries, render.Entry{
			Title: s.Title, Summary: s.Summary, Href: address.To(calculationAddress(language, s)),
			Lang: s.LangOf(s.Title, tag), SummaryLang: s.LangOf(s.Summary, tag),
		})
	}
	return v
}

// entry is a page as a list has it.
func entry(from page.Address, o *book.Outline) render.Entry {
	return render.Entry{Number: int(o.Order), Title: o.Title, Summary: o.Summary, Href: from.To(o.Address)}
}

// madeHome is the home page of a language in which nobody wrote one.
func (c *common) madeHome(address page.Address, r *render.Renderer) func(w *bytes.Buffer) {
	return func(w *bytes.Buffer) {
		v := &render.Home{
			Page:    c.edition.frame(address, c.Site.Office, r.Words().Set(kind.Guide).About),
			Seasons: c.seasons(address), More: c.more(address, r.Words()),
		}
		v.Page.Languages, v.Page.Feed = c.homesInLanguages(address), c.feedFor(address)
		r.Home(w, v)
	}
}

// more are the ways from a home page to the lists of what is not in its own.
func (c *common) more(from page.Address, words *render.Words) []render.Link {
	var links []render.Link
	for _, i := range indexes(c.addresses(), from.Language) {
		if i.of != kind.Guide && !strings.Contains(i.address.Name, "/") {
			links = append(links, render.Link{Href: from.To(i.address), Text: words.Set(i.of).All})
		}
	}
	if sheets, _ := c.usedSheets(from.Language); len(sheets) > 0 {
		links = append(links, render.Link{
			Href: from.To(indexAddress(from.Language, kind.Calculation.Row().Folder)), Text: words.Set(kind.Calculation).All,
		})
	}
	return links
}
