package assets_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/andybalholm/brotli"
	"github.com/google/go-cmp/cmp"

	"acreleaf/cmd/acreleaf/internal/assets"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/theme"
)

// small is a theme of two files a folder.
func small() fstest.MapFS {
	return fstest.MapFS{
		"script/after.ts":    {Data: []byte("document.title += words.after;\n")},
		"script/paper.ts":    {Data: []byte("document.title += words.paper;\n")},
		"script/language.ts": {Data: []byte("document.title += ' language';\n")},
		"script/find.ts":     {Data: []byte("document.title += words.find;\n")},
		"script/practice.ts": {Data: []byte("document.title += words.practice;\n")},
		"script/drawing.ts":  {Data: []byte("document.title += words.drawing;\n")},
		"style/drawing.css":  {Data: []byte("s { margin: 0px; }\n")},
		"script/block.ts":    {Data: []byte("document.title += words.block;\n")},
		"script/blocks.ts":   {Data: []byte("document.title += words.blocks;\n")},
		"script/course.ts":   {Data: []byte("document.title += words.course;\n")},
		"script/wall.ts":     {Data: []byte("document.title += words.wall;\n")},
		"script/offline.ts":  {Data: []byte("document.title += words.offline;\n")},
		"script/worker.ts":   {Data: []byte("onfetch = edition;\n")},
		"script/ranges.ts":   {Data: []byte("document.title += ' ranges';\n")},
		"script/start.ts":    {Data: []byte("import { greet } from './greet';\ngreet(document.title as string);\n")},
		"script/greet.ts": {Data: []byte("export function greet(name: string): void { document.body.title = name; }\n" +
			"export const unused = 'left out';\n")},
		"script/opener.ts":   {Data: []byte("document.title += ' opener';\n")},
		"style/practice.css": {Data: []byte("b { margin: 0px; }\n")},
		"style/block.css":    {Data: []byte("u { margin: 0px; }\n")},
		"style/course.css":   {Data: []byte("b { margin: 0px; }\n")},
		"style/wall.css":     {Data: []byte("i { margin: 0px; }\n")},
		"style/icon.svg":     {Data: []byte("<svg/>")},
		"style/acreleaf.css": {Data: []byte("@import \"base.css\";\nmain { color: #ff0000; }\n")},
		"style/base.css":     {Data: []byte("body { margin: 0px; background: url(\"data:image/gif;base64,AAAA\"); }\n")},
	}
}

func build(t testing.TB, files fstest.MapFS) assets.Bundle {
	t.Helper()
	bundle, messages := assets.Build(files)
	if len(messages) > 0 {
		t.Fatalf("messages: %+v", messages)
	}
	return bundle
}

func TestBundleHoldsEachFolderAsOneSmallFile(t *testing.T) {
	bundle := build(t, small())
	for _, test := range []struct {
		file output.File
		path string
		want string
	}{
		{bundle.Script, `^assets/page\.[0-9a-f]{8}\.js$`,
			"(()=>{function t(e){document.body.title=e}t(document.title);})();\n"},
		{bundle.Style, `^assets/page\.[0-9a-f]{8}\.css$`,
			"body{margin:0;background:url(data:image/gif;base64,AAAA)}main{color:red}\n"},
	} {
		if !regexp.MustCompile(test.path).MatchString(test.file.Path) {
			t.Errorf("path %q", test.file.Path)
		}
		if got := string(test.file.Bytes); got != test.want {
			t.Errorf("%s holds %q, want %q", test.file.Path, got, test.want)
		}
	}
}

func TestSameThemeSameBundleWhereverItIsBuilt(t *testing.T) {
	first := build(t, small())
	t.Chdir(t.TempDir())
	if diff := cmp.Diff(first, build(t, small())); diff != "" {
		t.Error(diff)
	}
}

func TestTheIconIsAFileOfTheTheme(t *testing.T) {
	icon := build(t, small()).Icon
	if !regexp.MustCompile(`^assets/icon\.[0-9a-f]{8}\.svg$`).MatchString(icon.Path) || string(icon.Bytes) != "<svg/>" {
		t.Errorf("%s holds %q", icon.Path, icon.Bytes)
	}
	files := small()
	delete(files, "style/icon.svg")
	if bundle, messages := assets.Build(files); !cmp.Equal(bundle, assets.Bundle{}) || len(messages) != 1 {
		t.Errorf("without an icon: bundle %+v, messages %+v", bundle, messages)
	} else {
		checkMessage(t, messages[0], "the theme has no file style/icon.svg", "", "")
	}
}

