package words

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"sync"
)

// General are the words that the numbers, the work and the remarks of any calculation are told with. A name in braces
// is filled in.
type General struct {
	To     string     `key:"to"`     // between the ends of a range
	Months [12]string `key:"months"` // short, with a comma between them
	Day    string     `key:"day"`    // {day}, {month}, {year}
	NoDay  string     `key:"no-day"` // a number that is no day of the calendar

	Partly   string `key:"partly"`    // before a remark that holds for some of the numbers of a range
	Perhaps  string `key:"perhaps"`   // before one that may hold for some
	NoAnswer string `key:"no-answer"` // before a refusal for some of them

	Smaller   string `key:"smaller"` // before two values
	Larger    string `key:"larger"`
	And       string `key:"and"` // between the two
	RoundDown string `key:"round-down"`
	RoundUp   string `key:"round-up"`
	Size      string `key:"size"`
	Power     string `key:"power"`    // between a value and how often it is a factor
	AtLeast   string `key:"at-least"` // before the line of the least
	AtMost    string `key:"at-most"`

	Below   string `key:"below"`    // of a laboratory's "<5": {label}, {low}, {high}
	NoValue string `key:"no-value"` // {name}
	Endless string `key:"endless"`  // after NoAnswer: {names}
	Or      string `key:"or"`       // before the last of {names}
	Origin  string `key:"origin"`   // after NoAnswer, where no given was told as a range

	BelowZero    string `key:"below-zero"` // why a root has no answer: {name}
	DivideByZero string `key:"divide-by-zero"`
	Figure       string `key:"figure"` // the label of a figure that is in an author's formula
}

var generals sync.Map // of *General by language

// InGeneral are the general words of a language.
func InGeneral(language string) *General { return told[General](&generals, general, language) }

// told are the words of a file that is read into a type, whose tags name the keys.
func told[T any](known *sync.Map, file, language string) *T {
	language = Language(language)
	if found, ok := known.Load(language); ok {
		return found.(*T)
	}
	words := new(T)
	f := texts()[language][file]
	v := reflect.ValueOf(words).Elem()
	for i := range v.NumField() {
		key := v.Type().Field(i).Tag.Get("key")
		text := f[key].text
		if text == "" {
			panic(fmt.Sprintf("calc/words/%s/%s.txt has no text for %s", language, file, key))
		}
		if months, is := v.Field(i).Addr().Interface().(*[12]string); is {
			copy(months[:], strings.Split(text, ", "))
			continue
		}
		v.Field(i).SetString(text)
	}
	if len(f) != v.NumField() {
		panic(fmt.Sprintf("calc/words/%s/%s.txt has a key that nobody asks for", language, file))
	}
	found, _ := known.LoadOrStore(language, words)
	return found.(*T)
}

// Fill puts texts in the places of the names in braces: "low", "0", "high", "5".
func Fill(text string, named ...string) string {
	for i := 0; i < len(named); i += 2 {
		text = strings.ReplaceAll(text, "{"+named[i]+"}", named[i+1])
	}
	return text
}

// DayText writes a date for a reader: "Apr 15, 2027".
func (g *General) DayText(year, month, day int) string {
	return Fill(g.Day, "year", strconv.Itoa(year), "month", g.Months[month-1], "day", strconv.Itoa(day))
}
