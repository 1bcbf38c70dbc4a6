package site

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// joinTranslations ties each translation to its original, and says which cannot be tied.
func (p *press) joinTranslations() {
	for _, d := range p.pages {
		d.original, d.translations = nil, nil
	}
	if len(p.languages) == 0 {
		return // which pages are originals is not known
	}
	for _, d := range p.pages {
		name := page.Original(d.name, d.metadata)
		if d.faulty || name == "" {
			continue
		}
		original := p.index[name]
		if original != nil && d.name < original.name && page.Original(original.name, original.metadata) == d.name {
			continue // the other one says so
		}
		if said := p.untranslatable(d, original, name); said != nil {
			p.say(message.List{*said})
			continue
		}
		d.original = original
		original.translations = append(original.translations, d)
	}
}

// untranslatable says why a page cannot be the translation of the page that it names.
func (p *press) untranslatable(d, original *draft, name string) *message.Message {
	wrong := func(id, text, note string) *message.Message {
		m := d.fault(d.metadata.Translates.Span, id, text, note)
		return &m
	}
	main := p.languages[0]
	switch {
	case strings.ContainsAny(d.metadata.Translates.Text, `/\`):
		return wrong("translates-folder", "a translation is in the folder of its original",
			fmt.Sprintf("move this file there, and write the name alone: translates: %s", path.Base(name)))
	case original == nil:
		return wrong("translates-unknown", fmt.Sprintf("there is no page %s", p.called(name)), p.nearestPage(d, name))
	case original == d:
		return wrong("translates-itself", "this page says that it is the translation of itself",
			"write the name of the page that was there first, or take the line out")
	case original.faulty:
		return nil // its own message comes first
	case d.address.Language == "":
		return wrong("translates-language", fmt.Sprintf("this page is in the site's main language (%s), and so it is an "+
			"original", main), "say in which language it is, as in \"language: "+p.anotherLanguage()+"\", or take this line out")
	case page.Original(original.name, original.metadata) == d.name:
		return wrong("translates-circle", fmt.Sprintf("this page and %s say that each is the translation of the other",
			original.source.Name), "take the line out of the page that was written first")
	case original.metadata.Translates.Text != "":
		return wrong("translates-translation", fmt.Sprintf("%s is itself a translation", original.source.Name),
			"name the original: translates: "+original.metadata.Translates.Text)
	case original.address.Language != "":
		return wrong("translates-language", fmt.Sprintf("an original is in the site's main language (%s), and %s is not",
			main, original.source.Name), "name a page in the main language, or take this line out")
	}
	for _, other := range original.translations {
		if other.address.Language == d.address.Language {
			return wrong("translates-twice", fmt.Sprintf("%s translates that page into the same language", other.source.Name),
				"keep one of the two, or let this one name another page")
		}
	}
	return nil
}

// anotherLanguage is a language of the site beside its main one.
func (p *press) anotherLanguage() string {
	if len(p.languages) > 1 {
		return p.languages[1]
	}
	return "es"
}

// nearestPage is a note with the name of a page of the folder that may have been meant.
func (p *press) nearestPage(d *draft, name string) string {
	var beside []string
	for _, other := range p.pages {
		if other != d && other.address.Language == "" && path.Dir(other.name) == path.Dir(name) {
			beside = append(beside, path.Base(other.name))
		}
	}
	slices.Sort(beside)
	if near, ok := message.Nearest(path.Base(name), beside); ok {
		return "write translates: " + near
	}
	if len(beside) > 0 {
		return "write the name of a page of this folder, such as " + beside[0] + ", or take the line out"
	}
	return "write that page, or take the line out"
}

// inLanguages are a page and those that say the same in other languages, in the order of the site's languages.
func (p *press) inLanguages(d *draft) []*draft {
	first := d
	if d.original != nil {
		first = d.original
	}
	if len(first.translations) == 0 {
		return []*draft{d}
	}
	list := append([]*draft{first}, first.translations...)
	slices.SortFunc(list, func(a, b *draft) int {
		return slices.Index(p.languages, p.language(a)) - slices.Index(p.languages, p.language(b))
	})
	return list
}
