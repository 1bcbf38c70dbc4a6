package book

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// joinTranslations ties each translation to its original, and says which cannot be tied.
func (b *library) joinTranslations() {
	for _, d := range b.pages {
		d.original, d.translations = nil, nil
	}
	if len(b.languages) == 0 {
		return // which pages are originals is not known
	}
	for _, d := range b.pages {
		name := page.Original(d.name, d.metadata)
		if d.faulty || name == "" {
			continue
		}
		original := b.index[name]
		if original != nil && d.name < original.name && page.Original(original.name, original.metadata) == d.name {
			continue // the other one says so
		}
		if said := b.untranslatable(d, original, name); said != nil {
			b.said = append(b.said, *said)
			continue
		}
		d.original = original
		original.translations = append(original.translations, d)
	}
}

// untranslatable says why a page cannot be the translation of the page that it names.
func (b *library) untranslatable(d, original *draft, name string) *message.Message {
	wrong := func(id, text, note string) *message.Message {
		m := d.fault(d.metadata.Translates.Span, id, text, note)
		return &m
	}
	main := b.languages[0]
	switch {
	case strings.ContainsAny(d.metadata.Translates.Text, `/\`):
		return wrong("translates-folder", "a translation is in the folder of its original",
			fmt.Sprintf("move this file there, and write the name alone: translates: %s", path.Base(name)))
	case original == nil:
		return wrong("translates-unknown", fmt.Sprintf("there is no page %s", b.options.called(name)), b.nearestPage(d, name))
	case original == d:
		return wrong("translates-itself", "this page says that it is the translation of itself",
			"write the name of the page that was there first, or take the line out")
	case original.faulty:
		return nil // its own message comes first
	case d.address.Language == "":
		return wrong("translates-language", fmt.Sprintf("this page is in the site's main language (%s), and so it is an "+
			"original", main), "say in which language it is, as in \"language: "+b.anotherLanguage()+"\", or take this line out")
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
func (b *library) anotherLanguage() string {
	if len(b.languages) > 1 {
		return b.languages[1]
	}
	return "es"
}

// nearestPage is a note with the name of a page of the folder that may have been meant.
func (b *library) nearestPage(d *draft, name string) string {
	var beside []string
	for _, other := range b.pages {
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
func (b *library) inLanguages(d *draft) []*draft {
	first := d
	if d.original != nil {
		first = d.original
	}
	if len(first.translations) == 0 {
		return []*draft{d}
	}
	list := append([]*draft{first}, first.translations...)
	slices.SortFunc(list, func(one, other *draft) int {
		return slices.Index(b.languages, b.language(one)) - slices.Index(b.languages, b.language(other))
	})
	return list
}

// isTranslation says whether a page is in a language of the site that is not the main one.
func (l *loaded) isTranslation(d *draft) bool {
	return slices.Index(l.Site.Languages, d.address.Language) > 0
}