func TestNameFollowsTheBytes(t *testing.T) {
	first, changed := build(t, small()), small()
	changed["style/base.css"].Data = []byte("body { margin: 1px; }")
	second := build(t, changed)
	if first.Style.Path == second.Style.Path {
		t.Errorf("two styles are both called %s", first.Style.Path)
	}
	if first.Script.Path != second.Script.Path {
		t.Errorf("the same script is called %s and %s", first.Script.Path, second.Script.Path)
	}
}

func TestFaultsHaveAPlace(t *testing.T) {
	for _, test := range []struct {
		name, file, text   string // what is put in the theme
		want, source, spot string // the message, its file and the text its span covers
	}{
		{"syntax", "script/greet.ts", "export const x = ;\n", "Unexpected \";\"", "theme/script/greet.ts", ";"},
		{"second line", "script/greet.ts", "export const é = 1;\nexport const ü = );\n", "Unexpected \")\"",
			"theme/script/greet.ts", ")"},
		{"missing name", "script/greet.ts", "export const other = 1;\n", "No matching export", "theme/script/start.ts",
			"greet"},
		{"missing file", "script/start.ts", "import './gone';\n", "the theme has no file script/gone.ts",
			"theme/script/start.ts", "'./gone'"},
		{"way out", "script/start.ts", "import '../../secret';\n", "the theme has no file ../secret.ts",
			"theme/script/start.ts", "'../../secret'"},
		{"package", "script/start.ts", "import 'left-pad';\n", "the theme has no file script/left-pad.ts",
			"theme/script/start.ts", "'left-pad'"},
		{"missing style", "style/acreleaf.css", "@import \"gone.css\";\n", "the theme has no file style/gone.css",
			"theme/style/acreleaf.css", "\"gone.css\""},
		{"other file", "script/start.ts", "import './x.json';\n", "made of .ts files", "", ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			files := small()
			files["script/x.json"] = &fstest.MapFile{Data: []byte("{}")}
			files[test.file] = &fstest.MapFile{Data: []byte(test.text)}
			bundle, messages := assets.Build(files)
			if !cmp.Equal(bundle, assets.Bundle{}) || len(messages) != 1 {
				t.Fatalf("bundle %+v, messages %+v", bundle, messages)
			}
			checkMessage(t, messages[0], test.want, test.source, test.spot)
		})
	}
}

func checkMessage(t *testing.T, m message.Message, want, source, spot string) {
	t.Helper()
	if m.Level != message.Fault || m.ID != "theme-build" || !strings.Contains(m.Text, want) {
		t.Errorf("message %+v, want a fault that says %q", m, want)
	}
	if source == "" {
		return
	}
	if m.Source == nil || m.Source.Name != source {
		t.Fatalf("the message is about %+v, want %s", m.Source, source)
	}
	if got := string(m.Source.Text[m.Span.Start:m.Span.End]); got != spot {
		t.Errorf("the message points at %q, want %q", got, spot)
	}
}

func TestEntryThatIsMissing(t *testing.T) {
	files := small()
	delete(files, "script/start.ts")
	_, messages := assets.Build(files)
	if len(messages) != 1 || !strings.Contains(messages[0].Text, "the theme has no file script/start.ts") {
		t.Errorf("messages %+v", messages)
	}
}

func TestAdviceComesWithABundle(t *testing.T) {
	files := small()
	files["script/greet.ts"].Data = []byte("export const greet = (name: unknown) => name === -0;\n")
	bundle, messages := assets.Build(files)
	if len(messages) != 1 || messages[0].Level != message.Advice || bundle.Script.Path == "" {
		t.Errorf("messages %+v, script %q", messages, bundle.Script.Path)
	}
}

