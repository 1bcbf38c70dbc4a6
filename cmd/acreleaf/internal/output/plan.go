package output

import (
	"bytes"
	"cmp"
	"maps"
	"slices"
)

// plan is everything a press will do to the disk, decided before the first change.
type plan struct {
	writes    []placed // the files that are new or changed, in the order of moving
	clear     []string // to remove early: files in whose place a folder comes, and folders in whose place a file comes
	folders   []string // folders to make, parents first
	removals  []string // files that are no longer part of the site, pages first
	emptied   []string // folders that may be empty at the end
	after     manifest // the list at the end; entries of writes are set when they are written
	unchanged int
	removed   int
	stale     bool // the list on the disk differs from after even when nothing is written
	blocked   []string
}

// finding is what examine says of one file.
type finding struct {
	hash    uint64
	same    bool
	folder  bool // a folder is where the file must go
	ours    bool // a file that Acreleaf wrote is there
	blocked bool
}

// examine compares one file with what is on the disk. A file of the same size is read: its time is no proof, and
// reading costs little beside making the page.
func (w *Writer) examine(f File) (finding, error) {
	found := finding{hash: hashOf(f.Bytes)}
	s, info, err := w.stand(f.Path)
	found.folder = s == folder
	if err != nil || s == nothing || s == folder {
		return found, err
	}
	listed, known := w.listed[f.Path]
	if s == other || !known {
		found.blocked = true
		return found, nil
	}
	found.ours = true
	if listed.pending || info.Size() == int64(len(f.Bytes)) {
		content, err := w.disk.ReadFile(w.real(f.Path))
		if err != nil {
			return found, w.sentence(f.Path, err, oldSiteWhole)
		}
		found.same = bytes.Equal(content, f.Bytes)
		found.blocked = listed.pending && hashOf(content) != listed.hash
	}
	return found, nil
}

// plan decides what to do, from what examine found of each file. It changes nothing.
func (w *Writer) plan(mark Mark) (*plan, error) {
	p := &plan{after: make(manifest, len(w.placed))}
	for _, f := range w.placed {
		switch {
		case f.blocked:
			p.blocked = append(p.blocked, f.path)
		case f.same:
			p.unchanged++
			p.after[f.path] = entry{hash: f.hash}
		default:
			p.writes = append(p.writes, f)
			p.after[f.path] = entry{hash: f.hash, pending: !f.ours}
		}
	}
	slices.SortFunc(p.writes, compareMoves)
	room := &roomMaker{w: w, plan: p, known: map[string]standing{}, needed: map[string]bool{},
		had: w.listed.folders()}
	for _, f := range p.writes {
		if err := room.makeFor(f.path, f.folder); err != nil {
			return nil, err
		}
	}
	if err := room.planRemovals(); err != nil {
		return nil, err
	}
	p.stale = !maps.Equal(w.listed, p.after) || w.marked != mark
	slices.Sort(p.blocked)
	p.blocked = slices.Compact(p.blocked)
	return p, nil
}

// compareMoves puts assets before pages, and new pages before those that may lead to them.
func compareMoves(a, b placed) int {
	if isAsset(a.path) || isAsset(b.path) || a.ours == b.ours {
		return compareFiles(a.path, b.path)
	}
	if b.ours {
		return -1
	}
	return 1
}

// compareFiles puts assets before pages, and each by the alphabet.
func compareFiles(a, b string) int {
	switch {
	case isAsset(a) == isAsset(b):
		return cmp.Compare(a, b)
	case isAsset(a):
		return -1
	}
	return 1
}
