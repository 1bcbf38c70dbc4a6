package main

import (
	"fmt"
	"strings"

	"acreleaf/calc/unit"
)

const unitsBefore = `This page lists every unit and substance that can be read, and all ways to write each.
They are the same for what is given, for a figure in a sentence, for the figures of a source, for a file of rows
and for your own calculations. In a sentence there are more words, in English and in Spanish.

## A number

| you write | it is read as |
| --- | --- |
| ` + "`1,200`" + ` | a comma parts thousands |
| ` + "`0.5`" + `, ` + "`.5`" + ` | a point comes before decimals |
| ` + "`12,5`" + ` | a comma comes before decimals on a page in Spanish; a page in English asks for a point |
| ` + "`½`" + `, ` + "`1/2`" + `, ` + "`2 1/2`" + `, ` + "`2½`" + ` | a fraction |
| ` + "`3 to 4`" + `, ` + "`3-4`" + `, ` + "`3–4`" + ` | a range, the lower number first |
| ` + "`<5`" + ` | less than the lab can measure: anything from nothing to that |
| ` + "`18' 6\"`" + `, ` + "`5 ft 6 in`" + ` | feet and inches |
| ` + "`$2.50/lb`" + ` | money, its sign first |

Write a number of a worksheet in digits. In a sentence it may be a word too.

## How units are put together

- A stroke or the words ` + "`per`, `a`, `an`, `each` and `every`" + ` divide: ` + "`lb/ac`, `lb an acre`" + `.
- A space or a raised dot multiplies.
- A number after a length is its power: ` + "`ft2`, `m³`" + `.
  So are the words ` + "`square`, `sq`, `cubic` and `cu`" + ` before it.
- A substance comes after its unit: ` + "`lb N/ac`, `ppm NO3-N`" + `. What carries it follows the word ` + "`of`" + `:
  ` + "`ppm NO3-N of soil`" + `.
- An account comes at the end: ` + "`lb N/ac fed`, `lb N/ac taken up`, `lb N/ac present`" + `.

Capitals count only where they tell two units apart: ` + "`mg` and `Mg`" + `.

Each given lists what it takes on the page of [every calculation](calculations.md). A unit of the wrong kind or the
wrong substance is refused, with what to write.

## Units
`

const substancesBefore = `
## Substances

Capitals do not count in these words. A dash may be left out or typed low: ` + "`NO3N`, `NO3_N`" + `.
Small figures are read too: ` + "`NO₃`" + `. The nitrogen in nitrate is not the nitrate:
a number as ` + "`NO3`" + ` is 4.43 times the same as ` + "`NO3-N`" + `.
` + "`N`" + ` alone is nitrogen of any form.

| write | or |
| --- | --- |
`

// unitsPage is made from the units that can be read.
func unitsPage() *manualPage {
	var b strings.Builder
	b.WriteString(unitsBefore)
	for _, g := range unit.Groups() {
		fmt.Fprintf(&b, "\n### %s\n\n| write | or | it is |\n| --- | --- | --- |\n", g.Measures)
		for _, u := range g.Units {
			worth := ""
			if u.Worth != "" {
				worth = "`" + u.Worth + "`"
			}
			fmt.Fprintf(&b, "| `%s` | %s | %s |\n", u.Name, codes(u.Words), worth)
		}
	}
	b.WriteString(substancesBefore)
	for _, s := range unit.ListedSubstances() {
		fmt.Fprintf(&b, "| `%s` | %s |\n", s.Name, codes(s.Words))
	}
	return &manualPage{name: "units", title: "Every unit", order: 31, body: b.String(),
		summary: "The units and substances that can be read, and every way to write them."}
}

// codes writes words as code, with commas between them.
func codes(words []string) string {
	var cells []string
	for _, word := range words {
		cells = append(cells, "`"+word+"`")
	}
	return strings.Join(cells, ", ")
}
