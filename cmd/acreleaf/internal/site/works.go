package site

import (
	"strings"
	"unicode"
)

// workOf gives the id of the source in the bibliography that a calculation means by a text of its own: the text is the
// id written out ("common practice"), or has the title in it, as far as the title's colon or bracket. Of several such
// titles it is the longest. A text of several works, which semicolons part, is no one source: "" is its id.
func (p *press) workOf(text string) string {
	if known, ok := p.works.Load(text); ok {
		return known.(string)
	}
	id := p.findWork(text)
	p.works.Store(text, id)
	return id
}

func (p *press) findWork(text string) string {
	if strings.Contains(text, ";") {
		return ""
	}
	if _, same := p.sources[strings.ReplaceAll(text, " ", "-")]; same {
		return strings.ReplaceAll(text, " ", "-")
	}
	found, longest := "", 0
	spaced := spacedWords(text)
	for _, id := range p.sources.IDs() {
		title := p.sources[id].Title
		if end := strings.IndexAny(title, ":("); end >= 0 {
			title = title[:end]
		}
		words := spacedWords(title)
		// One word, such as "Soil", would be found in anything.
		if strings.Count(words, " ") > 2 && len(words) > longest && strings.Contains(spaced, words) {
			found, longest = id, len(words)
		}
	}
	return found
}

// spacedWords is a text in small letters with one space before, between and after its words, and no marks but those
// inside a word.
func spacedWords(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("-./", r)
	})
	for i, word := range words {
		words[i] = strings.Trim(word, "-./")
	}
	return " " + strings.Join(words, " ") + " "
}

// citeConstants notes the sources that the constants of a page's calculations name.
func (p *press) citeConstants(d *draft) {
	for _, definition := range d.defined {
		for _, id := range definition.Cited {
			p.cite(id, d)
		}
	}
	for _, b := range d.work.Sheets {
		for _, k := range b.Sheet.Constants {
			if id := p.workOf(k.Source); id != "" && !k.OnlySlips {
				p.cite(id, d)
			}
		}
	}
}
