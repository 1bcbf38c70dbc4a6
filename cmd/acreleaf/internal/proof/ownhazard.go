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

// ownHazard is how prose speaks of a hazard of a site file: by its words alone, and by an order to handle it. What the
// patterns are made of is the key by which they are kept, since each page asks for them.
func ownHazard(language string, own config.OwnHazard) hazard {
	key := fmt.Sprintf("%s %+v", language, own)
	if kept, made := ownMade.Load(key); made {
		return kept.(hazard)
	}
	h := hazard{Hazard: own.Hazard, example: "> **" + signalWord(own.Signal, language) + "** " + own.Sentence(language)}
	var quoted []string
	for _, word := range own.Words {
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
		h.warn = words(regexp.QuoteMeta(own.Name.English))
		h.stems = []string{strings.ToLower(own.Name.English)}
		h.talk, h.order = nothing, nothing
	}
	ownMade.Store(key, h)
	return h
}

var ownMade sync.Map

// nothing is in no text.
var nothing = regexp.MustCompile(`[^\s\S]()`)
