package output

import (
	"path"
	"path/filepath"
)

// hasOthers says whether the site's folder holds anything that a press did not write.
func (w *Writer) hasOthers() (bool, error) {
	if !w.exists {
		return false, nil
	}
	return w.othersIn(".", w.listed.folders())
}

func (w *Writer) othersIn(folder string, listed map[string]bool) (bool, error) {
	entries, err := w.disk.ReadDir(w.real(folder))
	if err != nil {
		return false, w.sentence(folder, err, oldSiteWhole)
	}
	for _, e := range entries {
		p := path.Join(folder, e.Name())
		switch {
		case isOwn(p):
		case e.IsDir() && listed[p]:
			if others, err := w.othersIn(p, listed); err != nil || others {
				return others, err
			}
		case e.Type().IsRegular():
			if ours, err := w.owns(w.listed, w.dir, p); err != nil || !ours {
				return err == nil, err
			}
		default:
			return true, nil
		}
	}
	return false, nil
}

// isOwn says whether a path in the site's folder is one that Acreleaf keeps for itself.
func isOwn(p string) bool { return p == manifestName || p == stagingName || p == lockName }

// owns says whether a plain file below a root is one of its list. One that a press was about to write is ours only if
// it holds what that press would have written.
func (w *Writer) owns(list manifest, root, p string) (bool, error) {
	listed, known := list[p]
	if !known || !listed.pending {
		return known, nil
	}
	name := filepath.Join(root, filepath.FromSlash(p))
	content, err := w.disk.ReadFile(name)
	if err != nil {
		return false, sentence(name, err, oldSiteWhole)
	}
	return hashOf(content) == listed.hash, nil
}
