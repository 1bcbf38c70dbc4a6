package schema

import (
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// text is a key with one line of text after it. A number is taken for its digits.
func text(sentence string) form {
	return form{"description": sentence, "type": []string{"string", "number"}}
}

func need(f form) form {
	f[needed] = true
	return f
}

func pattern(sentence, expression string) form {
	return form{"description": sentence, "type": "string", "pattern": expression}
}

// list is one text, or a list of them.
func list(sentence string, item form) form {
	delete(item, "description")
	return form{"description": sentence, "anyOf": []object{item, {"type": "array", "items": item}}}
}

const (
	languageCode = "^[a-z]{2,3}$"
	webAddress   = "^https?://"
	dayForm      = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
)

var pageForms = map[string]form{
	"title":        need(text("The title of the page.")),
	"summary":      need(text("One sentence that says what a reader gets from the page.")),
	"language":     pattern("The code of the language that the page is written in, such as en.", languageCode),
	"reviewed":     pattern("The day on which somebody last looked the page through: 2026-09-14.", dayForm),
	"review-every": pattern("How long a review holds: 24 months.", "^[0-9]{1,4} (day|week|month|year)s?$"),
	"crop":         text("The crop that the page is about."),
	"order":        {"description": "The place of the page in the season.", "type": "number"},
	"season":       text("The part of the season that the page is for: before bud break."),
	"glance":       list("Answers for the line at the top, such as soil.nitrogen.", text("")),
}

var siteForms = map[string]form{
	"office":     need(text("The name of the office that signs the guides.")),
	"crop":       text("What the guides are about."),
	"tagline":    text("One sentence under the name of the office."),
	"language":   list("The codes of the languages of the site, the main one first.", pattern("", languageCode)),
	"address":    pattern("Where the site will stand, as a web address.", webAddress),
	"licence":    text("How others may use the guides."),
	"local-rule": text("The notice that labels and local rules come first."),
	"invented":   {"description": "Whether people, places and numbers are made up.", "type": "boolean"},
	"notice":     text("The sentence that every page of a made-up site shows."),
	"reading": {
		"description": "How hard a text may be, by language: a school grade for en, an ease for es.", "type": "object",
		"propertyNames": object{"pattern": languageCode}, "additionalProperties": object{"type": "number"},
	},
}

var contactForms = map[string]form{
	"name":  text("Who answers."),
	"email": text("An address for mail."),
	"phone": text("A telephone number."),
}

var sourceForms = map[string]form{
	"authors":   text("Who wrote it."),
	"year":      text("The year it came out."),
	"title":     need(text("The title of the work.")),
	"publisher": text("Who published it."),
	"address":   pattern("Where it can be read, as a web address.", webAddress),
	"kind":      need(form{"description": "What sort of source it is.", "enum": config.Kinds}),
	"note":      text("What it says, in your own words."),
	"figures": {
		"description": "The figures that it gives, each with what it is the figure of.", "type": "object",
		"additionalProperties": text("What it is the figure of."),
	},
}

// definitionTop are the keys of a calculation; those with tables of their own come from definitionForms.
var definitionTop = map[string]form{
	"title":   need(text("What the calculation works out.")),
	"summary": need(text("What it does, in a sentence.")),
	"work":    need(list("The arithmetic, a line each: volume = rate * area.", text(""))),
	"notes":   list("Sentences that stand below the answers.", text("")),
}

var definitionSays = map[string]string{
	"givens":    "What the reader fills in, by name.",
	"constants": "Figures that are known, by name, with their sources.",
	"answers":   "What is worked out, by name.",
	"steps":     "What is worked out on the way, by name.",
	"checks":    "What is said when the numbers ask for it, by name.",
}

var resultForms = map[string]form{
	"label": text("What the reader sees beside the number."),
	"unit":  text("Its unit: gal/ac, or number for a plain number."),
	"also":  text("A second unit to show it in."),
}

var definitionForms = map[string]map[string]form{
	"givens": {
		"label":   need(text("What the reader sees beside the box.")),
		"example": need(text("An ordinary value with its unit: 12 in.")),
		"range":   need(text("The least and the most that is taken: 0 to 72.")),
		"hint":    text("A line of help below the box."),
		"units":   list("Other units to offer.", text("")),
	},
	"constants": {
		"label":  need(text("What the figure is.")),
		"value":  need(text("The figure with its unit: 8.34 lb water/gal.")),
		"source": need(text("Where it is from, or the name of a source in sources.yaml.")),
		"sure":   {"description": "How sure it is.", "enum": worksheet.SurenessNames()},
		"note":   text("What else there is to say of it."),
	},
	"answers": {"label": need(text("What the reader sees beside the answer.")), "unit": need(text("Its unit.")),
		"also": resultForms["also"]},
	"steps": resultForms,
	"checks": {
		"when":   need(text("A question, such as: speed > \"6 mi/h\".")),
		"say":    need(text("What the reader is told.")),
		"signal": {"description": "How strongly it speaks.", "enum": worksheet.SignalNames()},
	},
}
