package proof

const (
	handlesEnglish = `add|apply|blend|dilute|feed|inject|measure|meter|mix|pour|pump|put|run|send|spray|spread|store|use`
	cleansEnglish  = `clean|flush|rinse|shock|treat|wash`
	// articlesEnglish are between a verb and acid as a thing.
	articlesEnglish = `(?:a little|an?|dilute|diluted|more|some|strong|that|the|this|weak|your) `
	feedsEnglish    = `fertili[sz]ers?|feeds?|nitrogen|nutrients?|potash|urea|UAN|CAN-?17|AN-?20|NH3|\d+-\d+-\d+`
	linesEnglish    = `(?:irrigation|drip|micro-?sprinklers?|sprinklers?|emitters?|laterals?|water run|drip lines?)`
	peopleEnglish   = `anyone|anybody|bab(?:y|ies)|child(?:ren)?|crews?|famil(?:y|ies)|households?|infants?|people|` +
		`they|we|workers?|you`
)

func englishSpeech() map[string]speech {
	return map[string]speech{
		"acid": {
			stems: []string{"cid", "16s"}, enough: 2,
			talk: words(`(?:(?:sul(?:f|ph)uric|nitric|phosphoric|hydrochloric|muriatic|strong|concentrated) acids?|` +
				`acid (?:materials?|fertili[sz]ers?|products?|injection|tanks?)|inject(?:s|ed|ing)? (?:an |the )?acids?|` +
				`acids? (?:in|into|to) (?:the )?(?:water|lines?|tanks?))`),
			warn: words(`acids?`),
			order: wordsOrAcid(ordered(handlesEnglish+`|`+cleansEnglish,
				`(?:sul(?:f|ph)uric|nitric|phosphoric|hydrochloric|muriatic) acid|15-0-0-16S`),
				`(?:`+handlesEnglish+`) (?:`+articlesEnglish+`)?acids?|`+
					ordered(handlesEnglish+`|`+cleansEnglish, `with (?:`+articlesEnglish+`)?acids?`),
				`after|and|at|before|each|every|for|from|in|into|once|or|through|to|until|when|while`),
		},
		"ammonia": {
			stems: []string{"mmonia", "nh3", "82-0-0", "20-0-0"}, enough: 2,
			talk:  words(`(?:(?:anhydrous|aqua|liquid) ammonia|ammonia (?:materials?|fertili[sz]ers?|water|tanks?))`),
			warn:  words(`ammonia|NH3`),
			order: words(ordered(handlesEnglish, `(?:anhydrous|aqua|liquid) ammonia|NH3|82-0-0|20-0-0`)),
		},
		"backflow": {
			stems:  []string{"nject", "hemigat", "ertigat", "ackflow", "rip", "rrigation", "prinkler", "mitter", "water run"},
			enough: 3,
			talks:  []string{"nject", "hemigat", "ertigat"},
			talk:   words(`inject(?:s|ed|ing|ions?|ors?)?|chemigat\p{L}+|fertigat\p{L}+`),
			warn:   words(`inject\p{L}*|chemigat\p{L}*|fertigat\p{L}*|backflow|run back|runs back`),
			order: words(`(?-i:(?:Inject|Chemigate|Fertigate) )\p{L}*|` + ordered(handlesEnglish, `(?:`+feedsEnglish+
				`)[^.!?]{0,40} (?:through|into|in|with) (?:the |your |a )?`+linesEnglish)),
		},
		"drinking-water": {
			stems: []string{"rink", "formula"}, enough: 2,
			talk: words(`drinking[- ]water|drinking wells?|water (?:to|you|they|people) drink|drink(?:s|ing)? from`),
			warn: words(`drink\p{L}*`),
			order: words(`nitrate [^.!?]{0,60}drinking|drinking[- ]water[^.!?]{0,60} nitrate|` +
				`(?:baby|infant) (?:formula|bottles?)|(?:drink|drinks|drank) (?:the |this |that |your |our |from |of )*` +
				`(?:well|tap|pump)|(?:` + peopleEnglish + `) (?:\p{L}+ )?drinks? [^.!?]{0,30}(?:well|water)`),
		},
		"chlorine": {
			stems: []string{"chlor", "bleach"}, enough: 2,
			talk: words(`chlorine|chlorinat\p{L}+|hypochlorite|bleach`),
			warn: words(`chlor\p{L}+|bleach`),
			order: words(ordered(handlesEnglish+`|`+cleansEnglish, `chlorine|hypochlorite|bleach`) +
				`|(?-i:Chlorinate)`),
		},
		"fumigation": {
			stems: []string{"umiga", "chloropicrin"}, enough: 2,
			talk: words(`fumigat\p{L}+|fumigants?|chloropicrin`),
			warn: words(`fumiga\p{L}+`),
			order: words(`(?-i:Fumigate)|(?:can|may|must|should|to) fumigate|` +
				ordered(handlesEnglish, `fumigants?|chloropicrin`)),
		},
		"raw-manure": {
			stems: []string{"manure"}, enough: 2,
			talk:  words(`(?:raw|fresh|uncomposted) manure`),
			warn:  words(`manure`),
			order: words(ordered(handlesEnglish, `(?:raw|fresh|uncomposted) manure`)),
		},
	}
}
