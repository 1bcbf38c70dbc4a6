package schema

import (
	"regexp"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/reading"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

var pageForms = map[string]form{
	"title":        need("The title of the page."),
	"summary":      need("One sentence that says what a reader gets from the page."),
	"language":     shaped("The code of the language that the page is written in, such as en.", languageCode),
	"reviewed":     shaped("The day on which somebody last reviewed the page: 2026-09-14.", day),
	"review-every": shaped("How long a review holds: 24 months.", interval),
	"changes": {
		"description": "What changed on the page, each after its day: the newest first.", "type": "object",
		"propertyNames":        object{"pattern": "^" + day + "$"},
		"additionalProperties": bare(need("What changed, in a sentence.")),
	},
	"crop":       line("The crop that the page is about."),
	"order":      number("The place of the page in the season."),
	"season":     line("The part of the season that the page is for: before bud break."),
	"translates": line("The file of the page that this one translates, in the same folder, such as soil.md."),
	"questions": {
		"description": "On the home page: questions that people come with, each after the page that answers it.",
		"type":        "object", "additionalProperties": bare(need("The question.")),
	},
	"terms":    termsOfPage(),
	"glance":   list(line("Answers for the line at the top, such as soil.nitrogen.")),
	"outcomes": list(line("In a lesson: what a learner can do afterwards.")),
	"minutes":  minutes(),
	"after":    list(line("In a lesson: the pages that come before it, such as ../../guides/soil.md.")),
}

// termsOfPage are words for all of a page, or for each of its parts.
func termsOfPage() form {
	words := list(line("Words of the index that lead here, such as ppm, or nitrate, in a well."))
	return form{
		"description": words["description"],
		"anyOf": []object{{"type": words["type"], "items": words["items"]},
			{"type": "object", "additionalProperties": object{"type": words["type"], "items": words["items"]}}},
	}
}

// minutes is a whole number of minutes, up to eight hours. It may be in quotes.
func minutes() form {
	return form{
		"description": "In a lesson: how many minutes it takes.", "type": []string{"integer", "string", "null"},
		"minimum": 1, "maximum": 480, "pattern": orNone(`\+?0*([1-9][0-9]?|[1-3][0-9]{2}|4[0-7][0-9]|480)(\.0*)?`),
	}
}

var siteForms = map[string]form{
	"office":     need("The name of the office that signs the guides."),
	"crop":       perLanguage(line("What the guides are about.")),
	"tagline":    perLanguage(line("One sentence under the name of the office.")),
	"language":   languages(),
	"address":    shaped("Where the site will be, as a web address.", homeAddress),
	"licence":    line("How others may use the guides."),
	"local-rule": perLanguage(line("The notice that labels and local rules come first.")),
	"invented": {
		"description": "Whether people, places and numbers are made up.", "type": []string{"boolean", "string", "null"},
		"pattern": orNone(anyCase([]string{"true", "yes", "false", "no"})),
	},
	"notice":  perLanguage(line("The sentence that every page of a made-up site shows.")),
	"reading": readingLimits(),
	"hazards": ownHazards(),
	"see":     sees(),
}

// ownID is the expression of an id that an author gives.
const ownID = `[a-z0-9]+(-[a-z0-9]+)*`

// ownHazards are the hazards of an office, by ids that the table of the calculations does not have.
func ownHazards() form {
	return form{
		"description":   "Hazards of your own, by id: what a page that works with them must warn of.",
		"type":          "object",
		"propertyNames": object{"pattern": "^" + ownID + "$", "not": object{"enum": worksheet.HazardIDs()}},
		"additionalProperties": table("A hazard of your own.", config.HazardKeys(), map[string]form{
			"name": need("What it is called: wind machines."),
			"signal": {
				"description": "Its signal word.", needed: true, "anyOf": []object{{"enum": config.HazardSignals()},
					{"type": "string", "pattern": whole(anyCase(config.HazardSignals()))}},
			},
			"says":    perLanguage(need("What can happen, and what to do: one text, or one for each language of the site.")),
			"words":   list(line("Words by which a page speaks of it.")),
			"sources": list(line("The ids of the sources that it rests on.")),
		}),
	}
}

// inLanguages is a key with a text, or with one for each of some languages by its code.
func inLanguages(one form) form {
	f := perLanguage(one)
	texts := f["anyOf"].([]object)[1]
	texts["minProperties"] = 1
	return f
}

// sees are words of the index that lead to others, by language.
func sees() form {
	word := object{"type": []string{"string", "number", "boolean"}, "pattern": filled}
	return form{
		"description":   "Words that people look under, each with the words of the index that it leads to, by language.",
		"type":          "object",
		"propertyNames": object{"pattern": whole(languageCode)},
		"additionalProperties": object{"type": "object", "additionalProperties": object{"anyOf": []object{word,
			{"type": "array", "items": line(""), "contains": word}}}},
	}
}

// perLanguage is a key with a text, or with one for each language of the site by its code.
func perLanguage(one form) form {
	text := object{}
	for key, value := range one {
		if key != "description" && key != needed {
			text[key] = value
		}
	}
	must := need("")
	f := form{"description": one["description"], "anyOf": []object{text, {
		"type": "object", "propertyNames": object{"pattern": whole(languageCode)},
		"additionalProperties": object{"type": must["type"], "pattern": must["pattern"]},
	}}}
	if one[needed] != nil {
		f[needed] = one[needed]
	}
	return f
}

func languages() form {
	f := list(shaped("The codes of the languages of the site, the main one first.", languageCode))
	f["uniqueItems"] = true
	return f
}

// readingLimits are the languages whose texts can be measured. A number in quotes is not compared with the most.
func readingLimits() form {
	limits := object{}
	for _, language := range reading.Languages() {
		m := reading.For(language)
		f := number("The limit on the " + m.Name + ".")
		f["exclusiveMinimum"], f["maximum"] = 0, m.Most
		limits[language] = f
	}
	return form{
		"description": "How hard a text may be, by language: a school grade for en, an ease for es.", "type": "object",
		"properties": limits, "additionalProperties": false,
	}
}

// noticed is what a made-up site must have on top.
var noticed = object{
	"if": object{
		"properties": object{"invented": object{"anyOf": []object{
			{"const": true}, {"type": "string", "pattern": whole(anyCase([]string{"true", "yes"}))},
		}}},
		"required": []string{"invented"},
	},
	"then": object{"properties": object{"notice": object{"not": object{"anyOf": empty}}}, "required": []string{"notice"}},
}

// empty are the values that stand for nothing.
var empty = []object{{"type": "null"}, {"type": "string", "pattern": `^\s*$`}}

var contactForms = map[string]form{
	"name":  perLanguage(line("Who answers.")),
	"email": line("An address for mail."),
	"phone": line("A telephone number."),
}

// builtIn is the pattern of the ids that the calculations' own bibliography has.
func builtIn() string {
	var ids []string
	for _, source := range fact.Sources() {
		ids = append(ids, regexp.QuoteMeta(source.ID))
	}
	return "^(" + strings.Join(ids, "|") + ")$"
}

func sourceForms() map[string]form {
	var kinds []string
	for _, kind := range fact.Kinds {
		kinds = append(kinds, string(kind))
	}
	return map[string]form{
		"authors":   line("Who wrote it."),
		"year":      line("The year it came out."),
		"title":     need("The title of the work."),
		"publisher": line("Who published it."),
		"address":   shaped("Where it can be read, as a web address.", webAddress),
		"number":    line("The number of the publication, or its DOI, by which a library finds it."),
		"kind":      needChoice("What sort of source it is: "+strings.Join(kinds, ", ")+".", kinds),
		"note":      inLanguages(line("What it says, in your own words.")),
		"language":  shaped("The language of its figures, such as es for 12,5; en if you do not say.", languageCode),
		"figures": {
			"description": "The figures that it gives, each with what it is the figure of.", "type": "object",
			"propertyNames":        object{"pattern": figure},
			"additionalProperties": bare(inLanguages(need("What it is the figure of."))),
		},
	}
}
