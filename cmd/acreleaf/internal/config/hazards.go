package config

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/message"
)

// OwnHazard is a hazard that an office knows and the table of the calculations does not.
type OwnHazard struct {
	fact.Hazard
	Words   []string // by which prose speaks of it
	says    map[string]string
	sources []Value
}

// Sentence is what the hazard says on a page in a language of the site.
func (h OwnHazard) Sentence(language string) string {
	return cmp.Or(h.says[strings.ToLower(language)], h.Hazard.Sentence(language))
}

var hazardKeys = []string{"name", "signal", "says", "words", "sources"}

// HazardKeys lists the keys of a hazard in site.yaml.
func HazardKeys() []string { return slices.Clone(hazardKeys) }

// HazardSignals lists the signal words that a hazard may have, in small letters, from the mildest to the gravest.
func HazardSignals() []string {
	var words []string
	for s := fact.Notice; s <= fact.Danger; s++ {
		words = append(words, strings.ToLower(s.String()))
	}
	return words
}

// readHazards reads the hazards of a site file, by id.
func readHazards(site *Table, languages []string) []OwnHazard {
	t := site.Table("hazards", "the list of hazards", nil)
	if t == nil {
		return nil
	}
	var hazards []OwnHazard
	for _, id := range t.Keys() {
		if !referenceID.MatchString(id) {
			t.FaultAt(t.KeySpan(id), "hazard-id", fmt.Sprintf("%q cannot be the id of a hazard", id),
				"use small letters, digits and hyphens, as in \"wind-machine\"")
			continue
		}
		if known, taken := fact.FindHazard(id); taken {
			t.FaultAt(t.KeySpan(id), "hazard-id", fmt.Sprintf("hazard %q is known already: %s", id, known.Name.In("en")),
				"take it out and use it as it is, or choose another id, such as "+id+"-2")
			continue
		}
		if entry := t.Table(id, "a hazard", hazardKeys); entry != nil {
			hazards = append(hazards, readHazard(id, entry, languages))
		}
	}
	return hazards
}

// ownText is what an office says of a hazard, by language. What it does not say in English it says in its own language.
func ownText(says map[string]string, own string) fact.Text {
	text := fact.Text(maps.Clone(says))
	if text["en"] == "" && says[own] != "" {
		text["en"] = says[own]
	}
	return text
}

func readHazard(id string, t *Table, languages []string) OwnHazard {
	says := readSays(id, t, languages)
	h := OwnHazard{says: says, Hazard: fact.Hazard{
		ID:     id,
		Name:   fact.Text{"en": t.Need("name", "type what it is called in a message: \"name: wind machines\"")},
		Says:   ownText(says, languages[0]),
		Signal: fact.Notice,
	}, sources: t.List("sources")}
	word := t.Need("signal", "type one of: "+strings.Join(HazardSignals(), ", "))
	if i := slices.Index(HazardSignals(), strings.ToLower(word)); i >= 0 {
		h.Signal = fact.Notice + fact.Signal(i)
	} else if word != "" {
		t.Fault("signal", "hazard-signal", fmt.Sprintf("%q is not a signal word", word),
			"type one of: "+strings.Join(HazardSignals(), ", "))
	}
	for _, v := range t.List("words") {
		h.Words = append(h.Words, v.Text)
	}
	for _, v := range h.sources {
		h.Sources = append(h.Sources, v.Text)
	}
	return h
}

// readSays reads what a hazard says: one text on a site in one language, otherwise one for each language, by its code.
func readSays(id string, t *Table, languages []string) map[string]string {
	says := map[string]string{}
	if t.IsTable("says") {
		inside := t.Table("says", "what a hazard says", languages)
		for _, language := range languages {
			says[language] = inside.Need(language,
				fmt.Sprintf("type what can happen and what to do, in the language %q: \"%s: ...\"", language, language))
		}
		return says
	}
	text := t.Need("says", "type what can happen and what to do: \"says: Keep clear.\"")
	if text != "" && len(languages) > 1 {
		t.Fault("says", "hazard-language",
			fmt.Sprintf("the hazard %s says one sentence, and the pages of this site are in %s", id,
				strings.Join(languages, " and ")), "write one for each language:\n    says:"+eachLanguage("      ", languages))
	}
	says[languages[0]] = text
	return says
}

// UnknownSources finds what the hazards of a site rest on and no list of sources has.
func UnknownSources(site Site, file *message.Source, sources Sources) message.List {
	var found message.List
	for _, h := range site.Hazards {
		for _, v := range h.sources {
			if _, known := sources[v.Text]; known {
				continue
			}
			note := "add it to sources.yaml, or write common-practice for what the trade does"
			if near, ok := message.Nearest(v.Text, sources.IDs()); ok {
				note = "write " + near
			}
			found = append(found, message.Message{ID: "hazard-source", Source: file, Span: v.Span, Note: note,
				Text: fmt.Sprintf("there is no source %q, on which the hazard %s rests", v.Text, h.ID)})
		}
	}
	return found
}
