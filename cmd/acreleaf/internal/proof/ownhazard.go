package proof

import (
	"fmt"
	"regexp"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/config"
)

// ownHazards gives the hazards of a site file that its pages are searched for.
func ownHazards(language string, own []config.OwnHazard) []hazard {
	var list []hazard
	for _, h := range own {
		list = append(list, ownHazard(language, h))
	}
	return list
}

// ownHazard is a hazard of a site file with its patterns.
func ownHazard(language string, own config.OwnHazard) hazard {
	return hazard{own.Hazard, ownSpeech(language, own.Name.In("en"), own.Words),
		"> **" + signalWord(own.Signal, language) + "** " + own.Sentence(language)}
}

// ownSpeech is how prose speaks of a hazard of a site file: by its words alone, and by an order to handle it. Each page
// asks for the patterns, so they are kept by what they are made of.
func ownSpeech(language, name string, own []string) speech {
	key := fmt.Sprintf("%q %q %q", language, name, own)
	if kept, made := ownMade.Load(key); made {
		return kept.(speech)
	}
	var h speech
	var quoted []string
	for _, word := range own {
		h.stems = append(h.stems, strings.ToLower(word))
		quoted = append(quoted, regexp.QuoteMeta(word))
	}
	any := strings.Join(quoted, "|")
	handles := handlesEnglish
	if language == "es" {
		handles = handlesSpanish
	}
	h.talk, h.order, h.enough = words(any), words(ordered(handles, any)), 2
	h.warn = h.talk
	if len(quoted) == 0 { // only a calculation brings it, and any signal block with its name warns of it
		h.warn = words(regexp.QuoteMeta(name))
		h.stems = []string{strings.ToLower(name)}
		h.talk, h.order = nothing, nothing
	}
	ownMade.Store(key, h)
	return h
}

var ownMade sync.Map

// nothing is in no text.
var nothing = newPattern(`[^\s\S]()`)
