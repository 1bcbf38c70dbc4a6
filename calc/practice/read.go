package practice

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/calc/words"
)

// An answer is one number, perhaps with a unit behind it. The page reads the same (theme/script/heard.ts), and the step
// "marking" of the checks compares the two.
var (
	fractionSign = regexp.MustCompile(`(\d[ -]?)?([¼-¾⅓-⅞])`)
	fraction     = regexp.MustCompile(`^([-−]?)(\$?)(?:([\d.,]+)[ -])?(\d+)/(\d+)(.*)$`)
	amount       = regexp.MustCompile(`^([-−]?)(\$?)([\d.,]+(?: × 10\^-?\d+)?)(.*)$`)
	startsMore   = regexp.MustCompile(`^[\d./]`)
	another      = regexp.MustCompile(`(?i)^\W*(?:e|(?:to|a|y|and|ft|foot|feet)\W+)?\W*\d| (?:to|a|y|and|[-–—]) ?\$?\d`)
)

var signs = map[string]string{"¼": "1/4", "½": "1/2", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5",
	"⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}

// Read reads what somebody answered to a part, in a language: "48", "48 lb", "53.8 kg/ha", "1/2". An empty text is no
// answer. What is not one number gives an error with a sentence in that language; a unit that does not fit is no error,
// since marking tells it.
func (p *Part) Read(text, language string) (Heard, error) {
	text = strings.Join(strings.Fields(text), " ")
	if text == "" {
		return Heard{}, nil
	}
	if p.Choice != nil {
		code, ok := p.Choice.read(text)
		if !ok {
			return Heard{}, errors.New(p.Unread(language))
		}
		return Heard{Given: true, Answer: code, Bare: code, Told: FitUnit}, nil
	}
	value, told, ok := readAmount(text, language)
	if !ok || !(math.Abs(value) <= mostAnswer) || another.MatchString(told) {
		return Heard{}, errors.New(p.Unread(language))
	}
	h := Heard{Given: true, Answer: value, Bare: value}
	if told = strings.TrimSpace(told); told == "" {
		if p.result.Unit.String() == "" {
			h.Told = FitUnit
		}
		return h, nil
	}
	for _, u := range p.Units() {
		if u.String() != "" && means(told, u.String()) {
			own, _ := u.To(p.result.Unit)
			h.Answer, h.Told = own.Apply(value), FitUnit
			return h, nil
		}
	}
	h.Told, h.Unit = OtherUnit, told
	return h, nil
}

// Unread is the sentence on what is no answer to the part.
func (p *Part) Unread(language string) string {
	w := words.OfPractice(language)
	switch {
	case p.Choice == nil:
		return w.Unread
	case p.Choice.Items == nil:
		return w.Unchosen
	}
	return w.Unordered
}

// readAmount reads the number that a text starts with, and gives what comes behind it; with a dollar sign, if that is
// before the number.
func readAmount(text, language string) (value float64, told string, ok bool) {
	text = fractionSign.ReplaceAllStringFunc(text, func(sign string) string {
		parts := fractionSign.FindStringSubmatch(sign)
		if parts[1] != "" {
			return parts[1][:1] + " " + signs[parts[2]]
		}
		return signs[parts[2]]
	})
	text = strings.ReplaceAll(text, "⁄", "/")
	number := func(text string) (float64, bool) {
		value, err := unit.ParseNumber(prose.For(language).PointDecimals(text))
		return value, err == nil
	}
	found := fraction.FindStringSubmatch(text)
	if found != nil && !startsMore.MatchString(found[6]) {
		above, tooMuch := strconv.ParseFloat(found[4], 64)
		below, tooLong := strconv.ParseFloat(found[5], 64)
		value, told, ok = above/below, found[6], below > 0 && tooMuch == nil && tooLong == nil
		if found[3] != "" {
			whole, good := number(found[3])
			ok = ok && good && value < 1
			value += whole
		}
	} else if found = amount.FindStringSubmatch(text); found != nil {
		value, ok = number(found[3])
		told = found[4]
	} else {
		return 0, "", false
	}
	if found[1] != "" {
		value = -value
	}
	return value, found[2] + told, ok
}
