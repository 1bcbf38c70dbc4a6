package render

import (
	"bytes"
	"strconv"
	"strings"
	"time"
)

// DateWords is how a date is written.
type DateWords struct {
	Pattern Sentence   `yaml:"pattern" blanks:"day,month,year"`
	Months  [12]string `yaml:"months"`
}

// InWords gives a date like 2026-09-14 in words. A text that is no date is given back as it is.
func (d DateWords) InWords(iso string) string {
	t, err := time.Parse(time.DateOnly, iso)
	if err != nil {
		return iso
	}
	var b strings.Builder
	for _, p := range d.Pattern.parts {
		switch {
		case !p.blank:
			b.WriteString(p.text)
		case p.text == "day":
			b.WriteString(strconv.Itoa(t.Day()))
		case p.text == "month":
			b.WriteString(d.Months[t.Month()-1])
		case p.text == "year":
			b.WriteString(strconv.Itoa(t.Year()))
		}
	}
	return b.String()
}

// dated writes a sentence of one blank, the date.
func (d DateWords) dated(w *bytes.Buffer, s Sentence, iso string) {
	s.write(w, func(string) { d.day(w, iso) })
}

// day writes a date in words.
func (d DateWords) day(w *bytes.Buffer, iso string) {
	w.WriteString("<time")
	attribute(w, "datetime", iso)
	w.WriteByte('>')
	text(w, d.InWords(iso))
	w.WriteString("</time>")
}
