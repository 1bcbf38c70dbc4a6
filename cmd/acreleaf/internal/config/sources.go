package config

import (
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Kind says what sort of thing a source is, and so how far its numbers can be trusted.
type Kind string

// The kinds of sources.
const (
	Standard       Kind = "standard"
	Handbook       Kind = "handbook"
	WorkedExample  Kind = "worked-example"
	CommonPractice Kind = "common-practice"
	Memory         Kind = "memory"
)

// Kinds lists the kinds, the surest first.
var Kinds = []Kind{Standard, Handbook, WorkedExample, CommonPractice, Memory}

// Reference is one source of figures. Texts are single lines of plain text, empty when left out.
type Reference struct {
	ID        string // "cdfa-almond"
	Authors   string
	Year      string
	Title     string // always there
	Publisher string
	Address   string // a web address, http or https
	Kind      Kind   // always there
	Note      string // what it says, in our own words
	Figures   []SourceFigure
	Span      message.Span // of the id in sources.yaml
}

// Sources is the bibliography by id.
type Sources map[string]Reference

// IDs gives the ids by the alphabet.
func (s Sources) IDs() []string { return slices.Sorted(maps.Keys(s)) }

var referenceKeys = []string{"authors", "year", "title", "publisher", "address", "kind", "note",
	"figures"}

// ReferenceKeys lists the keys of a source.
func ReferenceKeys() []string { return slices.Clone(referenceKeys) }

var referenceID = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// LoadSources reads a bibliography: an id and a table for each source. The source text is never nil.
func LoadSources(fsys fs.FS, name string) (Sources, *message.Source, message.List) {
	src, faults := message.Load(fsys, name)
	if message.HasFault(faults) {
		return nil, src, faults
	}
	t := ReadTable(src, message.Span{Start: 0, End: len(src.Text)}, "the list of sources", nil)
	sources := Sources{}
	for _, id := range t.Keys() {
		if !referenceID.MatchString(id) {
			t.FaultAt(t.KeySpan(id), "source-id", fmt.Sprintf("%q cannot be the id of a source", id),
				"use small letters, digits and hyphens, as in \"cdfa-almond\"")
			continue
		}
		if entry := t.Table(id, "a source", referenceKeys); entry != nil {
			sources[id] = readReference(id, t.KeySpan(id), entry)
		}
	}
	return sources, src, t.Messages()
}

func readReference(id string, span message.Span, t *Table) Reference {
	r := Reference{
		ID:        id,
		Authors:   t.Text("authors"),
		Year:      t.Text("year"),
		Title:     t.Need("title", "type the title of the work: \"title: ...\""),
		Publisher: t.Text("publisher"),
		Address:   t.Text("address"),
		Note:      t.Text("note"),
		Figures:   readFigures(t),
		Span:      span,
	}
	if r.Address != "" {
		if _, fault := webAddress(r.Address); fault != "" {
			t.Fault("address", "address", fmt.Sprintf("the address %q %s", r.Address, fault),
				"type an address that opens in a browser, as in \"address: https://www.example.org/\", or take the line out")
			r.Address = ""
		}
	}
	names := make([]string, len(Kinds))
	for i, k := range Kinds {
		names[i] = string(k)
	}
	r.Kind = Kind(t.Need("kind", "type \"kind:\" and one of: "+strings.Join(names, ", ")))
	if r.Kind != "" && !slices.Contains(Kinds, r.Kind) {
		t.Fault("kind", "source-kind", fmt.Sprintf("%q is not a kind of source", r.Kind),
			meant(string(r.Kind), names))
	}
	return r
}
