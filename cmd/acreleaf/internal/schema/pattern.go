package schema

import "strings"

// The expressions below have nothing that one dialect of regular expressions reads in another way than the next: no
// look ahead, no names, no flags. A reader strips white space from the ends of a text and joins what is left with
// single spaces, so an expression allows for both.

const (
	filled       = `\S`
	languageCode = `[a-z]{2,3}`
	sourceID     = `^[a-z0-9]+(-[a-z0-9]+)*$`

	// ownName is how a calculation, a given and an answer may be called.
	ownName = `[a-z][a-z0-9]*(-[a-z0-9]+)*`

	// interval is one to four digits, not all of them 0, and a part of the calendar.
	interval = `([1-9][0-9]{0,3}|0[1-9][0-9]{0,2}|00[1-9][0-9]?|000[1-9])\s+(day|week|month|year)s?`

	// decimal is a number as a text.
	decimal = `[-+]?([0-9]+\.?[0-9]*|\.[0-9]+)`

	// start is how a number begins, with a dollar sign if it is money.
	start = `[-−]?(\$\s*[-−]?)?\.?[0-9]`

	// figure is what a quantity must have at least. Which units there are, and which fit, no expression can tell.
	figure = `^\s*` + start

	// twoFigures is what a range must have at least.
	twoFigures = figure + `.*(to|-|–)[^0-9]*[0-9]`

	// entry is the least of what is filled in for a number. A laboratory's < may come before it.
	entry = `^\s*<?\s*` + start

	// measure is the least of an entry that needs a unit: a letter or sign after the number, or a price.
	measure = entry + `.*[A-Za-z%$]|^\s*<?\s*[-−]?\$`

	// band is the least of a mark.
	band = `^(at least )?(at most )?\s*` + start

	// unitSign is what a unit must have at least.
	unitSign = `[A-Za-z%$]`

	// taken is a value that another worksheet of the page gives.
	taken = `^from +[a-z0-9-]+\.[a-z0-9-]+\s*$`

	// workLine gives a name to a formula. Whether there is such arithmetic, no expression can tell.
	workLine = `^\s*[a-z][a-z0-9]*(_[a-z0-9]+)*\s*=\s*[^=\s]`

	// question is what a check must have at least: a sign that compares.
	question = `[<>]|[=!]=`
)

// The parts of a web address: no user's name comes before the host, and in the branch after it a % has two digits.
const (
	scheme = `[Hh][Tt][Tt][Pp][Ss]?://`
	host   = "([^\\s/?#@:\\[\\]\\\\%^`{|}]+|\\[[0-9A-Fa-f:.]+\\])(:[0-9]*)?"
	branch = `(/([^\s?#%]|%[0-9A-Fa-f]{2})*)?`

	homeAddress = scheme + host + branch
	webAddress  = homeAddress + `(\?[^\s#]*)?(#([^\s%]|%[0-9A-Fa-f]{2})*)?`
)

// The days of the calendar: months by their length, and 29 February in the years that 4 divides but not 100, or 400.
const (
	longMonths  = `(0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])`
	shortMonths = `(0[469]|11)-(0[1-9]|[12][0-9]|30)`
	february    = `02-(0[1-9]|1[0-9]|2[0-8])`
	leapYear    = `([0-9]{2}(0[48]|[2468][048]|[13579][26])|([02468][048]|[13579][26])00)`

	day = `([0-9]{4}-(` + longMonths + `|` + shortMonths + `|` + february + `)|` + leapYear + `-02-29)`
)

// whole is an expression for all of a text, with white space around it.
func whole(expression string) string { return `^\s*(` + expression + `)\s*$` }

// orNone is whole for a text that may be left empty.
func orNone(expression string) string { return `^\s*(` + expression + `)?\s*$` }

// anyCase is an expression for words in small or in capital letters.
func anyCase(words []string) string {
	var b strings.Builder
	for i, word := range words {
		if i > 0 {
			b.WriteByte('|')
		}
		for _, letter := range word {
			b.WriteString("[" + strings.ToUpper(string(letter)) + string(letter) + "]")
		}
	}
	return b.String()
}
