package rows

import (
	"fmt"
	"regexp"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// mostReadings is how many different cells of a column are remembered. A column of a large file often has few.
const mostReadings = 1 << 10

// entry reads a cell of a given. there is false if the cell is empty.
func (c *column) entry(text string, separator byte) (e sheet.Entry, there bool, err error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return sheet.Entry{}, false, nil
	}
	r, known := c.read[text]
	if !known {
		if len(c.read) == mostReadings {
			clear(c.read)
		}
		r.entry, r.err = c.parse(text, separator)
		c.read[text] = r
	}
	return r.entry, true, r.err
}

// parse reads a cell that is not empty.
func (c *column) parse(text string, separator byte) (sheet.Entry, error) {
	g := c.given
	if g.Date || len(g.Choices) > 0 {
		return g.Read(text)
	}
	if spaced := thousands.FindString(text); spaced != "" {
		text = strings.NewReplacer(" ", "", "\u00A0", "", "\u202F", "").Replace(spaced) + text[len(spaced):]
	}
	if separator != ',' {
		text = unit.PointDecimals(text)
	}
	if separator != ',' && strings.Contains(text, ",") {
		// Where a file is parted by semicolons, a comma is most often a decimal point, and 1,250 would be read as 1250.
		return sheet.Entry{}, fmt.Errorf("%q: the comma may be a decimal point or may separate thousands; "+
			"write 1.25 with a point, and 1250 without a comma", text)
	}
	number := text
	if strings.HasPrefix(c.unit, "$") {
		number = strings.TrimPrefix(text, "$") // the unit has it too
	}
	if c.unit != "" && bare(number) {
		return g.Read(number + " " + c.unit)
	}
	e, err := g.Read(text)
	if err != nil && g.Unit.String() != "" && bare(text) {
		if _, notNumber := unit.ParseRange(strings.TrimPrefix(text, "<")); notNumber == nil {
			err = fmt.Errorf("%w, or put the unit in the name of the column: %s", err, heading(g))
		}
	}
	return e, err
}

// thousands finds a number whose thousands a space parts at the start of a cell, where one number stands: 4 200.
var thousands = regexp.MustCompile(`^\d{1,3}(?:[ \x{A0}\x{202F}]\d{3})+\b`)

// bare says whether a cell is a number or a range without a unit.
func bare(text string) bool {
	first, second, _ := strings.Cut(text, " to ")
	return strings.Trim(first+second, "0123456789.,-–− <") == ""
}
