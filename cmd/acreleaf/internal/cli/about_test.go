package cli

import (
	"runtime/debug"
	"testing"
)

func TestVersionOf(t *testing.T) {
	setting := func(pairs ...string) (list []debug.BuildSetting) {
		for i := 0; i < len(pairs); i += 2 {
			list = append(list, debug.BuildSetting{Key: pairs[i], Value: pairs[i+1]})
		}
		return list
	}
	for _, c := range []struct {
		name, want string
		info       *debug.BuildInfo
	}{
		{"nothing is known", "acreleaf: this program was built without a record of its version\n", nil},
		{"a release", "acreleaf v1.2.0\ncommit 0c48 of 2026-11-30\ngo1.26.8 for linux/amd64\n", &debug.BuildInfo{
			GoVersion: "go1.26.8", Main: debug.Module{Version: "v1.2.0"}, Settings: setting("GOOS", "linux",
				"GOARCH", "amd64", "vcs.revision", "0c48", "vcs.time", "2026-11-30T03:00:00Z", "vcs.modified", "false")}},
		{"changed files", "acreleaf v0.0.1+dirty\n" +
			"commit 0c48 of 2026-11-30, with changes that are not committed\ngo1.26.8 for linux/arm64\n", &debug.BuildInfo{
			GoVersion: "go1.26.8", Main: debug.Module{Version: "v0.0.1+dirty"}, Settings: setting("GOOS", "linux",
				"GOARCH", "arm64", "vcs.revision", "0c48", "vcs.time", "2026-11-30T03:00:00Z", "vcs.modified", "true")}},
		{"no git", "acreleaf without a version\n" +
			"commit unknown: the program was built without git, or outside of its repository\ngo1.26.8 for darwin/arm64\n",
			&debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "(devel)"},
				Settings: setting("GOOS", "darwin", "GOARCH", "arm64")}},
	} {
		if got := versionOf(c.info); got != c.want {
			t.Errorf("%s:\n%swant\n%s", c.name, got, c.want)
		}
	}
}
