package assets

import (
	"io/fs"
	"path"
	"slices"
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
	paperEntry  = "script/paper.ts"

	languageEntry = "script/language.ts"

	practiceEntry = "script/practice.ts"
	practiceStyle = "style/practice.css"
	courseEntry   = "script/course.ts"
	courseStyle   = "style/course.css"
	blockEntry    = "script/block.ts"
	blocksEntry   = "script/blocks.ts"
	blockStyle    = "style/block.css"
	drawingEntry  = "script/drawing.ts"
	drawingStyle  = "style/drawing.css"
	wallEntry     = "script/wall.ts"
	wallStyle     = "style/wall.css"
	openerEntry   = "script/opener.ts"
	offlineEntry  = "script/offline.ts"
	findEntry     = "script/find.ts"
	workerEntry   = "script/worker.ts"
	iconFile      = "style/icon.svg"
)

// tsconfig has the fields of classes set by plain assignment: written out for the oldest browsers, their definition
// takes a call each.
const tsconfig = `{"compilerOptions": {"useDefineForClassFields": false}}`

// ownProperties matches names that only the scripts give to properties, and read, so that they may be shortened. No
// name of the page's data, of the browser or of the language may be among them.
const ownProperties = "^(again|amount|asked|assume|bare|below|cell|changed|chosen|dark|due|element|end|" +
	"endless|ends|enter|entry|example|faulty|fields|fill|followed|forget|formula|formulas|fragment|fresh|grid|guard|" +
	"hold|input|inputs|instead|kept|kind|last|line|lines|lists|lock|look|marked|money|most|news|note|own|owns|parted|" +
	"partly|parts|per|place|printed|refusal|refused|reset|result|results|ring|run|said|scale|second|seen|shape|sheet|" +
	"sides|slopes|sums|table|tabled|taken|tell|terms|texts|typed|unit|units|update|usual|waiting|when|why|words|work|" +
	"works|worksheet|write|yours)$"

// entries are what is bundled, and how it is named.
var entries = []api.EntryPoint{
	{InputPath: scriptEntry, OutputPath: "page"},
	{InputPath: rangesEntry, OutputPath: "ranges"},
	{InputPath: afterEntry, OutputPath: "after"},
	{InputPath: paperEntry, OutputPath: "paper"},
	{InputPath: languageEntry, OutputPath: "language"},
	{InputPath: practiceEntry, OutputPath: "practice"},
	{InputPath: practiceStyle, OutputPath: "practice"},
	{InputPath: courseEntry, OutputPath: "course"},
	{InputPath: courseStyle, OutputPath: "course"},
	{InputPath: blockEntry, OutputPath: "block"},
	{InputPath: blocksEntry, OutputPath: "blocks"},
	{InputPath: blockStyle, OutputPath: "block"},
	{InputPath: drawingEntry, OutputPath: "drawing"},
	{InputPath: drawingStyle, OutputPath: "drawing"},
	{InputPath: wallEntry, OutputPath: "wall"},
	{InputPath: wallStyle, OutputPath: "wall"},
	{InputPath: styleEntry, OutputPath: "page"},
	{InputPath: openerEntry, OutputPath: "opener"},
	{InputPath: findEntry, OutputPath: "find"},
}

// apart are the scripts that talk to each other across editions of a site, so that no property may be shortened.
var apart = []api.EntryPoint{
	{InputPath: offlineEntry, OutputPath: "offline"},
	{InputPath: workerEntry, OutputPath: "worker"},
}

// Build bundles and minifies the theme in files. With a fault in the list the Bundle is empty; advice may come with
// a finished one. A build takes milliseconds and its result never changes, so a process needs only one.
func Build(files fs.FS) (Bundle, message.List) {
	result := built(files, entries, ownProperties)
	other := built(files, apart, "")
	messages := append(
		messages(files, message.Fault, slices.Concat(result.Errors, other.Errors)),
		messages(files, message.Advice, slices.Concat(result.Warnings, other.Warnings))...)
	icon, err := fs.ReadFile(files, iconFile)
	if err != nil {
		messages = append(messages, message.Message{
			Level: message.Fault, ID: messageID, Text: "the theme has no file " + iconFile,
		})
	}
	if message.HasFault(messages) {
		return Bundle{}, messages
	}
	bundle := Bundle{Icon: Named("icon", path.Ext(iconFile), icon)}
	places := bundle.places()
	for _, file := range slices.Concat(result.OutputFiles, other.OutputFiles) {
		name, extension, _ := strings.Cut(path.Base(file.Path), ".")
		*places[path.Base(file.Path)] = Named(name, "."+extension, file.Contents)
	}
	return bundle, messages
}

// built bundles some of the entries. Properties with names of a pattern are shortened.
func built(files fs.FS, entries []api.EntryPoint, shortened string) api.BuildResult {
	return api.Build(api.BuildOptions{
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
		MangleProps:         shortened,
		MangleCache:         map[string]any{}, // the scripts share objects, so each property has one name in all
		LegalComments:       api.LegalCommentsNone,
		TsconfigRaw:         tsconfig,
		LogLevel:            api.LogLevelSilent,
	})
}

// oldestBrowsers are the first that draw MathML, without which a worksheet cannot be read; newer style syntax is
// written out for them.
var oldestBrowsers = []api.Engine{
	{Name: api.EngineChrome, Version: "109"},
	{Name: api.EngineFirefox, Version: "102"},
	{Name: api.EngineSafari, Version: "16"},
}
