package site

import (
	"strings"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// frame is what the frame of any page needs.
func (e *edition) frame(address page.Address, title, summary string) render.Page {
	v := render.Page{
		Root: address.ToPath(""), Home: address.To(homeOf(address)), Address: address.String(),
		Title: title, Summary: summary, Terms: address.To(e.termsAddress(address.Language)),
	}
	if e.Sources.AnyListed() {
		v.Sources = address.To(sourcesAddress(address.Language))
	}
	return v
}

func (e *edition) pageView(p *book.Page) render.Page {
	shown := e.frame(p.Address, p.Metadata.Title, p.Metadata.Summary)
	if p.Address.Kind == kind.Home {
		c := &common{e, p.Book}
		shown.Languages, shown.Feed = c.homesInLanguages(p.Address), c.feedFor(p.Address)
	} else {
		shown.Languages = e.languages(p.Address, e.Site.Languages, func(language string) (page.Address, bool) {
			for _, t := range p.Twins {
				if t.Language == language {
					return t.Address, true
				}
			}
			return page.Address{}, false
		})
	}
	shown.Up = up(p.Address, e.renderer(p.Language).Words())
	if p.Address.Kind == kind.Lesson {
		shown.Up = upToCourse(p)
	}
	return shown
}

// up is the way from a page to the list of its kind. Guides are listed on the home page.
func up(from page.Address, words *render.Words) *render.Link {
	of := from.Kind
	if of == kind.Course {
		of = kind.Lesson // in whose folder it is
	}
	row := of.Row()
	if row.Folder == "" || of == kind.Guide {
		return nil
	}
	return &render.Link{Href: from.To(indexAddress(from.Language, row.Folder)), Text: words.Set(of).All}
}

func (e *edition) guideView(p *book.Page) *render.Guide {
	m := p.Metadata
	g := &render.Guide{
		Page: e.pageView(p), Kind: p.Address.Kind, Crop: m.Crop, Season: m.Season, Number: int(m.Order),
		Reviewed: date(m.Reviewed), Changed: date(m.Changed()), Glance: glance(m, p.Work), From: glanceFrom(m, p.Work),
		Previous: wayTo(p.Address, p.Previous), Next: wayTo(p.Address, p.Next),
	}
	g.Lesson = lessonView(p)
	if p.Address.Kind == kind.Course {
		g.Course = (&common{e, p.Book}).courseView(p.Address)
	}
	if p.Address.Kind.Row().Contents {
		g.Contents = contents(p.Document)
	}
	for _, c := range m.Changes {
		g.Changes = append(g.Changes, render.Change{Day: date(c.Day), Text: c.Text})
	}
	if due, ok := m.Due(); ok {
		g.ReviewBy = date(due)
	}
	return g
}

func wayTo(from page.Address, to book.Turn) *render.Link {
	if to == (book.Turn{}) {
		return nil
	}
	return &render.Link{Href: from.To(to.Address), Text: to.Title}
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
			Sheet: bound.Use.Index, Href: "#" + construct.Anchor(use),
			Shown: *shown(work.Example(bound), name), Label: book.Label(bound.Sheet, name), Lang: labelLang(work, bound, name),
		})
	}
	return list
}

// glanceFrom lists the numbers that all answers at a glance are worked from, if they are the same.
func glanceFrom(m page.Metadata, work *worksheet.Page) string {
	use := ""
	for _, item := range m.Glance {
		name, _, _ := strings.Cut(item.Text, ".")
		if use != "" && name != use {
			return ""
		}
		use = name
	}
	return book.ExampleOf(m, work).From
}

// date is a day as views take it; "" for none.
func date(day time.Time) string {
	if day.IsZero() {
		return ""
	}
	return day.Format(time.DateOnly)
}
