package schema

import "regexp"

// An exception is a text of which a reader knows more than a schema can say: the reader refuses it, and the schema
// takes it. Where the schema is the stricter one, it is the other way round; what a schema marks should be a slip.
type exception struct {
	schema   string
	at, ids  *regexp.Regexp // the place, and the faults that the reader finds
	stricter bool
	why      string
}

func beyond(schema, at, ids, why string) exception {
	return exception{schema: schema, at: whollyLike(at), ids: whollyLike("(" + ids + ")( (" + ids + "))*"), why: why}
}

func whollyLike(expression string) *regexp.Regexp {
	return regexp.MustCompile("^(" + expression + ")$")
}

const (
	units = "which units there are, and which fit each other, takes the arithmetic of units"
	owned = "a calculation of the site's own, and what is in it, is in another file"
	names = "whether another place has that name: a schema cannot look from one value to another"
)

var exceptions = []exception{
	beyond("site.json", "reading > .*", "reading-limit",
		"a number in quotes is a text to a schema, and texts have no most"),
	beyond("site.json", "language|see( > .*)?|(hazards > .* > says|crop|tagline|local-rule|notice|contact > name)( > .*)?",
		"(hazard|site)-language|key-missing|key-unknown|notice-missing",
		"which languages a site has, is said by another key"),
	beyond("page.json", "order|minutes", "value-kind",
		"1e5 and 100000 are the same to a schema; the reader wants plain digits"),
	beyond("site.json", "reading > .*", "value-kind",
		"1e1 and 10 are the same to a schema; the reader wants plain digits"),

	beyond("sources.json", "[a-z-]+ > figures > .*", "source-figure-unreadable", units),

	beyond("calculation.json", ".* > (unit|also|units)", "calculation-unit|formula-units", units),
	beyond("calculation.json", "givens > .* > example", "calculation-given|calculation-range|calculation-unit", units),
	beyond("calculation.json", "givens > .* > range", "calculation-range", units),
	beyond("calculation.json", "constants > .* > value", "calculation-constant|formula-units", units),
	beyond("calculation.json", "constants > overlap > value", "formula-zero", "what is divided by, takes the arithmetic"),
	beyond("calculation.json", "constants > .* > source", "calculation-source",
		"whether a source of that id is in sources.yaml is in another file"),
	beyond("calculation.json", "checks > .* > hazard", "calculation-hazard",
		"a hazard of the site's own is in another file"),
	beyond("calculation.json", "(givens|constants)( > [^>]*)?", "formula-name", names),
	beyond("calculation.json", "(answers|steps) > [^>]*", "calculation-answer", names),
	beyond("calculation.json", "work", "calculation-answer", names),
	beyond("calculation.json", "(checks|cases) > .* > when", "formula-name", names),
	beyond("calculation.json", "sentence", "calculation-sentence", "whether there are cases, is said by another key"),

	beyond("worksheet.json", ".* > calculation", "calculation-unknown", owned),
	beyond("worksheet.json", "[a-z-]+ > [a-z-]+", "quantity-unfit", units),
	beyond("worksheet.json", "[a-z-]+ > [a-z-]+", "example-refused", "what has no answer, takes the arithmetic"),
	beyond("worksheet.json", "[a-z-]+ > [a-z-]+", "link-unfit", names),
	beyond("worksheet.json", "spray > .*", "given-missing|given-unknown", owned),

	beyond("drawing.json", "of", "drawing-of|drawing-unfit", "which worksheets the page has, is outside the block"),

	beyond("reckoner.json", ".* > calculation", "calculation-unknown", owned),
	beyond("reckoner.json", "[a-z-]+ > [a-z-]+", "quantity-unfit", units),
	beyond("reckoner.json", "[a-z-]+ > [a-z-]+", "example-refused", "what has no answer, takes the arithmetic"),
	beyond("reckoner.json", "[a-z-]+ > [a-z-]+", "link-unfit", names),
	beyond("reckoner.json", "follow > follow", "link-unknown", names),
	beyond("reckoner.json", "spray > (down|across)", "axis-unfit", owned),
	beyond("reckoner.json", "spray > show", "answer-unknown", owned),

	{schema: "worksheet.json", at: whollyLike(".* > title"), ids: whollyLike(""), stricter: true,
		why: "the word null is a title to the reader; to a schema it is the same as nothing, which is refused"},
	{schema: "reckoner.json", at: whollyLike(".* > title"), ids: whollyLike(""), stricter: true,
		why: "the word null is a title to the reader; to a schema it is the same as nothing, which is refused"},
	{schema: "drawing.json", at: whollyLike("title"), ids: whollyLike(""), stricter: true,
		why: "the word null is a title to the reader; to a schema it is the same as nothing, which is refused"},
	{schema: "reference.json", at: whollyLike("title"), ids: whollyLike(""), stricter: true,
		why: "the word null is a title to the reader; to a schema it is the same as nothing, which is refused"},
}
