// Package output puts finished files on the disk: those of a site, a handout or books. What follows says site for each.
//
// It owns the checks of output names, the order of writing, the list of what an earlier press wrote, and what
// happens when a press is cut short. It must not know what the files hold, and it must never touch a file that
// Acreleaf did not write.
//
// One press writes into a folder at a time: it holds the lock ".acreleaf-lock-public" beside the folder "public", which
// the system frees when the press ends in any way.
//
// A folder that holds only what is on the list ".acreleaf-manifest" is exchanged whole:
//
//  1. everything new is written, as it is made, into the work folder ".acreleaf-new-public", beside the site: a full
//     disk is met here;
//  2. the new site is built in its folder "making": new files are moved there, unchanged ones get a second name there
//     (a hard link, or a copy where the file system has no links), and the list comes last;
//  3. all of that is flushed to the disk, and then "making" is renamed to "site";
//  4. "site" and the site's folder exchange their names at once. Where the system cannot, the site's folder is renamed
//     to "old" and then "site" to its name; the next press that finds no site and an "old" one puts that back;
//  5. what the list of the old site has is removed, and what somebody else put there meanwhile is moved to the new one.
//
// So a press that is cut anywhere leaves the old site or the new one, and the next press removes the rest.
//
// A folder that holds other files too stays where it is. So does one that is a link, has another file system in it or
// belongs to somebody else, and one whose parent folder may not be written. There the files go in one by one:
//
//  1. everything new is written into the folder ".acreleaf-new" in the site's, and flushed to the disk;
//  2. the list is replaced by one that has the old files and the new ones;
//  3. the new files are renamed into place: assets, then new pages, then changed pages, so that no page asks for an
//     asset or leads to a page that is not there;
//  4. files that are no longer part of the site are removed, pages before assets;
//  5. the list is replaced by one that has the new files only.
//
// A press that is cut before the third step leaves the old site, and one that is cut later some old and some new pages,
// each of them whole. The next press goes on from there.
//
// A file with the same bytes is not written again, in both ways. When no file differs, nothing is written but the list.
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

// Names of our own in the site's folder. Beside the site, each has a hyphen and the name of the site's folder after it.
const (
	ownPrefix    = ".acreleaf-"
	manifestName = ownPrefix + "manifest"
	stagingName  = ownPrefix + "new"
	lockName     = ownPrefix + "lock"
)

// Folders in the work folder beside the site.
const (
	making = "making" // a site that is being built: all in it is ours
	made   = "site"   // a site that was flushed to the disk: the new one, and the old one once they were exchanged
	former = "old"    // the old site, where names cannot be exchanged
)
