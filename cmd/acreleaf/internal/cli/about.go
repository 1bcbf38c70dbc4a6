package cli

import (
	"fmt"
	"io"
	"runtime/debug"
	"strings"

	"github.com/alecthomas/kong"

	"acreleaf/cmd/acreleaf/internal/licence"
)

// about is what the program says of itself. It is shown in the list of the commands alone: after a command it would be
// a row more in the help of each.
type about struct {
	Version  aboutFlag `help:"Print the version, the commit and the Go that this program was built from."`
	Licences aboutFlag `help:"Print the licences of all that this program is made of."`
}

// An aboutFlag is an option that prints something and is done.
type aboutFlag bool

// BeforeReset prints what the option is for, before anything else that was typed is looked at.
func (aboutFlag) BeforeReset(app *kong.Kong, trace *kong.Path) error {
	text := licence.Text
	if trace.Flag.Name == "version" {
		info, _ := debug.ReadBuildInfo()
		text = versionOf(info)
	}
	_, err := io.WriteString(app.Stdout, text)
	app.Exit(exitClean)
	return err
}

// hideAfterCommand leaves these options out of the help of a command.
func hideAfterCommand(parser *kong.Kong, args []string) {
	if len(args) == 0 || strings.HasPrefix(args[0], "-") {
		return
	}
	for _, flag := range parser.Model.Flags {
		flag.Hidden = flag != parser.Model.HelpFlag
	}
}

// versionOf is what is known of how the program was built, a line each. The Go tool writes it down, unless it is told
// not to, or has no git to ask.
func versionOf(info *debug.BuildInfo) string {
	if info == nil {
		return "acreleaf: this program was built without a record of its version\n"
	}
	settings := map[string]string{}
	for _, s := range info.Settings {
		settings[s.Key] = s.Value
	}
	commit := "commit unknown: the program was built without git, or outside of its repository"
	if revision := settings["vcs.revision"]; revision != "" {
		day, _, _ := strings.Cut(settings["vcs.time"], "T")
		commit = "commit " + revision + " of " + day
		if settings["vcs.modified"] == "true" {
			commit += ", with changes that are not committed"
		}
	}
	version := info.Main.Version
	if version == "" || version == "(devel)" {
		version = "without a version"
	}
	return fmt.Sprintf("acreleaf %s\n%s\n%s for %s/%s\n", version, commit, info.GoVersion, settings["GOOS"],
		settings["GOARCH"])
}
