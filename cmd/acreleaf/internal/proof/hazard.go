package proof

import (
	"regexp"
	"strings"
	"sync"
)

// A hazard is what a page must warn of when it handles it.
type hazard struct {
	name         string   // in messages: "acid"
	materials    []string // that bring it, by grade
	calculations []string // that bring it
	stems        []string // one of them is in every text that talks or warns of it, in small letters
	talk         *regexp.Regexp
	warn         *regexp.Regexp
	order        *regexp.Regexp // a sentence that tells people to handle it; nil where only talk counts
	enough       int            // paragraphs that talk of it before it is more than a word in passing
	example      string         // a signal block that names it
}

// hazardsOf gives the hazards in the words of a language, or nothing for a language that is not known.
func hazardsOf(language string) []hazard {
	switch strings.ToLower(language) {
	case "en":
		return englishHazards()
	case "es":
		return spanishHazards()
	}
	return nil
}

// The words that bring a hazard are those for handling a thing, since a soil can be acid and a leaf can lose ammonia
// without harm to anybody. A word begins after anything but a letter; \b would take the "á" of "ácido" for no letter.
func words(pattern string) *regexp.Regexp {
	return regexp.MustCompile(`(?i)(?:^|[^\p{L}])(` + pattern + `)(?:[^\p{L}]|$)`)
}

// ordered is a sentence in which one of the verbs stands before the thing that it is done with.
func ordered(verbs, thing string) *regexp.Regexp {
	return regexp.MustCompile(`(?i)(?:^|[^\p{L}])(?:` + verbs + `)[^\p{L}.!?](?:[^.!?]{0,60}[^\p{L}])?` + thing)
}

const (
	handlesEnglish = `add|apply|blend|dilute|inject|measure|meter|mix|pour|put|run|spray|spread|store|use`
	handlesSpanish = `a(?:gregue|ñada|plique)|diluya|eche|guarde|inyecte|mezcle|mida|ponga|use|vierta`
)

var (
	acidMaterials    = []string{"15-0-0-16S"}
	ammoniaMaterials = []string{"20-0-0", "82-0-0"}
)

var englishHazards = sync.OnceValue(func() []hazard {
	return []hazard{
		{
			name: "acid", materials: acidMaterials, stems: []string{"cid"}, enough: 2,
			talk: words(`(?:(?:sul(?:f|ph)uric|nitric|phosphoric|hydrochloric|muriatic|strong|concentrated) acids?|` +
				`acid (?:materials?|fertili[sz]ers?|products?|injection|tanks?)|inject(?:s|ed|ing)? (?:an |the )?acids?|` +
				`acids? (?:in|into|to) (?:the )?(?:water|lines?|tanks?))`),
			warn:  regexp.MustCompile(`(?i)acid`),
			order: ordered(handlesEnglish, `(?:sul(?:f|ph)uric|nitric|phosphoric|hydrochloric|muriatic) acid`),
			example: "> **DANGER** Acid burns skin and eyes. Pour acid into water, never water into acid. Follow the " +
				"label.",
		},
		{
			name: "ammonia", materials: ammoniaMaterials, stems: []string{"mmonia"}, enough: 2,
			talk:  words(`(?:(?:anhydrous|aqua|liquid) ammonia|ammonia (?:materials?|fertili[sz]ers?|water|tanks?))`),
			warn:  regexp.MustCompile(`(?i)ammonia`),
			order: ordered(handlesEnglish, `(?:anhydrous|aqua|liquid) ammonia`),
			example: "> **DANGER** Ammonia burns eyes and lungs. Only trained people may handle it, with goggles, gloves and " +
				"water within reach.",
		},
		{
			name: "injection", calculations: []string{"injection"}, enough: 3,
			stems: []string{"nject", "hemigat", "ertigat", "ackflow"},
			talk:  words(`(?:inject(?:s|ed|ing|ions?|ors?)?|chemigat\p{L}+|fertigat\p{L}+)`),
			warn:  regexp.MustCompile(`(?i)inject|chemigat|fertigat|backflow`),
			order: regexp.MustCompile(`(?:^|[.!?:] )(?:Inject|Chemigate|Fertigate) `),
			example: "> **WARNING** Never inject without the backflow protection that your local code asks for. Feed that " +
				"runs back can poison a well.",
		},
		{
			name: "nitrate in drinking water", stems: []string{"rink"}, enough: 2,
			talk: words(`(?:drinking[- ]water|drinking wells?|water (?:to|you|they|people) drink|drink(?:s|ing)? from)`),
			warn: regexp.MustCompile(`(?i)drink`),
			example: "> **WARNING** Nitrate in drinking water can make infants very ill. Have the household well tested. " +
				"Boiling does not take nitrate out.",
		},
	}
})

