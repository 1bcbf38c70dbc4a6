package schema

import (
	"errors"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/santhosh-tekuri/jsonschema/v6/kind"
)

// reasons are the innermost faults of a validation, a line each: the place in the text, and the keyword that failed
// there. Of a name that is none, it is the name.
func reasons(t *testing.T, err error) string {
	t.Helper()
	var fault *jsonschema.ValidationError
	if !errors.As(err, &fault) {
		t.Fatal(err)
	}
	keyword := strings.Join(fault.ErrorKind.KeywordPath(), "/")
	switch fault.ErrorKind.(type) {
	case *kind.Not:
		keyword = "not"
	case *kind.FalseSchema:
		keyword = "false"
	}
	if named, is := fault.ErrorKind.(*kind.PropertyNames); is { // what lies within has no place
		return named.Property + " propertyNames\n"
	}
	if len(fault.Causes) == 0 {
		return "/" + strings.Join(fault.InstanceLocation, "/") + " " + keyword + "\n"
	}
	var all string
	for _, cause := range fault.Causes {
		all += reasons(t, cause)
	}
	return all
}

// Slips do not pass, and for the reason that they are slips.
func TestSlips(t *testing.T) {
	schemas := compiled(t)
	for _, c := range slips {
		if err := schemas[c.name].Validate(plain(parsed(t, c.right))); err != nil {
			t.Errorf("%s: %v\n%s", c.name, err, c.right)
		}
		err := schemas[c.name].Validate(plain(parsed(t, c.wrong)))
		if err == nil {
			t.Errorf("%s takes\n%s", c.name, c.wrong)
			continue
		}
		if got := reasons(t, err); !strings.Contains("\n"+got, "\n"+c.reason+"\n") {
			t.Errorf("%s: the reason is %q, and not\n%sin\n%s", c.name, c.reason, got, c.wrong)
		}
	}
}

const (
	soil  = "calculation: soil-nitrogen\n"
	sides = soil + "down: depth = 6, 12 in\nacross: nitrate = 5, 10 ppm NO3-N\n"
	trees = "calculation: crop-demand\ncrop: almond\nyield: 1,800 lb/ac\n"
	own   = "title: A\nsummary: B\nanswers: {c: {label: C, unit: in}}\n"
)

