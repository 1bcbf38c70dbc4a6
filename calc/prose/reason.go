package prose

// A reason says why the grammar lets a number go.
type reason uint8

const (
	taken     reason = iota // it is an amount
	asNothing               // no number begins here

	asGrade
	asDate
	asClock
	asCode
	asAddress
	asName
	asYear
	asThing
	asDistance
	asEveryday
	asPeople
	asPlaceWord
	asLongerWord
	asRateOnly
	asNominal
	asBase
	asOrdinal
	asTime
	asMeasure
	asShared
	asBroken
	asCount
	reasonCount
)

// reasons gives the name of each reason to let a number go, and the sentence that explains it to an author.
var reasons = [reasonCount]struct{ name, sentence string }{
	asGrade:      {"grade", "numbers joined by dashes are the grade of a material"},
	asDate:       {"date", "it is part of a date"},
	asClock:      {"time of day", "it is a time of day"},
	asCode:       {"code", "it is part of a longer number, as of a telephone, or of a version"},
	asAddress:    {"address", "it is part of the address of a page"},
	asName:       {"name", "it is part of a name or numbers one of several, as in row 12 or UAN-32"},
	asYear:       {"year", "it is a year"},
	asThing:      {"thing", "it is part of the name of a thing, as in a 5-gallon bucket"},
	asDistance:   {"distance", "it says how far away something is"},
	asEveryday:   {"everyday", "it is a percentage of everyday life, as a discount is"},
	asPeople:     {"people", "it is a share of people"},
	asPlaceWord:  {"place word", "the word after it names a place and is not a unit, as in 4 in the row"},
	asLongerWord: {"longer word", "what looks like its unit is part of a longer word"},
	asRateOnly:   {"rate only", "its unit counts only in a rate, as in trees an acre"},
	asNominal:    {"unit of something", "a unit is a pound only of a nutrient, as in 48 units of nitrogen"},
	asBase:       {"base", "it is what other amounts are for, as in a pound for an acre, or it only means some of it"},
	asOrdinal:    {"ordinal", "it is a place in an order, or a part of something without a unit"},
	asTime:       {"time", "it is a length of time, which is compared only between a page and its translation"},
	asMeasure:    {"measure", "its unit counts only on a page whose worksheets work with it"},
	asShared:     {"shared unit", "its unit is that of the next number, as in 18 by 22 ft"},
	asBroken:     {"broken range", "the range ends below its start"},
	asCount:      {"count", "no unit follows it: it is a count, or a number alone"},
}

// unless gives the reason when something does not hold.
func unless(holds bool, why reason) reason {
	if holds {
		return taken
	}
	return why
}