var spanishHazards = sync.OnceValue(func() []hazard {
	return []hazard{
		{
			name: "acid", materials: acidMaterials, stems: []string{"cid"}, enough: 2,
			talk: words(`(?:ácidos? (?:sulfúrico|nítrico|fosfórico|clorhídrico|muriático|fuerte|concentrado)s?|` +
				`(?:materiales|fertilizantes|productos) ácidos|inyect\p{L}+ (?:un |el )?ácidos?|` +
				`ácidos? (?:en|a) (?:el |la )?(?:agua|línea|tanque)s?)`),
			warn:  regexp.MustCompile(`(?i)ácid`),
			order: ordered(handlesSpanish, `ácido (?:sulfúrico|nítrico|fosfórico|clorhídrico|muriático)`),
			example: "> **PELIGRO** El ácido quema la piel y los ojos. Eche el ácido al agua, nunca el agua al ácido. Siga la " +
				"etiqueta.",
		},
		{
			name: "ammonia", materials: ammoniaMaterials, stems: []string{"mon"}, enough: 2,
			talk: words(`(?:amon[ií]aco (?:anhidro|acuoso|líquido)|agua amoniacal|(?:materiales|fertilizantes) amoniacales|` +
				`(?:materiales|fertilizantes|tanques?|solución) (?:de|con) amon[ií]aco)`),
			warn:  regexp.MustCompile(`(?i)amon[ií]ac`),
			order: ordered(handlesSpanish, `(?:amon[ií]aco (?:anhidro|acuoso|líquido)|agua amoniacal)`),
			example: "> **PELIGRO** El amoníaco quema los ojos y los pulmones. Solo gente capacitada lo maneja, con gafas, " +
				"guantes y agua cerca.",
		},
		{
			name: "injection", calculations: []string{"injection"}, enough: 3,
			stems: []string{"nyec", "uimigaci", "ertirri", "eflujo"},
			talk:  words(`(?:inyec[tc]\p{L}+|quimigaci\p{L}+|fertirri\p{L}+)`),
			warn:  regexp.MustCompile(`(?i)inyec|quimigaci|fertirri|reflujo`),
			order: regexp.MustCompile(`(?:^|[.!?:] )(?:Inyecte|Inyecten|Fertirriegue) `),
			example: "> **ADVERTENCIA** Nunca inyecte sin la protección contra reflujo que pide su código local. Lo que " +
				"regresa puede envenenar un pozo.",
		},
		{
			name: "nitrate in drinking water", stems: []string{"beb", "otable", "tomar"}, enough: 2,
			talk: words(`(?:agua (?:potable|de beber|para beber|para tomar)|pozos? (?:de agua potable|para beber)|` +
				`beben? (?:agua )?de(?:l)?)`),
			warn: regexp.MustCompile(`(?i)beb[ea]|potable|tomar`),
			example: "> **ADVERTENCIA** El nitrato en el agua potable puede enfermar a los bebés. Haga analizar el pozo de la " +
				"casa. Hervir el agua no lo quita.",
		},
	}
})