// A slip is a right text and a wrong one, with the place and the keyword of what is wrong.
var slips = []struct{ name, right, wrong, reason string }{
	{"page.json", "title: A\nsummary: B", "title: A", "/ required"},
	{"page.json", "title: A\nsummary: B", "title: ''\nsummary: B", "/title pattern"},
	{"page.json", "title: A\nsummary: B", "title:\nsummary: B", "/title type"},
	{"page.json", "title: A\nsummary: B\norder: 2", "title: A\nsummary: B\norder: second", "/order pattern"},
	{"page.json", "title: A\nsummary: B\nreviewed: 2026-09-14", "title: A\nsummary: B\nreviewed: September",
		"/reviewed pattern"},
	{"page.json", "title: A\nsummary: B\nreviewed: 2024-02-29", "title: A\nsummary: B\nreviewed: 2026-02-31",
		"/reviewed pattern"},
	{"page.json", "title: A\nsummary: B\nreview-every: 2  years", "title: A\nsummary: B\nreview-every: 0 months",
		"/review-every pattern"},
	{"page.json", "title: A\nsummary: B\ncrop: C", "title: A\nsummary: B\ncorp: C", "/ additionalProperties"},
	{"page.json", "title: A\nsummary: B\nglance: [a.b]", "title: A\nsummary: B\nglance: {a: b}", "/glance type"},

	{"site.json", "office: A\nlanguage: [en, es]", "language: [en, es]", "/ required"},
	{"site.json", "office: A\nlanguage: [en, es]", "office: A\nlanguage: [en, en]", "/language uniqueItems"},
	{"site.json", "office: A\nlanguage: [en, es]", "office: A\nlanguage: [en, Spanish]", "/language/1 pattern"},
	{"site.json", "office: A\ncontact: {name: B}", "office: A\ncontact: {nmae: B}", "/contact additionalProperties"},
	{"site.json", "office: A\ninvented: false", "office: A\ninvented: perhaps", "/invented pattern"},
	{"site.json", "office: A\ninvented: true\nnotice: B", "office: A\ninvented: true", "/ required"},
	{"site.json", "office: A\ninvented: 'yes'\nnotice: B", "office: A\ninvented: 'yes'\nnotice: ''", "/notice not"},
	{"site.json", "office: A\nreading: {en: 8}", "office: A\nreading: {fr: 8}", "/reading additionalProperties"},
	{"site.json", "office: A\nreading: {en: 18}", "office: A\nreading: {en: 19}", "/reading/en maximum"},
	{"site.json", "office: A\naddress: HTTPS://a.example", "office: A\naddress: a.example", "/address pattern"},

	{"sources.json", "a-b: {title: A, kind: handbook}", "a-b: {title: A, kind: handbok}", "/a-b/kind enum"},
	{"sources.json", "a-b: {title: A, kind: memory, figures: {2 lb: of N}}", "a-b: {kind: memory}", "/a-b required"},
	{"sources.json", "a-b: {title: A, kind: memory, figures: {2 lb: of N}}",
		"a-b: {title: A, kind: memory, figures: {2 lb: }}", "/a-b/figures/2 lb type"},
	{"sources.json", "a-b: {title: A, kind: memory}", "A b: {title: A, kind: memory}", "A b propertyNames"},

	{"worksheet.json", soil + "nitrate: 12 ppm NO3-N\ndepth: 12 in", soil + "nitrate: 12 ppm NO3-N", "/ required"},
	{"worksheet.json", soil + "nitrate: 12 ppm NO3-N\ndepth: from a.b",
		soil + "nitrate: 12 ppm NO3-N\ndepht: 12 in\ndepth: 12 in", "/ additionalProperties"},
	{"worksheet.json", soil + "nitrate: < 5 ppm NO3-N\ndepth: 12 in", soil + "nitrate: 12\ndepth: 12 in", "/nitrate type"},
	{"worksheet.json", soil + "nitrate: 12 ppm NO3-N\ndepth: 6 to 12 in",
		soil + "nitrate: 12 ppm NO3-N\ndepth: a foot", "/depth pattern"},
	{"worksheet.json", soil + "nitrate: 12 ppm NO3-N\ndepth: from a.b",
		soil + "nitrate: 12 ppm NO3-N\ndepth: from a", "/depth pattern"},
	{"worksheet.json", soil + "nitrate: 12 ppm NO3-N\ndepth: 12 in\ntitle: A",
		soil + "nitrate: 12 ppm NO3-N\ndepth: 12 in\ntitle: [A]", "/title type"},
	{"worksheet.json", soil + "nitrate: 12 ppm NO3-N\ndepth: 12 in", soil + "nitrate: 12 ppm NO3-N\ndepth:",
		"/depth type"},
	{"worksheet.json", trees + "leaf: 6", trees + "leaf: -1", "/leaf minimum"},
	{"worksheet.json", trees + "leaf: 6", trees + "leaf: 1000", "/leaf maximum"},
	{"worksheet.json", trees + "leaf: 6", trees + "leaf: true", "/leaf type"},
	{"worksheet.json", "calculation: tree-density\npattern: square\ntree: 18 ft",
		"calculation: tree-density\npattern: sqare\ntree: 18 ft", "/pattern enum"},
	{"worksheet.json", "calculation: my-own\nspeed: 4 mi/h", "calculation: My own\nspeed: 4 mi/h", "/calculation pattern"},
	{"worksheet.json", "calculation: my-own\nspeed: 4 mi/h", "calculation: my--own\nspeed: 4 mi/h",
		"/calculation pattern"},
	{"worksheet.json", "calculation: my-own\nspeed: 4 mi/h", "calculation: my-own\nspeed: fast", "/speed pattern"},
	{"worksheet.json", "calculation: my-own\nspeed: 4 mi/h", "calculation: my-own\nshow: 4 mi/h", "show propertyNames"},
	{"worksheet.json", "calculation: my-own", "speed: 4 mi/h", "/ required"},

	{"passage.json", "- when: a.b > 1\n  say: x\n- otherwise: y", "- whn: a.b > 1\n  say: x\n- otherwise: y",
		"/0 required\n/0 additionalProperties\n/0 required\n/0 additionalProperties"},
	{"passage.json", "- otherwise: y", "- when: a.b > 1\n  say: x",
		"/0 required\n/0 additionalProperties"},
	{"reckoner.json", sides + "show: nitrogen", soil + "dwon: depth = 6, 12 in\nshow: nitrogen", "/ additionalProperties"},
	{"reckoner.json", sides + "show: nitrogen", sides, "/ required"},
	{"reckoner.json", sides + "show: nitrogen", sides + "show: nitrate", "/show enum"},
	{"reckoner.json", sides + "show: nitrogen", sides + "show: nitrogen\ndepth: 6 in", "/depth false"},
	{"reckoner.json", sides + "show: nitrogen\nmark: 25 to 35 lb N/ac", sides + "show: nitrogen\nmark: high",
		"/mark pattern"},
	{"reckoner.json", soil + "down: depth = 6 in\nacross: bulk-density = 1.2 g/cm3\nshow: nitrogen\nfollow: soil",
		soil + "down: depth = 6 in\nacross: bulk-density = 1.2 g/cm3\nshow: nitrogen", "/ required"},
	{"reckoner.json", sides + "show: nitrogen",
		soil + "down: depth = 6 in\nacross: depth = 12 in\nshow: nitrogen\nnitrate: 5 ppm NO3-N", "/ not"},

	{"calculation.json", own + "work: c = a * 2", own, "/ required"},
	{"calculation.json", own + "work: [c = a * 2]", own + "work: a * 2", "/work pattern"},
	{"calculation.json", own + "work: c = a * 2", own + "work: min = a * 2", "/work not"},
	{"calculation.json", own + "work: c = a\nconstants: {a: {label: D, value: 2, source: E}}",
		own + "work: c = a\nconstants: {a: {label: D, value: two, source: E}}", "/constants/a/value pattern"},
	{"calculation.json", own + "work: c = a\ngivens: {a: {label: D, example: 2 in, range: 0 to 5}}",
		own + "work: c = a\ngivens: {title: {label: D, example: 2 in, range: 0 to 5}}", "title propertyNames"},
	{"calculation.json", own + "work: c = a\ngivens: {a: {label: D, example: 2 in, range: 0 to 5}}",
		own + "work: c = a\ngivens: {a: {label: D, example: 2 in, range: 5}}", "/givens/a/range type"},
	{"calculation.json", own + "work: c = a\nchecks: {d: {when: a > 1, say: E, signal: Caution}}",
		own + "work: c = a\nchecks: {d: {when: a > 1, say: E, signal: shout}}", "/checks/d/signal enum"},
	{"calculation.json", own + "work: c = a\nchecks: {d: {when: a > 1, say: E}}",
		own + "work: c = a\nchecks: {d: {when: always, say: E}}", "/checks/d/when pattern"},
}
