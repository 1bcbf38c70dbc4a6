package assets

import (
	"io/fs"
	"path"
	"strings"

	"github.com/evanw/esbuild/pkg/api"

	"acreleaf/cmd/acreleaf/internal/message"
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
	blockEntry    = "script/block.ts"
	blockStyle    = "style/block.css"
	wallEntry     = "script/wall.ts"
	wallStyle     = "style/wall.css"
	openerEntry   = "script/opener.ts"
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

// entries are what is bundled, and how it is named.
var entries = []api.EntryPoint{
	{InputPath: scriptEntry, OutputPath: "page"},
	{InputPath: rangesEntry, OutputPath: "ranges"},
	{InputPath: afterEntry, OutputPath: "after"},
	{InputPath: practiceEntry, OutputPath: "practice"},
	{InputPath: practiceStyle, OutputPath: "practice"},
	{InputPath: courseEntry, OutputPath: "course"},
	{InputPath: courseStyle, OutputPath: "course"},
	{InputPath: blockEntry, OutputPath: "block"},
	{InputPath: blockStyle, OutputPath: "block"},
	{InputPath: wallEntry, OutputPath: "wall"},
	{InputPath: wallStyle, OutputPath: "wall"},
	{InputPath: styleEntry, OutputPath: "page"},
	{InputPath: openerEntry, OutputPath: "opener"},
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

// oldestBrowsers are the first that draw MathML, without which a worksheet cannot be read; newer style syntax is
// written out for them.
var oldestBrowsers = []api.Engine{
	{Name: api.EngineChrome, Version: "109"},
	{Name: api.EngineFirefox, Version: "102"},
	{Name: api.EngineSafari, Version: "16"},
}