// A script asks for words of the page's language, and has them however often it runs in one document.
func TestWordsComeWithAScript(t *testing.T) {
	after := build(t, small()).After
	spanish := assets.Worded(after, "es", []byte(`{"after":" después"}`))
	if !regexp.MustCompile(`^assets/after\.es\.[0-9a-f]{8}\.js$`).MatchString(spanish.Path) {
		t.Errorf("path %q", spanish.Path)
	}
	const want = "{const words={\"after\":\" después\"};(()=>{document.title+=words.after;})();\n}\n"
	if got := string(spanish.Bytes); got != want {
		t.Errorf("%s holds %q, want %q", spanish.Path, got, want)
	}
	if other := assets.Worded(after, "es", []byte(`{"after":" luego"}`)); other.Path == spanish.Path {
		t.Errorf("two scripts are both called %s", other.Path)
	}
}

// A property that two scripts share has one name in both.
func TestSharedPropertiesHaveOneName(t *testing.T) {
	files := small()
	files["script/start.ts"].Data = []byte("globalThis.x = {faulty: 1, fresh: 2, seen: 3};\n")
	files["script/after.ts"].Data = []byte("document.title += globalThis.x.seen + globalThis.x.faulty;\n")
	bundle := build(t, files)
	_, properties, _ := strings.Cut(string(bundle.Script.Bytes), "{")
	named := regexp.MustCompile(`(\w+):(\d)`).FindAllStringSubmatch(properties, -1)
	for _, one := range named {
		if used := strings.Contains(string(bundle.After.Bytes), "x."+one[1]); used != (one[2] != "2") || len(one[1]) > 1 {
			t.Errorf("the property %s in %s: used in %s is %v", one[1], bundle.Script.Bytes, bundle.After.Bytes, used)
		}
	}
	if len(named) != 3 {
		t.Errorf("%d properties in %s", len(named), bundle.Script.Bytes)
	}
}

// The limits are those of the project's own pages, and for scripts without the words of a language, which the step
// "sizes" of the check weighs with them: a fault here is one there, and is seen sooner.
func TestThemeIsSmall(t *testing.T) {
	bundle, messages := assets.Build(theme.Files)
	if len(messages) > 0 {
		t.Fatalf("messages: %+v", messages)
	}
	for _, test := range []struct {
		file  output.File
		limit int
	}{{bundle.Script, 9_000}, {bundle.Ranges, 3_000}, {bundle.After, 5_000}, {bundle.Style, 10_000}} {
		size := packed(t, test.file.Bytes)
		t.Logf("%s: %d bytes, %d with brotli", test.file.Path, len(test.file.Bytes), size)
		if size > test.limit {
			t.Errorf("%s takes %d bytes with brotli, more than %d", test.file.Path, size, test.limit)
		}
	}
}

func packed(t *testing.T, content []byte) int {
	t.Helper()
	var packed bytes.Buffer
	w := brotli.NewWriterLevel(&packed, brotli.BestCompression)
	if _, err := w.Write(content); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return packed.Len()
}

// The policy of a page allows no text to become code or markup, and the script may not even try.
func TestScriptOfTheThemeKeepsToThePolicy(t *testing.T) {
	bundle, _ := assets.Build(theme.Files)
	for _, word := range []string{"innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(", "Function(",
		"localStorage", "fetch(", "XMLHttpRequest", "import("} {
		if bytes.Contains(bundle.Script.Bytes, []byte(word)) {
			t.Errorf("the script holds %s", word)
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	for b.Loop() {
		if _, messages := assets.Build(theme.Files); len(messages) > 0 {
			b.Fatalf("messages: %+v", messages)
		}
	}
}

// Pages and workers of two editions talk to each other, so nothing that they say may be shortened: "kept" and "waiting"
// are among the names that other scripts have for themselves.
func TestNamesBetweenEditionsStay(t *testing.T) {
	theme := small()
	for _, name := range []string{"script/offline.ts", "script/worker.ts"} {
		theme[name] = &fstest.MapFile{Data: []byte("postMessage({ kept: location.waiting });\n")}
	}
	bundle := build(t, theme)
	for _, f := range []output.File{bundle.Offline, bundle.Worker} {
		if got := string(f.Bytes); !strings.Contains(got, "kept:location.waiting") {
			t.Errorf("%s is %s", f.Path, got)
		}
	}
}
