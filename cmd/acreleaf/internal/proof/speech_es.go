package proof

const (
	handlesSpanish = `a(?:gregue|ñada|plique)|alimente|bombee|diluya|eche|guarde|inyecte|mande|mezcle|mida|pase|ponga|` +
		`use|vierta`
	cleansSpanish = `(?:desinfecte|enjuague|lave|limpie|purgue|trate)n?`
	// articlesSpanish are between a verb and acid as a thing.
	articlesSpanish = `(?:el|ese|este|los|más|su|un|un poco de) `
	feedsSpanish    = `abonos?|fertilizantes?|nitrógeno|nutrientes?|potasa|urea|UAN|CAN-?17|AN-?20|NH3|\d+-\d+-\d+`
	linesSpanish    = `(?:riego|goteo|goteros?|aspersores|microaspersores|sistema de riego|agua de riego|mangueras?)`
	peopleSpanish   = `alguien|bebés?|niños?|familias?|gente|trabajadores|ustedes|usted`
)

func spanishSpeech() map[string]speech {
	return map[string]speech{
		"acid": {
			stems: []string{"cid", "16s"}, enough: 2,
			talk: words(`(?:ácidos? (?:sulfúrico|nítrico|fosfórico|clorhídrico|muriático|fuerte|concentrado)s?|` +
				`(?:materiales|fertilizantes|productos) ácidos|inyect\p{L}+ (?:un |el )?ácidos?|` +
				`ácidos? (?:en|a) (?:el |la )?(?:agua|línea|tanque)s?)`),
			warn: words(`ácidos?`),
			order: wordsOrAcid(ordered(handlesSpanish+`|`+cleansSpanish,
				`ácido (?:sulfúrico|nítrico|fosfórico|clorhídrico|muriático)|15-0-0-16S`),
				`(?:`+handlesSpanish+`) (?:`+articlesSpanish+`)?ácidos?|`+
					ordered(handlesSpanish+`|`+cleansSpanish, `con (?:`+articlesSpanish+`)?ácidos?`),
				`a|al|antes|cada|cuando|después|diluido|en|hasta|o|para|por|y`),
		},
		"ammonia": {
			stems: []string{"mon", "nh3", "82-0-0", "20-0-0"}, enough: 2,
			talk: words(`(?:amon[ií]aco (?:anhidro|acuoso|líquido)|agua amoniacal|(?:materiales|fertilizantes) amoniacales|` +
				`(?:materiales|fertilizantes|tanques?|solución) (?:de|con) amon[ií]aco)`),
			warn: words(`amon[ií]ac\p{L}+|NH3`),
			order: words(ordered(handlesSpanish,
				`amon[ií]aco (?:anhidro|acuoso|líquido)|agua amoniacal|NH3|82-0-0|20-0-0`)),
		},
		"backflow": {
			stems:  []string{"nyec", "uimigaci", "ertirri", "eflujo", "riego", "gote", "spersor", "manguera"},
			enough: 3,
			talks:  []string{"nyec", "uimigaci", "ertirri"},
			talk:   words(`inyec[tc]\p{L}+|quimigaci\p{L}+|fertirri\p{L}+`),
			warn:   words(`inyec\p{L}+|quimigaci\p{L}+|fertirri\p{L}+|reflujo`),
			order: words(`(?-i:(?:Inyecte|Inyecten|Fertirriegue) )\p{L}*|` + ordered(handlesSpanish, `(?:`+feedsSpanish+
				`)[^.!?]{0,40} (?:por|en|con|a través de) (?:el |la |los |las |su )?`+linesSpanish)),
		},
		"drinking-water": {
			stems: []string{"beb", "otable", "tomar", "toma", "biber", "órmula"}, enough: 2,
			talk: words(`(?:agua (?:potable|de beber|para beber|para tomar)|pozos? (?:de agua potable|para beber)|` +
				`beben? (?:agua )?de(?:l)?)`),
			warn: words(`beb[ea]\p{L}*|potable|tomar`),
			order: words(`nitratos? [^.!?]{0,60}agua (?:potable|de beber|para beber)|` +
				`agua (?:potable|de beber|para beber)[^.!?]{0,60} nitratos?|fórmula (?:para|de) (?:el |los |su )?bebés?|` +
				`biberon(?:es)?|biberón|(?:` + peopleSpanish + `) (?:\p{L}+ )?(?:beben?|toman?) [^.!?]{0,30}(?:agua|pozo)`),
		},
		"chlorine": {
			stems: []string{"clor", "lanqueador", "lejía"}, enough: 2,
			talk:  words(`cloro|clora(?:r|ción|do)|hipoclorito|blanqueador|lejía`),
			warn:  words(`clor\p{L}+|hipoclorito|blanqueador|lejía`),
			order: words(ordered(handlesSpanish+`|`+cleansSpanish, `cloro|hipoclorito|blanqueador|lejía`)),
		},
		"fumigation": {
			stems: []string{"umig", "cloropicrina"}, enough: 2,
			talk: words(`fumiga\p{L}*|cloropicrina`),
			warn: words(`fumiga\p{L}+`),
			order: words(`(?-i:Fumigue|Fumiguen)|(?:debe|puede|para) fumigar|` +
				ordered(handlesSpanish, `fumigantes?|cloropicrina`)),
		},
		"raw-manure": {
			stems: []string{"stiércol"}, enough: 2,
			talk:  words(`estiércol (?:crudo|fresco)`),
			warn:  words(`estiércol`),
			order: words(ordered(handlesSpanish+`|esparza`, `estiércol (?:crudo|fresco)`)),
		},
	}
}
