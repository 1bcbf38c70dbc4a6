// Package assets makes the files that pages of a site share: the style sheets, the scripts and the icon. It is the one
// importer of esbuild, which reads the theme's sources straight from an fs.FS; nothing is read from the disk and
// nothing is written.
//
// A file's name holds a hash of its bytes, so that a browser may keep it for good and a page never meets the wrong
// one. The same sources always give the same bytes, wherever the build runs.
package assets

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// The sources, as they are named in the theme. Each brings in the rest of its folder by imports.
const (
	scriptEntry = "script/start.ts"
	styleEntry  = "style/acreleaf.css"
	rangesEntry = "script/ranges.ts"
	afterEntry  = "script/after.ts"

	practiceEntry = "script/practice.ts"
	practiceStyle = "style/practice.css"
	courseEntry   = "script/course.ts"
	courseStyle   = "style/course.css"
	wallEntry     = "script/wall.ts"
	wallStyle     = "style/wall.css"
	iconFile      = "style/icon.svg"
)

// tsconfig has the fields of classes set by plain assignment: written out for the oldest browsers, their definition
// takes a call each.
const tsconfig = `{"compilerOptions": {"useDefineForClassFields": false}}`

// ownProperties matches names that only the scripts give to properties, and read, so that they may be shortened. No
// name of the page's data, of the browser or of the language may be among them.
const ownProperties = "^(again|amount|asked|assume|bare|below|cell|changed|chosen|due|element|end|endless|ends|" +
	"enter|entry|example|faulty|fields|fill|followed|forget|formula|formulas|fresh|grid|guard|hold|input|inputs|" +
	"instead|kept|kind|last|line|lines|lists|lock|look|marked|money|most|news|note|own|owns|parted|partly|" +
	"parts|per|place|printed|refusal|refused|reset|result|results|ring|run|said|scale|second|seen|shape|sheet|" +
	"sides|slopes|sums|table|tabled|tell|terms|texts|typed|unit|units|update|usual|waiting|when|why|words|work|" +
	"works|worksheet|write|yours)$"

// A Bundle is what the theme comes to. The paths are those in the site, "assets/page.0a1b2c3d.js".
type Bundle struct {
	Script, After output.File // what makes a page live, and what comes after: both ask for words, which Worded gives
	Ranges        output.File // what works ranges: a script of its own, since no page needs it for single numbers
	Practice      output.File // what exercises need; it asks for words too
	PracticeStyle output.File // how exercises look
	Course        output.File // what courses and lessons need; it asks for words too
	CourseStyle   output.File // how courses look
	Wall          output.File // what the leader's page needs in the place of Practice; it asks for words too
	WallStyle     output.File // how the leader's page looks
	Style         output.File
	Icon          output.File // as it is in the theme
}

// entries are what is bundled, and how it is named.
var entries = []api.EntryPoint{
	{InputPath: scriptEntry, OutputPath: "page"},
	{InputPath: rangesEntry, OutputPath: "ranges"},
	{InputPath: afterEntry, OutputPath: "after"},
	{InputPath: practiceEntry, OutputPath: "practice"},
	{InputPath: practiceStyle, OutputPath: "practice"},
	{InputPath: courseEntry, OutputPath: "course"},
	{InputPath: courseStyle, OutputPath: "course"},
	{InputPath: wallEntry, OutputPath: "wall"},
	{InputPath: wallStyle, OutputPath: "wall"},
	{InputPath: styleEntry, OutputPath: "page"},
}

// Build bundles and minifies the theme in files. With a fault in the list the Bundle is empty; advice may come with
// a finished one. A build takes milliseconds and its result never changes, so a process needs only one.
func Build(files fs.FS) (Bundle, message.List) {
	result := api.Build(api.BuildOptions{
		EntryPointsAdvanced: entries,
		Plugins:             []api.Plugin{reader(files)},
		Bundle:              true,
		Outdir:              "/",            // names only: Write is off
		Format:              api.FormatIIFE, // a classic script also runs from a disk, where a browser refuses modules
		Platform:            api.PlatformBrowser,
		Target:              api.ES2022,
		Charset:             api.CharsetUTF8,
		Engines:             oldestBrowsers,
		MinifyWhitespace:    true,
		MinifyIdentifiers:   true,
		MinifySyntax:        true,
		MangleProps:         ownProperties,
		MangleCache:         map[string]any{}, // the scripts share objects, so each property has one name in all
		LegalComments:       api.LegalCommentsNone,
		TsconfigRaw:         tsconfig,
		LogLevel:            api.LogLevelSilent,
	})
	messages := append(
		messages(files, message.Fault, result.Errors),
		messages(files, message.Advice, result.Warnings)...)
	icon, err := fs.ReadFile(files, iconFile)
	if err != nil {
		messages = append(messages, message.Message{
			Level: message.Fault, ID: messageID, Text: "the theme has no file " + iconFile,
		})
	}
	if message.HasFault(messages) {
		return Bundle{}, messages
	}
	bundle := Bundle{Icon: named("icon", path.Ext(iconFile), icon)}
	places := bundle.places()
	for _, file := range result.OutputFiles {
		name, extension, _ := strings.Cut(path.Base(file.Path), ".")
		*places[path.Base(file.Path)] = named(name, "."+extension, file.Contents)
	}
	return bundle, messages
}

// places says where in the bundle each file goes that is made of an entry.
func (b *Bundle) places() map[string]*output.File {
	return map[string]*output.File{
		"page.js": &b.Script, "ranges.js": &b.Ranges, "after.js": &b.After, "practice.js": &b.Practice,
		"course.js": &b.Course, "wall.js": &b.Wall, "page.css": &b.Style, "practice.css": &b.PracticeStyle,
		"course.css": &b.CourseStyle, "wall.css": &b.WallStyle,
	}
}

// Worded gives a script with the words of a language before it, in JSON: it asks for them as "words". A reader's
// browser keeps them with the script, where every page would bring them along.
func Worded(script output.File, language string, words []byte) output.File {
	name, _, _ := strings.Cut(path.Base(script.Path), ".")
	// In a block, since two scripts of a page have words.
	bytes := slices.Concat([]byte("{const words="), words, []byte(";"), script.Bytes, []byte("}\n"))
	return named(name+"."+language, path.Ext(script.Path), bytes)
}

func named(name, extension string, bytes []byte) output.File {
	return output.File{Path: "assets/" + name + "." + hash(bytes) + extension, Bytes: bytes}
}

// oldestBrowsers are the first that draw MathML, without which a worksheet cannot be read; newer style syntax is
// written out for them.
var oldestBrowsers = []api.Engine{
	{Name: api.EngineChrome, Version: "109"},
	{Name: api.EngineFirefox, Version: "102"},
	{Name: api.EngineSafari, Version: "16"},
}

// hash is enough of the SHA-256 of the bytes to tell one build of a file from another.
func hash(bytes []byte) string {
	sum := sha256.Sum256(bytes)
	return hex.EncodeToString(sum[:4])
}
