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
	"path"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/output"
)

// A Bundle is what the theme comes to. The paths are those in the site, "assets/page.0a1b2c3d.js".
type Bundle struct {
	Script, After output.File // what makes a page live, and what comes after: both ask for words, which Worded gives
	Ranges        output.File // what works ranges: a script of its own, since no page needs it for single numbers
	Paper         output.File // what takes a page along: on paper, as a text, in a file; it asks for words too
	Language      output.File // what takes the language of a first visit, where the site has several
	Practice      output.File // what exercises need; it asks for words too
	PracticeStyle output.File // how exercises look
	Course        output.File // what courses and lessons need; it asks for words too
	CourseStyle   output.File // how courses look
	Block         output.File // what shows a reader's block; it asks for words too, and for the facts of a block
	Blocks        output.File // the same of the page about one block
	Drawing       output.File // what keeps pictures current that numbers draw; it asks for words, and for their rules
	DrawingStyle  output.File // how they look
	BlockStyle    output.File // how the page about one block looks
	Wall          output.File // what the leader's page needs in the place of Practice; it asks for words too
	WallStyle     output.File // how the leader's page looks
	Offline       output.File // what keeps pages on the device; it asks for words too
	Find          output.File // what finds a word in the index of terms; it asks for words too
	Worker        output.File // what answers there; it asks for the names of an edition
	Style         output.File
	Opener        output.File // what opens one page of a file that has all; no page of a site loads it
	Icon          output.File // as it is in the theme
}

// places says where in the bundle each file goes that is made of an entry.
func (b *Bundle) places() map[string]*output.File {
	return map[string]*output.File{
		"page.js": &b.Script, "ranges.js": &b.Ranges, "after.js": &b.After, "paper.js": &b.Paper, "practice.js": &b.Practice,
		"course.js": &b.Course, "wall.js": &b.Wall, "opener.js": &b.Opener, "page.css": &b.Style,
		"practice.css": &b.PracticeStyle, "course.css": &b.CourseStyle, "block.css": &b.BlockStyle, "block.js": &b.Block,
		"blocks.js": &b.Blocks,
		"wall.css":  &b.WallStyle, "language.js": &b.Language, "drawing.js": &b.Drawing, "drawing.css": &b.DrawingStyle,
		"offline.js": &b.Offline, "worker.js": &b.Worker, "find.js": &b.Find,
	}
}

// Worded gives a script with the words of a language before it, in JSON: it asks for them as "words". A reader's
// browser keeps them with the script, where every page would bring them along.
func Worded(script output.File, language string, words []byte) output.File {
	// In a block, since two scripts of a page have words.
	return With(script, language, "words", words)
}

// With gives a script of a language with data in JSON before it, which it asks for by that name.
func With(script output.File, language, name string, data []byte) output.File {
	of, _, _ := strings.Cut(path.Base(script.Path), ".")
	bytes := slices.Concat([]byte("{const "+name+"="), data, []byte(";"), script.Bytes, []byte("}\n"))
	return Named(of+"."+language, path.Ext(script.Path), bytes)
}

// Named gives a file that pages share its place, by a name and its bytes.
func Named(name, extension string, bytes []byte) output.File {
	return output.File{Path: "assets/" + name + "." + hash(bytes) + extension, Bytes: bytes}
}

// hash is enough of the SHA-256 of the bytes to tell one build of a file from another.
func hash(bytes []byte) string {
	sum := sha256.Sum256(bytes)
	return hex.EncodeToString(sum[:4])
}
