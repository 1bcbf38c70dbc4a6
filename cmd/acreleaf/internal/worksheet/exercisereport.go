package worksheet

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"acreleaf/calc/practice"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// mostPrinted is how many values a line of a report may have that nobody asks about: each is a text in the page.
const mostPrinted = 40

// readReport reads the lines of a report: each is a label, a comma, and a given in braces or what the line may say.
func (r *exerciseReader) readReport() {
	if entry, is := r.entries[keyReport]; is {
		r.fault(entry.ValueSpan, "exercise-report", "a report is a list of lines, each with a name",
			"for example:\nreport:\n  ph: pH, 6.6 to 7.8 units, every 0.2")
		return
	}
	wanted := false
	var first *markdown.Entry
	for i, entry := range r.block.Entries {
		name, is := strings.CutPrefix(entry.Key, keyReport+".")
		if !is {
			continue
		}
		if first == nil {
			first = &r.block.Entries[i]
		}
		label, rest, found := strings.Cut(entry.Value, ", ")
		if !found {
			example := "Phosphorus, 8 to 24 ppm, every 2"
			if given := mention.FindStringSubmatch(entry.Value); given != nil {
				wanted, r.mentions[given[1]] = true, true // one mistake is reported once
				example = "Nitrate, " + given[0]
			}
			r.fault(entry.ValueSpan, "exercise-report", "this line of the report has no label and comma before its number",
				"write the label first: "+name+": "+example)
			continue
		}
		line := practice.Line{Name: name, Label: label}
		if place := mention.FindStringSubmatchIndex(rest); place != nil {
			wanted = true
			piece, good := r.mentioned(rest[place[2]:place[3]], entry.ValueSpan, "exercise-report")
			if alone := place[0] == 0 && place[1] == len(rest); good && !alone {
				r.fault(entry.ValueSpan, "exercise-report", "there is more in this line of the report than its given",
					"write the given alone after the label: "+label+", "+rest[place[0]:place[1]])
			}
			line.Given = piece
		} else {
			line.Values = r.printed(entry, r.language.PointDecimals(rest))
		}
		r.made.Practice.Report = append(r.made.Practice.Report, line)
	}
	if first != nil && !wanted {
		r.fault(first.KeySpan, "exercise-report", "the report has no given of this exercise, so nobody needs it",
			"put one into a line: nitrate: Nitrate, {"+r.names(givenNames)[0]+"}")
	}
}

// printedLine is what a line may say that nobody asks about: one number, a list, or a range with a step; and the unit.
var printedLine = regexp.MustCompile(`^([\d.]+(?:, [\d.]+)*)(?: to ([\d.]+))? ([^\d\s].*?)(?:, every ([\d.]+))?$`)

var unitless = regexp.MustCompile(`^[\d.]+(?:(?:, | to )[\d.]+)*(?:, every [\d.]+)?$`)

// printed lists all that such a line may say, with its unit.
func (r *exerciseReader) printed(entry markdown.Entry, text string) []string {
	refuse := func(problem string) []string {
		r.fault(entry.ValueSpan, "exercise-report", problem,
			"write a number or a range with the unit that a laboratory prints: 8 to 24 ppm, every 2")
		return nil
	}
	found := printedLine.FindStringSubmatch(text)
	switch {
	case unitless.MatchString(text):
		return refuse("this line of the report has no unit")
	case found == nil || (found[2] == "") != (found[4] == "") || found[2] != "" && strings.Contains(found[1], ","):
		return refuse(fmt.Sprintf("%q is not a number with its unit, nor a range with a step", text))
	}
	var list []string
	if found[2] == "" {
		for _, number := range strings.Split(found[1], ", ") {
			if !plain.MatchString(number) {
				return refuse(fmt.Sprintf("%q is not a number", number))
			}
			list = append(list, number+" "+found[3])
		}
	} else {
		list = steps(found[1], found[2], found[4], found[3])
	}
	if len(list) == 0 || len(list) > mostPrinted {
		return refuse(fmt.Sprintf("this range has %d numbers, and a line of a report may have 1 to %d", len(list),
			mostPrinted))
	}
	return list
}

// steps goes from one number to another, with as many decimals as the two or the step are written with.
func steps(from, to, by, unit string) []string {
	low, errLow := strconv.ParseFloat(from, 64)
	high, errHigh := strconv.ParseFloat(to, 64)
	step, errStep := strconv.ParseFloat(by, 64)
	if errLow != nil || errHigh != nil || errStep != nil || !(step > 0) || !(low < high) || (high-low)/step > mostValues {
		return nil
	}
	places := max(decimals(from), decimals(by))
	var list []string
	for i := range int((high-low)/step+slack) + 1 {
		list = append(list, strconv.FormatFloat(low+float64(i)*step, 'f', places, 64)+" "+unit)
	}
	return list
}

// slack is for the last bits of a division that comes to a whole number.
const slack = 1e-9
