package site

import (
	"cmp"
	"strings"
	"unicode"
	"unicode/utf8"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// citations numbers the sources of one page in the order in which the page first uses them. A source of the
// bibliography is known by its id, and one that only a calculation knows by what the calculation calls it.
type citations struct {
	press    *press
	renderer *render.Renderer
	from     page.Address
	list     []render.Reference
	numbers  map[string]int
	uses     int
}

func (p *press) newCitations(from page.Address, r *render.Renderer) *citations {
	return &citations{press: p, renderer: r, from: from, numbers: map[string]int{}}
}

// figure cites the source of a figure in the prose.
func (c *citations) figure(r config.Reference, text string) render.Cite {
	return c.cite(r.ID, text, func() render.Reference { return c.reference(r) })
}

// constant cites the source of a figure that a calculation takes as known.
func (c *citations) constant(k *sheet.Constant, text string) render.Cite {
	if r, known := c.press.sources[c.press.workOf(k.Source)]; known {
		return c.figure(r, text)
	}
	return c.cite("calculation: "+k.Source, text, func() render.Reference {
		return render.Reference{Text: capital(k.Source), Kind: k.Sureness.String()}
	})
}

func (c *citations) cite(key, text string, first func() render.Reference) render.Cite {
	if c.numbers[key] == 0 {
		c.list = append(c.list, first())
		c.numbers[key] = len(c.list)
	}
	c.uses++
	number := c.numbers[key]
	r := &c.list[number-1]
	r.Uses = append(r.Uses, render.Use{Cite: c.uses, Text: text})
	return render.Cite{Source: number, Use: c.uses}
}

func (c *citations) reference(r config.Reference) render.Reference {
	entry := sourceView(r)
	return render.Reference{
		Entry: &entry, Kind: entry.Kind,
		Href: c.from.To(sourcesAddress(c.from.Language)) + "#" + r.ID,
	}
}

// constants lists the figures that the answers of a sheet rest on.
func (c *citations) constants(s *sheet.Sheet) []render.Constant {
	var views []render.Constant
	for _, k := range s.Constants {
		if k.OnlySlips {
			continue
		}
		v := render.Constant{
			Label: k.Label, Text: cmp.Or(k.Reads, k.Quantity.String()), Note: k.Note,
			Source: c.short(k.Source), Sureness: k.Sureness.String(),
		}
		if k.Table != nil { // there is no one figure to show, and its lists all read alike
			v.Label, v.Text = "", k.Label
		}
		v.Cite = c.constant(k, v.Text)
		views = append(views, v)
	}
	return views
}

// short names the first of several works; the list at the end of the page has them all.
func (c *citations) short(source string) string {
	first, _, more := strings.Cut(source, ";")
	if more {
		return c.renderer.Words().Sources.AndOthers(capital(first))
	}
	return capital(first)
}

// capital begins a text with a capital letter.
func capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

// citation is a source in a few words: "Pelham and Ortega 2019".
func citation(r config.Reference) string {
	return strings.TrimSpace(cmp.Or(r.Authors, r.Title) + " " + r.Year)
}

// meaning is what a source says that a figure is of: "136 lb" in the prose is its "136 lb N". It is empty when the
// source has no such text.
func meaning(r config.Reference, text string) string {
	for _, f := range r.Figures {
		if f.Text == text || strings.HasPrefix(f.Text, text+" ") {
			return f.For
		}
	}
	return ""
}

// sourceView is a source as the bibliography has it.
func sourceView(r config.Reference) render.Source {
	v := render.Source{
		ID: r.ID, Authors: r.Authors, Year: r.Year, Title: r.Title, Publisher: r.Publisher,
		Address: r.Address, Kind: string(r.Kind), Note: r.Note,
	}
	for _, f := range r.Figures {
		v.Figures = append(v.Figures, render.Figured{Text: f.Text, For: f.For})
	}
	return v
}
