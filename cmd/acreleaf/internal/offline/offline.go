// Package offline makes what lets a pressed site work without a network: the list of the files of one edition of the
// site, and the worker that a browser keeps them by.
//
// It owns the form of the list, with which the worker compares each file that it gets, so that what is kept is of one
// edition. It is made from the very bytes that are written. The package must not know what is in a page, but for the
// line by which a page asks not to be listed.
package offline

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/output"
)

// WorkerPath is where the worker is: at the top of the site, since a browser lets it answer for its own folder alone.
// Its name never changes, or a browser would not find the next one.
const WorkerPath = "worker.js"

// A List gathers the files of an edition.
type List struct {
	worker output.File // its script
	mutex  sync.Mutex
	noted  noted
}

// A noted is the list as the worker reads it.
type noted struct {
	Files map[string]file `json:"files"` // by path
	Apart map[string]file `json:"apart"` // those that no page links to: they are kept once they were opened
}

// A file is the digest of its bytes, and how many they are.
type file struct {
	digest string
	size   int
}

func (f file) MarshalJSON() ([]byte, error) { return json.Marshal([]any{f.digest, f.size}) }

// NewList prepares a list for the worker with a script.
func NewList(worker output.File) *List {
	return &List{worker: worker, noted: noted{map[string]file{}, map[string]file{}}}
}

// Through gives a function that puts files, and notes each of them.
func (l *List) Through(put func(output.File) error) func(output.File) error {
	return func(f output.File) error {
		l.note(f)
		return put(f)
	}
}

// unlisted is what a page has that asks search engines not to list it.
var unlisted = []byte(`<meta name="robots" content="noindex">`)

// note takes a file into the list. A server shows a page that is not in a folder of its own at addresses of any kind,
// so there is none to keep it by.
func (l *List) note(f output.File) {
	page := strings.HasSuffix(f.Path, ".html")
	if page && f.Path != "index.html" && !strings.HasSuffix(f.Path, "/index.html") {
		return
	}
	one, files := file{digest(f.Bytes), len(f.Bytes)}, l.noted.Files
	if page && bytes.Contains(head(f.Bytes), unlisted) {
		files = l.noted.Apart
	}
	l.mutex.Lock()
	defer l.mutex.Unlock()
	files[f.Path] = one
}

// head is what of a page is above its text: a fifteenth of it, and nothing else can ask for what search engines do.
func head(page []byte) []byte {
	above, _, _ := bytes.Cut(page, []byte("<body"))
	return above
}

// digest is enough of the SHA-256 of the bytes to tell two editions of a file apart.
func digest(b []byte) string {
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:8])
}

// Files makes the list and the worker, when all other files are noted. The same files always make the same.
func (l *List) Files() []output.File {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	text, err := json.Marshal(l.noted) // with its keys in order
	if err != nil {
		panic(err) // it is texts and numbers alone
	}
	edition := digest(text)
	list := output.File{Path: "assets/edition." + edition + ".json", Bytes: text}
	names := fmt.Sprintf("{const edition=%q,listing=%q;", edition, list.Path)
	script := slices.Concat([]byte(names), l.worker.Bytes, []byte("}\n"))
	return []output.File{list, {Path: WorkerPath, Bytes: script}}
}
