package proof

import (
	"maps"
	"regexp"
	"strings"
	"sync"

	"acreleaf/calc/fact"
)

// A hazard is what a page must warn of when it handles it, and how the page's language speaks of it.
type hazard struct {
	fact.Hazard
	speech
	example string // a signal block that names it
}

// A speech is how prose speaks of a hazard.
type speech struct {
	stems  []string // one of them is in every text that talks or warns of it, in small letters
	talks  []string // those of talk alone, where they are fewer; nil for the same
	talk   *pattern
	warn   *pattern
	order  *pattern // a sentence that has people handle it: one is enough
	enough int      // paragraphs that talk of it before it is more than a word in passing
}

// hazardsOf gives the hazards of the table that prose of a language is searched for, in the order of the table.
func hazardsOf(language string) []hazard {
	switch strings.ToLower(language) {
	case "en":
		return inEnglish()
	case "es":
		return inSpanish()
	}
	return nil
}

var (
	inEnglish = sync.OnceValue(func() []hazard { return spoken("en", englishSpeech()) })
	inSpanish = sync.OnceValue(func() []hazard { return spoken("es", spanishSpeech()) })
)

func spoken(language string, speeches map[string]speech) []hazard {
	var list []hazard
	left := maps.Clone(speeches)
	for _, h := range fact.Hazards() {
		if s, searched := speeches[h.ID]; searched {
			list = append(list, hazard{h, s, "> **" + signalWord(h.Signal, language) + "** " + h.Sentence(language)})
			delete(left, h.ID)
		}
	}
	for id := range left {
		panic("there is no hazard " + id)
	}
	return list
}

var spanishSignals = map[fact.Signal]string{
	fact.Danger: "PELIGRO", fact.Warning: "ADVERTENCIA", fact.Caution: "PRECAUCIÓN", fact.Notice: "AVISO",
}

func signalWord(s fact.Signal, language string) string {
	if language == "es" {
		return spanishSignals[s]
	}
	return s.String()
}

// A pattern is a regular expression that is looked for in every paragraph. One that says how far two words may be apart
// is long, as each letter between them is a step of its own, and slow. The same without that limit finds all that it
// finds, and more, and is looked for first.
type pattern struct {
	*regexp.Regexp
	loose *regexp.Regexp // without limits; nil for a pattern that has none
}

// limit is how far two words may be apart.
var limit = regexp.MustCompile(`\{0,\d+\}`)

func newPattern(text string) *pattern {
	p := &pattern{Regexp: regexp.MustCompile(text)}
	if limit.MatchString(text) {
		p.loose = regexp.MustCompile(limit.ReplaceAllString(text, "*"))
	}
	return p
}

// MatchString says whether the pattern is in a text.
func (p *pattern) MatchString(text string) bool { return p.mayBeIn(text) && p.Regexp.MatchString(text) }

// mayBeIn says whether it is worth the time to look for the pattern in a text.
func (p *pattern) mayBeIn(text string) bool { return p.loose == nil || p.loose.MatchString(text) }

// The words that bring a hazard are those for handling a thing, since a soil can be acid and a leaf can lose ammonia
// without harm to anybody. A word begins after anything but a letter; \b would take the "á" of "ácido" for no letter.
func words(list string) *pattern {
	return newPattern(`(?i)(?:^|[^\p{L}])(` + list + `)(?:[^\p{L}]|$)`)
}

// wordsOrAcid is words with one more list, in which acid is the last word. What follows shows that it is a thing:
// "acid soil" and "acid-forming" are none.
func wordsOrAcid(list, acid, goesOn string) *pattern {
	return newPattern(`(?i)(?:^|[^\p{L}])(?:(` + list + `)(?:[^\p{L}]|$)|` +
		`(` + acid + `)(?:$|[.,;:!?)”"»]|\s(?:` + goesOn + `)(?:[^\p{L}]|$)))`)
}

// ordered is the pattern of a sentence in which one of the verbs comes before the thing that it is done with.
func ordered(verbs, thing string) string {
	return `(?:` + verbs + `)[^\p{L}.!?](?:[^.!?]{0,60}[^\p{L}])?(?:` + thing + `)`
}
