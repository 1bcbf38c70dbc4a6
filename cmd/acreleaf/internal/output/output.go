// Package output puts finished files on the disk: those of a site, a handout or books. What follows says site for each.
//
// It owns the checks of output names, the order of writing, the list of what an earlier press wrote, and what
// happens when a press is cut short. It must not know what the files hold, and it must never touch a file that
// Acreleaf did not write.
//
// Writing goes through these states, and a press that is cut in any of them can be repeated:
//
//  1. everything new is written, as it is made, into the folder ".acreleaf-new", beside the site: a full disk is met
//     here, and the old site is whole and the list unchanged;
//  2. the list ".acreleaf-manifest" is replaced by one that has the old files and the new ones;
//  3. the new files are moved into place, assets before pages, so that no page asks for an asset that is not there;
//  4. files that are no longer part of the site are removed, pages before assets;
//  5. the list is replaced by one that has the new files only.
//
// A file with the same bytes is not written again. The press may be given up until the second step: then the new files
// are removed, and all is as it was.
package output

import "strings"

// File is one file of the site, in memory.
type File struct {
	Path  string // slash-separated, relative to the site's folder: "guides/soil/index.html"
	Bytes []byte
}

// Report counts what Write did.
type Report struct{ Written, Unchanged, Removed int }

// assetFolder holds files whose names change with their content. Pages point to them, never the other way round.
const assetFolder = "assets/"

func isAsset(path string) bool { return strings.HasPrefix(path, assetFolder) }

// Names of our own in the site's folder.
const (
	manifestName = ".acreleaf-manifest"
	stagingName  = ".acreleaf-new"
	ownPrefix    = ".acreleaf-"
)
