package fact

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"acreleaf/calc/words"
)

// A Signal is a signal word of ANSI Z535.6.
type Signal uint8

// Notice is for trees, the ground, equipment and money; the others are for people. Danger is for what kills or maims
// unless it is avoided, Warning for what can do so, and Caution for lesser harm.
const (
	Notice Signal = iota + 1
	Caution
	Warning
	Danger
)

// String is the signal word: "" for no signal, 0.
func (s Signal) String() string {
	return [...]string{"", "NOTICE", "CAUTION", "WARNING", "DANGER"}[s]
}

// A Text is a sentence or more by language.
type Text map[string]string

// In is the text in a language: in English where there is no other.
func (t Text) In(language string) string {
	return cmp.Or(t[strings.ToLower(language)], t[words.English])
}

// Has says whether there is a text in a language.
func (t Text) Has(language string) bool { return t[strings.ToLower(language)] != "" }

// text is a text of hazards.txt, in calc/words, in all languages that have it.
func text(key string) Text {
	t := Text{}
	for _, language := range words.Languages() {
		if said, _, _ := words.Text(language, words.Key{File: "hazards", Key: key}); said != "" {
			t[language] = said
		}
	}
	return t
}

// filled is a text with names in braces filled in, in all languages that have it: "one", a trait's text.
func filled(t Text, named map[string]Text) Text {
	in := Text{}
	for language, said := range t {
		for name, value := range named {
			said = words.Fill(said, name, value.In(language))
		}
		in[language] = said
	}
	return in
}

// A Hazard is something that must be told beside an answer, and in a page that has people handle it. The texts of the
// table are in calc/words, by its id.
type Hazard struct {
	ID      string
	Name    Text // in messages: "acid"
	Signal  Signal
	Says    Text     // what can happen, and what to do
	Aid     Text     // first aid, where a label or a health office gives it
	Sources []string // ids of the bibliography
}

// Sentence is all that the hazard says in a language, first aid with it.
func (h Hazard) Sentence(language string) string {
	return strings.TrimSpace(h.Says.In(language) + " " + h.Aid.In(language))
}

// hazards is the table: those for people, those for trees, those for equipment, and those of materials that meet.
var hazards = sync.OnceValue(func() []Hazard {
	all := slices.Concat(peopleHazards, treeHazards, plantHazards)
	for i := range all {
		h := &all[i]
		h.Name, h.Says, h.Aid = text(h.ID+".name"), text(h.ID+".says"), text(h.ID+".aid")
	}
	return append(all, keptApart()...)
})

// Hazards lists the table.
func Hazards() []Hazard { return slices.Clone(hazards()) }

// FindHazard finds a hazard by its id.
func FindHazard(id string) (Hazard, bool) {
	all := hazards()
	at := slices.IndexFunc(all, func(h Hazard) bool { return h.ID == id })
	if at < 0 {
		return Hazard{}, false
	}
	return all[at], true
}
