package assets

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// namespace keeps the theme's names apart from those of the disk.
const namespace = "theme"

// reader is the plugin that lets esbuild read from files, and from nowhere else.
func reader(files fs.FS) api.Plugin {
	return api.Plugin{Name: namespace, Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: ".*"}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
			return resolve(files, args)
		})
		build.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: namespace},
			func(args api.OnLoadArgs) (api.OnLoadResult, error) { return load(files, args.Path) })
	}}
}

// resolve finds the file that an import means: beside the importer, with the extension of the importer left out.
func resolve(files fs.FS, args api.OnResolveArgs) (api.OnResolveResult, error) {
	if strings.HasPrefix(args.Path, "data:") {
		return api.OnResolveResult{Path: args.Path, External: true}, nil
	}
	name := args.Path
	if args.Kind != api.ResolveEntryPoint {
		name = path.Join(path.Dir(args.Importer), args.Path)
	}
	if path.Ext(name) == "" {
		name += path.Ext(args.Importer)
	}
	if info, err := fs.Stat(files, name); err != nil || info.IsDir() {
		return api.OnResolveResult{}, fmt.Errorf("the theme has no file %s", name)
	}
	return api.OnResolveResult{Path: name, Namespace: namespace}, nil
}

func load(files fs.FS, name string) (api.OnLoadResult, error) {
	bytes, err := fs.ReadFile(files, name)
	if err != nil {
		return api.OnLoadResult{}, err
	}
	loader := api.LoaderTS
	switch path.Ext(name) {
	case ".css":
		loader = api.LoaderCSS
	case ".ts":
	default:
		return api.OnLoadResult{}, errors.New("a theme's script is made of .ts files and its style of .css files")
	}
	contents := string(bytes)
	return api.OnLoadResult{Contents: &contents, Loader: loader}, nil
}
