package config

import (
	"cmp"
	"fmt"
	"strings"
)

// Texts are what an office says of itself in one language. What is empty it says in its main language.
type Texts struct {
	Crop      string // "young walnuts"
	Tagline   string // one sentence under the office's name
	LocalRule string // the notice that local rules and labels come first
	Notice    string // says that people, places and numbers are made up
	Contact   string // the name of who answers questions
}

// In is what the office says of itself on pages in a language of the site.
func (s Site) In(language string) Texts {
	own := s.Texts
	other := s.Others[language]
	return Texts{
		Crop: cmp.Or(other.Crop, own.Crop), Tagline: cmp.Or(other.Tagline, own.Tagline),
		LocalRule: cmp.Or(other.LocalRule, own.LocalRule), Notice: cmp.Or(other.Notice, own.Notice),
		Contact: cmp.Or(other.Contact, own.Contact),
	}
}

// readTexts reads the texts of a site: each is one for all languages, or a list of one for each, by its code.
func (s *Site) readTexts(t, contact *Table) {
	byLanguage := make([]Texts, len(s.Languages))
	read := func(t *Table, key string, of func(*Texts) *string) {
		for i, language := range s.Languages {
			if !t.IsTable(key) {
				*of(&byLanguage[0]) = t.Text(key)
				s.needEach(t, key)
				return
			}
			inside := t.Table(key, fmt.Sprintf("the text %q by language", key), s.Languages)
			*of(&byLanguage[i]) = inside.Need(language,
				fmt.Sprintf("type it in the language %q: \"%s: ...\"", language, language))
		}
	}
	read(t, "crop", func(x *Texts) *string { return &x.Crop })
	read(t, "tagline", func(x *Texts) *string { return &x.Tagline })
	read(t, "local-rule", func(x *Texts) *string { return &x.LocalRule })
	read(t, "notice", func(x *Texts) *string { return &x.Notice })
	if contact != nil {
		read(contact, "name", func(x *Texts) *string { return &x.Contact })
	}
	s.Texts = byLanguage[0]
	for i, language := range s.Languages[1:] {
		if byLanguage[i+1] != (Texts{}) {
			if s.Others == nil {
				s.Others = map[string]Texts{}
			}
			s.Others[language] = byLanguage[i+1]
		}
	}
}

// inLanguages reads a text of a source: one text, or one for each language by its code. The first result is for
// readers whose language has none of its own.
func (t *Table) inLanguages(key, note string) (string, map[string]string) {
	if !t.IsTable(key) {
		return t.Text(key), nil
	}
	inside := t.Table(key, fmt.Sprintf("the text %q by language", key), nil)
	codes, texts := inside.Keys(), map[string]string{}
	if len(codes) == 0 {
		t.Fault(key, "value-empty", fmt.Sprintf("%q has no value", key), note)
		return "", nil
	}
	for _, code := range codes {
		if !IsLanguage(code) {
			inside.FaultAt(inside.KeySpan(code), "language-code", fmt.Sprintf("%q is not a language code", code),
				"type two small letters, as in \"es: ...\"")
			continue
		}
		texts[code] = inside.Need(code, note)
	}
	return cmp.Or(texts[defaultLanguage], texts[codes[0]]), texts
}

// needEach wants each language of the site where a text must be understood by every reader.
func (s *Site) needEach(t *Table, key string) {
	if len(s.Languages) < 2 || key != "local-rule" && key != "notice" || t.Text(key) == "" {
		return
	}
	t.Fault(key, "site-language", fmt.Sprintf("the text %q is one sentence, and the pages of this site are in %s", key,
		strings.Join(s.Languages, " and ")), "write one for each language:\n"+key+":"+eachLanguage("  ", s.Languages))
}

// eachLanguage is a line for each language, to fill in.
func eachLanguage(indent string, languages []string) string {
	lines := ""
	for _, language := range languages {
		lines += "\n" + indent + language + ": ..."
	}
	return lines
}
