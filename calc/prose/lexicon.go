package prose

// A lexicon is all that a language adds to the grammar: its words, by what they do in a sentence. In a list, words are
// between spaces, and an underline is a space in a word. In a table, a row begins with what its words stand for, and
// rows are between bars.
//
// What a language does not have is left out: the grammar asks only whether a word is in a list.
type lexicon struct {
	code string // of the language, as in the metadata of a page

	numbers   string // table by value: one to nineteen, the tens, the hundreds that are one word
	scales    string // table by value, after a number: hundred, couple of
	fractions string // table by what one is divided by: half, third
	halves    string // fractions that a unit may follow at once: half an inch
	articles  string // between a fraction and its unit: half an inch
	ones      string // words for one that are as often an article: a, una
	counting  string // articles that are told from a number by the word after them: a pound
	bareHalf  bool   // a unit without a number may be one of it, with a fraction after it: libra y media
	and       string // between a number and its fraction, or the two numbers of a range
	between   string // before a range whose numbers are joined by and
	to        string // between the two numbers of a range
	comma     bool   // a comma is before decimals: 12,5
	plain     string // pairs of letters: the first is often typed as the second

	units      string // table by symbol
	onlyBefore string // rows of a word that is a unit only before the others of its row: 12 in of water
	fillers    string // between a number and its unit: more, full, or so
	adjectives string // after a unit, before what it is of: libras netas de nitrógeno
	substances string // table by symbol
	of         string // between a unit and its substance, or a fraction and its unit
	as         string // between a share and its form: 12 ppm as NO3
	pointing   string // between "of" and a substance: this, the
	hedges     string // before one of a unit, how near it is: nearly a pound

	per       string // before what a rate is for; any unit may follow
	each      string // the same, before one thing: each, an
	perEach   string // the same in several words, for each one; a number may follow: for every 100 gal
	perPlace  string // the same, for where it goes: on each
	perBare   string // those of the last two that a rate may begin with that leaves its unit out: 64 to the acre
	bases     string // table by symbol of what only a rate is for: tree, hour
	one       string // table by symbol of what a rate is for, one word each: pound, tree
	rows      string // after trees they make a row of them: each tree row
	forEach   string // in a sentence they say what one of a unit is for: each tree
	uncounted string // after an article they are what an amount is for: 48 lb an acre
	joining   string // between the lengths of a spacing, also with dashes: 12-by-18-foot

	measures string // table by symbol of units that are of the trade only where a page works with them: hp
	longer   string // table by symbol of times that no rate is told by: month
	often    string // before "a month" they make a rate of it: once, times
	lasting  string // between a count and "a month" they keep the two apart: for, before
	plural   string // the ending of a thing in the plural
	months   string // the twelve, in order
	dayFirst string // between a day and its month: 20 de abril. None where the month is first: April 20

	named     string // before a number they make it a name, or a plain number: row 12, May 4, multiply 2
	things    string // with a unit they name a thing: a 5-gallon bucket
	doses     string // after a unit with a dash they name no thing: a 2-inch irrigation
	away      string // after a length they make it a distance: ten feet away
	offers    string // with a percentage they make it one of daily life: a 20 percent discount
	people    string // a percentage of them is none of the trade
	thePeople string // between "of" and people: the
}
