package site

import (
	"cmp"
	"slices"
	"strconv"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/terms"
)

// termsAddress is where the index of terms of a language is, by the code in addresses. Its name is in that language.
func (e *edition) termsAddress(language string) page.Address {
	address := page.Address{Kind: kind.Terms, Language: language, Name: kind.Terms.String()}
	if r := e.renderer(cmp.Or(language, e.Site.Languages[0])); r != nil {
		address.Name = r.Words().Terms.Folder
	}
	return address
}

// termsView is the index of terms of a language.
func (c *common) termsView(address page.Address, words *render.Words) *render.Terms {
	v := &render.Terms{Page: c.edition.frame(address, words.Terms.Title, words.Terms.Summary)}
	v.Page.Languages = c.languages(address, c.spoken(address), func(language string) (page.Address, bool) {
		return c.termsAddress(c.inAddress(language)), true
	})
	letters, places := c.book.Index(cmp.Or(address.Language, c.Site.Languages[0]))
	in := &indexing{from: address, places: places, ids: map[*terms.Entry]string{}}
	for _, l := range letters {
		for _, e := range l.Entries {
			for _, to := range e.See {
				in.ids[to] = cmp.Or(in.ids[to], "term_"+strconv.Itoa(len(in.ids)+1))
			}
		}
	}
	for _, l := range letters {
		v.Letters = append(v.Letters, render.Letter{Head: l.Head, Terms: in.terms(l.Entries)})
	}
	return v
}

// An indexing is an index while its view is made.
type indexing struct {
	from   page.Address
	places []book.TermPlace
	ids    map[*terms.Entry]string // of the entries that others lead to
}

func (in *indexing) terms(entries []*terms.Entry) []render.Term {
	var list []render.Term
	for _, e := range entries {
		t := render.Term{ID: in.ids[e], Text: e.Text, More: e.More, Under: in.terms(e.Under)}
		for _, at := range e.Places {
			place := in.place(in.places[at], e.Text)
			same := func(l render.Link) bool { return l.Text == place.Text } // a reader could not tell them apart
			if !slices.ContainsFunc(t.Places, same) {
				t.Places = append(t.Places, place)
			}
		}
		for _, to := range e.See {
			t.See = append(t.See, render.Link{Href: "#" + in.ids[to], Text: to.Text})
		}
		list = append(list, t)
	}
	return list
}

// place is the way to a place. Its text is the title of the page, and of the part where the term does not say it.
func (in *indexing) place(p book.TermPlace, term string) render.Link {
	l := render.Link{Href: wayToPart(in.from, p.Page.Address, p.Part), Text: p.Page.Title}
	if p.Title != "" && terms.Key(p.Title) != terms.Key(term) && p.Title != p.Page.Title {
		l.Text += ": " + p.Title
	}
	return l
}
