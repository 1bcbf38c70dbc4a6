package media

import (
	"fmt"
	"regexp"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// call is a function of CSS with the start of what it is given.
var call = regexp.MustCompile(`([A-Za-z-][A-Za-z0-9-]*)\(\s*(["']?[^"')]*)`)

// rule is a word with which a rule of CSS begins that is no list of properties.
var rule = regexp.MustCompile(`@[A-Za-z-]*`)

// checkStyle reports what a style would fetch, in a style element or in an attribute. What is written with a backslash
// could be any of that, so there is none.
func (d *drawing) checkStyle(where, text string, span message.Span) {
	say := func(what string) {
		d.say(span, "svg-style", fmt.Sprintf("%s may not have %s, which can bring something from elsewhere", where, what),
			"take it out, or "+saveAgain)
	}
	if strings.Contains(text, `\`) {
		say("a backslash")
	}
	for _, found := range rule.FindAllString(text, -1) {
		if found != "@media" && found != "@" {
			say(found)
		}
	}
	for _, found := range call.FindAllStringSubmatch(text, -1) {
		name, given := strings.ToLower(found[1]), strings.TrimLeft(found[2], `"'`)
		switch {
		case name == "url" && !strings.HasPrefix(given, "#"):
			say("url(" + short(given) + ")")
		case !functions[name]:
			say(name + "()")
		}
	}
}

// functions are those of CSS and of the attributes of SVG that only work with what they are given.
var functions = set(`url rgb rgba hsl hsla hwb lab lch color matrix translate translatex translatey translate3d rotate
	scale scalex scaley skewx skewy calc min max clamp var not is where nth-child nth-of-type lang circle ellipse inset
	polygon path blur brightness contrast drop-shadow grayscale hue-rotate invert opacity saturate sepia linear-gradient`)

// set is a set of words.
func set(words string) map[string]bool {
	m := map[string]bool{}
	for _, word := range strings.Fields(words) {
		m[word] = true
	}
	return m
}
