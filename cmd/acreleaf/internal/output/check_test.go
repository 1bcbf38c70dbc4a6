package output

import (
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

func TestCheck(t *testing.T) {
	long, deep := strings.Repeat("a", 256), strings.Repeat("a/", 400)
	for name, test := range map[string]struct {
		paths []string
		want  []string // id and a part of the text of each message
	}{
		"good":  {[]string{"index.html", "es/guides/soil/index.html", "assets/page.0a1b.css", ".nojekyll"}, nil},
		"twice": {[]string{"a.html", "b.html", "a.html"}, []string{`output-twice two files want to be "a`}},
		"folders by case": {[]string{"A/b.htm", "a/c.htm", "a/D/e.htm", "a/d/f.htm"}, []string{
			`output-case the folders "A" and "a" differ only`, `output-case the folders "a/D" and "a/d" differ only`}},
		"case":               {[]string{"A.htm", "a.htm"}, []string{`output-case "A.htm" and "a.htm" differ only`}},
		"empty":              {[]string{""}, []string{"output-name a file of the site has no name"}},
		"absolute":           {[]string{"/a"}, []string{`output-name "/a" must not begin with a slash`}},
		"up":                 {[]string{"a/../../b"}, []string{`output-name the name "a/../../b" has the step ".."`}},
		"here":               {[]string{"./a"}, []string{`has the step "."`}},
		"two slashes":        {[]string{"a//b"}, []string{"has two slashes in a row"}},
		"slash at the end":   {[]string{"a/"}, []string{"or one at its end"}},
		"backslash":          {[]string{`a\b`}, []string{"has a character that not every disk allows"}},
		"drive":              {[]string{"c:a"}, []string{"has a character that not every disk allows"}},
		"control":            {[]string{"a\nb"}, []string{"has a character that not every disk allows"}},
		"no text":            {[]string{"a\xffb"}, []string{"has a character that not every disk allows"}},
		"dot at the end":     {[]string{"a./b"}, []string{"ends with a dot or a space"}},
		"device":             {[]string{"guides/aux/index.html"}, []string{`has the part "aux"`}},
		"device with ending": {[]string{"Com1.html"}, []string{`has the part "Com1.html"`}},
		"device and a space": {[]string{"nul .html"}, []string{`has the part "nul .html"`}},
		"console":            {[]string{"a/CONOUT$"}, []string{`has the part "CONOUT$"`}},
		"raised digit":       {[]string{"lpt².csv"}, []string{`has the part "lpt².csv"`}},
		"space at the end":   {[]string{"a /b"}, []string{"ends with a dot or a space"}},
		"not a device":       {[]string{"com.html", "com10", "console", "lpt", "nul-1", "con-", "com⁴"}, nil},
		"our list":           {[]string{manifestName}, []string{"which Acreleaf keeps for itself"}},
		"our folder":         {[]string{"a/.Acreleaf-x/b"}, []string{"which Acreleaf keeps for itself"}},
		"long":               {[]string{long}, []string{"longer than 255 bytes"}},
		"deep": {[]string{deep + "a", deep + "b/c", "b" + deep[1:] + "d", deep[:798] + "aa"},
			[]string{`a/a/a/a" has 801 bytes, and may have 800`, `a/a/a/d" has 801 bytes, and may have 800`}},
		"file and folder": {[]string{"guides/soil/index.html", "guides", "guides/water"},
			[]string{`output-folder "guides" is a file, and "guides/soil/index.html" needs a folder of that name`}},
		"all at once": {[]string{"", "a", "a", "/b"}, []string{"no name", "two files want", "begin with a slash"}},
	} {
		t.Run(name, func(t *testing.T) {
			got := Check(test.paths)
			if len(got) != len(test.want) {
				t.Fatalf("got %d messages, want %d: %v", len(got), len(test.want), got)
			}
			for i, m := range got {
				if line := m.ID + " " + m.Text; !strings.Contains(line, test.want[i]) {
					t.Errorf("message %d is %q, want %q in it", i, line, test.want[i])
				}
				if m.Level != message.Fault || m.Note == "" {
					t.Errorf("message %d has no note or is no fault", i)
				}
			}
		})
	}
}
