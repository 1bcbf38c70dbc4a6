package config

import (
	"cmp"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/message"
)

// Reference is one source of figures. Texts are single lines of plain text, empty when left out.
type Reference struct {
	fact.Source
	Figures []SourceFigure
	Notes   map[string]string // the note by language, where the file has more than one
	Listed  bool              // it is in sources.yaml
	Span    message.Span      // of the id there
}

// Sources is the bibliography by id: what sources.yaml has, and what the calculations know.
type Sources map[string]Reference

// BuiltIn is the bibliography of the calculations.
func BuiltIn() Sources {
	sources := Sources{}
	for _, s := range fact.Sources() {
		sources[s.ID] = Reference{Source: s}
	}
	return sources
}

// IDs gives the ids by the alphabet.
func (s Sources) IDs() []string { return slices.Sorted(maps.Keys(s)) }

// Own gives the ids of those that are in sources.yaml, by the alphabet.
func (s Sources) Own() []string {
	var own []string
	for _, id := range s.IDs() {
		if s[id].Listed {
			own = append(own, id)
		}
	}
	return own
}

// LeastSure is the least sure kind among the sources of these ids; no source at all is memory.
func (s Sources) LeastSure(ids []string) fact.Kind {
	least := -1
	for _, id := range ids {
		least = max(least, slices.Index(fact.Kinds, s[id].Kind))
	}
	if least < 0 {
		return fact.Memory
	}
	return fact.Kinds[least]
}

// AnyListed says whether one of them is in sources.yaml.
func (s Sources) AnyListed() bool {
	for _, r := range s { // each page asks this for each source that it cites, so nothing is sorted
		if r.Listed {
			return true
		}
	}
	return false
}

var referenceKeys = []string{"authors", "year", "title", "publisher", "address", "number", "kind", "note", "language",
	"figures"}

// ReferenceKeys lists the keys of a source.
func ReferenceKeys() []string { return slices.Clone(referenceKeys) }

// builtInKeys are what an author may add to a source that the calculations know.
var builtInKeys = []string{"note", "language", "figures"}

// BuiltInKeys lists those keys.
func BuiltInKeys() []string { return slices.Clone(builtInKeys) }

var referenceID = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// LoadSources reads a bibliography: an id and a table for each source. The source text is never nil.
func LoadSources(fsys fs.FS, name string) (Sources, *message.Source, message.List) {
	src, faults := message.Load(fsys, name)
	if message.HasFault(faults) {
		return BuiltIn(), src, faults
	}
	t := ReadTable(src, message.Span{Start: 0, End: len(src.Text)}, "the list of sources", nil)
	sources := BuiltIn()
	for _, id := range t.Keys() {
		if !referenceID.MatchString(id) {
			t.FaultAt(t.KeySpan(id), "source-id", fmt.Sprintf("%q cannot be the id of a source", id),
				"use small letters, digits and hyphens, as in \"cdfa-almond\"")
			continue
		}
		entry := t.Table(id, "a source", referenceKeys)
		if entry == nil {
			continue
		}
		if known, built := fact.FindSource(id); built {
			sources[id] = addToBuiltIn(known, t.KeySpan(id), entry)
		} else {
			sources[id] = readReference(id, t.KeySpan(id), entry)
		}
	}
	return sources, src, t.Messages()
}

// addToBuiltIn reads what an author adds to a source that the calculations know. Its title and all that leads to it are
// not written a second time, so that the two cannot differ.
func addToBuiltIn(known fact.Source, span message.Span, t *Table) Reference {
	var again []string
	for _, key := range t.Keys() {
		if slices.Contains(referenceKeys, key) && !slices.Contains(builtInKeys, key) {
			again = append(again, key)
		}
	}
	if len(again) > 0 {
		t.FaultAt(t.KeySpan(again[0]), "source-built-in",
			fmt.Sprintf("source %q is known already: it is %s", known.ID, known.Title),
			"take out "+strings.Join(again, ", ")+"; for another work write another id, such as "+known.ID+"-2")
	}
	r := Reference{Source: known, Figures: readFigures(t), Listed: true, Span: span}
	note, notes := t.inLanguages("note", noteAdvice)
	r.Note, r.Notes = cmp.Or(note, known.Note), notes
	return r
}

const noteAdvice = "type what it says, in your own words"

func readReference(id string, span message.Span, t *Table) Reference {
	r := Reference{
		Source: fact.Source{
			ID:        id,
			Authors:   t.Text("authors"),
			Year:      t.Text("year"),
			Title:     t.Need("title", "type the title of the work: \"title: ...\""),
			Publisher: t.Text("publisher"),
			Address:   t.Text("address"),
			Number:    t.Text("number"),
		},
		Figures: readFigures(t), Listed: true, Span: span,
	}
	r.Note, r.Notes = t.inLanguages("note", noteAdvice)
	if r.Address != "" {
		if _, fault := webAddress(r.Address); fault != "" {
			t.Fault("address", "address", fmt.Sprintf("the address %q %s", r.Address, fault),
				"type an address that opens in a browser, as in \"address: https://www.example.org/\", or take the line out")
		}
	}
	names := make([]string, len(fact.Kinds))
	for i, k := range fact.Kinds {
		names[i] = string(k)
	}
	r.Kind = fact.Kind(t.Need("kind", "type \"kind:\" and one of: "+strings.Join(names, ", ")))
	if r.Kind != "" && !slices.Contains(fact.Kinds, r.Kind) {
		t.Fault("kind", "source-kind", fmt.Sprintf("%q is not a kind of source", r.Kind),
			meant(string(r.Kind), names))
	}
	return r
}
