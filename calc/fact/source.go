package fact

import (
	"slices"
	"strings"
	"sync"

	"acreleaf/calc/words"
)

// A Kind says what sort of thing a source is, and so how sure a figure from it is.
type Kind string

// From the surest to the least sure.
const (
	Definition     Kind = "definition"      // arithmetic, geometry, a unit: it needs no page
	Standard       Kind = "standard"        // a law or a published standard
	Handbook       Kind = "handbook"        // a bulletin, a manual, or the trade press that prints an advisor's figure
	WorkedExample  Kind = "worked-example"  // it prints both what goes in and what comes out
	Trial          Kind = "trial"           // the paper of a trial, or of several
	CommonPractice Kind = "common-practice" // what the trade does, with no publication
	Memory         Kind = "memory"          // found on no page
)

// Kinds lists the kinds, from the surest to the least sure.
var Kinds = []Kind{Definition, Standard, Handbook, WorkedExample, Trial, CommonPractice, Memory}

// Printed says whether a source of the kind is a publication, which a reader must be able to find: by an address, or by
// a number that a library can be asked for.
func (k Kind) Printed() bool {
	return k == Standard || k == Handbook || k == WorkedExample || k == Trial
}

// A Source is a publication, or what is used in place of one.
type Source struct {
	ID        string // "nist-44"; it never changes
	Authors   string // people, or the body that put it out
	Title     string
	Year      string // "" when it is not known
	Publisher string
	Kind      Kind
	Address   string // of a page on the web
	Number    string // a publication number or a DOI, by which a library finds it
	Note      string // what it gives, or how it was seen
}

// Findable says whether a reader can find the source. What is no publication has nothing to be found.
func (s Source) Findable() bool { return !s.Kind.Printed() || s.Address != "" || s.Number != "" }

// sources is the bibliography with its notes, and with the names of what is no publication. Both are in calc/words, by
// id.
var sources = sync.OnceValue(func() []Source {
	all := slices.Clone(bibliography)
	for i := range all {
		all[i].Note, _, _ = words.Text(words.English, words.Key{File: "sources", Key: all[i].ID})
		if all[i].Title == "" {
			all[i].Title, _, _ = words.Text(words.English, titleKey(all[i].ID))
		}
	}
	return all
})

// Sources lists the bibliography in the order of the ids.
func Sources() []Source { return slices.Clone(sources()) }

// In is the source with its note, and the name of what is no publication, in a language that has words for them.
func (s Source) In(language string) Source {
	language = words.Language(language)
	if language == words.English {
		return s
	}
	if title, _, _ := words.Text(language, titleKey(s.ID)); title != "" {
		s.Title = title
	}
	if known, found := FindSource(s.ID); found && known.Note == s.Note {
		if note, _, _ := words.Text(language, words.Key{File: "sources", Key: s.ID}); note != "" {
			s.Note = note
		}
	}
	return s
}

// titleKey is the key of what a source is called that is no publication.
func titleKey(id string) words.Key { return words.Key{File: "sources", Key: titleOf + id} }

const titleOf = "title."

// FindSource finds a source by its id.
func FindSource(id string) (Source, bool) {
	at, found := slices.BinarySearchFunc(sources(), id, func(s Source, id string) int {
		return strings.Compare(s.ID, id)
	})
	if !found {
		return Source{}, false
	}
	return sources()[at], true
}
