package fact

import (
	"slices"
	"strings"
	"sync"
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

// A Text is a sentence or more in the languages of the tables. Spanish is left out where only a sheet speaks, since the
// words of sheets are English.
type Text struct{ English, Spanish string }

// In is the text in a language: in English where there is no other.
func (t Text) In(language string) string {
	if strings.EqualFold(language, "es") && t.Spanish != "" {
		return t.Spanish
	}
	return t.English
}

// A Hazard is something that must be told beside an answer, and in a page that has people handle it.
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
	return slices.Concat(peopleHazards, treeHazards, plantHazards, keptApart())
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
