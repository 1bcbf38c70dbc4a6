package render_test

import (
	"io/fs"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// A pair is a colour set on another, and the least ratio that WCAG 2.2 asks of it: 7 for text, which is read in the sun
// too (level AAA), 3 for the edge of a control or a ring.
type pair struct {
	over, under string
	least       float64
}

// Every pair of colours the style sheet sets, by the names of its properties.
var pairs = []pair{
	{"ink", "paper", 7}, {"soft", "paper", 7}, {"spot", "paper", 7},
	{"ink", "ledger", 7}, {"soft", "ledger", 7}, {"spot", "ledger", 7},
	{"mark-ink", "mark", 7}, {"edge", "paper", 3}, {"edge", "ledger", 3}, {"spot", "mark", 3},
}

// TestContrast measures the pairs in both schemes. Run it with -v to see the list.
func TestContrast(t *testing.T) {
	base := part(t, "base.css")
	light, rest, found := strings.Cut(base, "prefers-color-scheme: dark")
	if !found {
		t.Fatal("base.css has no dark scheme")
	}
	dark, _, _ := strings.Cut(rest, "@media")
	for name, text := range map[string]string{"light": light, "dark": dark} {
		colours := properties(text)
		for _, p := range pairs {
			over, under := colours[p.over], colours[p.under]
			if over == "" || under == "" {
				t.Errorf("%s: no colour for %s on %s", name, p.over, p.under)
				continue
			}
			measure(t, name, p, over, under)
		}
	}
	frame, err := fs.ReadFile(themeFiles, "page/frame.html")
	if err != nil {
		t.Fatal(err)
	}
	for _, paper := range []string{properties(light)["paper"], properties(dark)["paper"]} {
		if !strings.Contains(string(frame), `content="`+long(paper)+`"`) {
			t.Errorf("no theme-color is the paper %s", paper)
		}
	}
}

// The pairs are all there are: a rule that sets another colour would not be measured. A gradient and
// a ledger's rule are lines and not grounds; CanvasText is a reader's own.
func TestEveryColourIsMeasured(t *testing.T) {
	parts, err := fs.Glob(themeFiles, "style/*.css")
	if err != nil || len(parts) < 10 {
		t.Fatalf("%d parts of the style sheet, %v", len(parts), err)
	}
	const names = `ink|soft|spot|mark-ink|word|paper|ledger|ledger-rule|mark|band`
	measured := regexp.MustCompile(`^(var\(--(` + names + `)\)|inherit|none|transparent|CanvasText|repeating-linear-.*)$`)
	set := regexp.MustCompile(`[{;\s](?:color|background(?:-color)?): ([^;}!]+)`)
	for _, name := range parts {
		switch name = strings.TrimPrefix(name, "style/"); name {
		case "print.css", "handout.css": // for paper, in black on white
			continue
		}
		for _, found := range set.FindAllStringSubmatch(part(t, name), -1) {
			if value := strings.TrimSpace(found[1]); !measured.MatchString(value) {
				t.Errorf("%s sets the colour %s, which is in no pair", name, value)
			}
		}
	}
}

// TestSignalContrast measures the bands of the signal words, and the caution's on both papers.
func TestSignalContrast(t *testing.T) {
	css := part(t, "signal.css")
	rules := regexp.MustCompile(`--band: (#\w+);\s+(?:--word: (#\w+);)?`).FindAllStringSubmatch(css, -1)
	if len(rules) != 4 {
		t.Fatalf("%d bands, want 4", len(rules))
	}
	for _, rule := range rules {
		word := rule[2]
		if word == "" {
			word = "#fff"
		}
		measure(t, "signal", pair{"word", "band", 7}, word, rule[1])
	}
}

func measure(t *testing.T, scheme string, p pair, over, under string) {
	t.Helper()
	got := contrast(t, over, under)
	t.Logf("%-6s %-8s on %-7s %s on %s  %5.2f (least %v)", scheme, p.over, p.under, long(over), long(under), got, p.least)
	if got < p.least {
		t.Errorf("%s: %s %s on %s %s is %.2f, less than %v", scheme, p.over, over, p.under, under, got, p.least)
	}
}

func properties(css string) map[string]string {
	found := map[string]string{}
	for _, m := range regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]+);`).FindAllStringSubmatch(css, -1) {
		found[m[1]] = m[2]
	}
	return found
}

// contrast is the ratio of WCAG 2.2, "contrast ratio".
func contrast(t *testing.T, a, b string) float64 {
	la, lb := luminance(t, a), luminance(t, b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// luminance is that of WCAG 2.2, "relative luminance".
func luminance(t *testing.T, colour string) float64 {
	t.Helper()
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(long(colour)[1+2*i:3+2*i], 16, 8)
		if err != nil {
			t.Fatalf("%q is no colour: %v", colour, err)
		}
		c := float64(n) / 255
		if c <= 0.04045 {
			sum += weight * c / 12.92
		} else {
			sum += weight * math.Pow((c+0.055)/1.055, 2.4)
		}
	}
	return sum
}

// long writes #abc as #aabbcc.
func long(colour string) string {
	if len(colour) != 4 {
		return colour
	}
	return "#" + strings.Repeat(colour[1:2], 2) + strings.Repeat(colour[2:3], 2) + strings.Repeat(colour[3:4], 2)
}

func part(t *testing.T, name string) string {
	t.Helper()
	text, err := fs.ReadFile(themeFiles, "style/"+name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
