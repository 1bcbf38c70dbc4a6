package pressed

import (
	"crypto/sha256"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// A Tree is the state of every file below a folder: a path within it, and a hash of the mode and the bytes.
type Tree map[string][sha256.Size]byte

// Snapshot takes the state of every file below dir but for those in the folders named so, at any depth.
func Snapshot(dir string, without ...string) (Tree, error) {
	tree := Tree{}
	err := filepath.WalkDir(dir, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		inside, err := filepath.Rel(dir, name)
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if slices.Contains(without, entry.Name()) {
				return filepath.SkipDir
			}
			tree[filepath.ToSlash(inside)+"/"] = [sha256.Size]byte{}
			return nil
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		tree[filepath.ToSlash(inside)] = sha256.Sum256(append([]byte(entry.Type().String()), text...))
		return nil
	})
	return tree, err
}

// Differ gives the paths that are not the same in both, sorted.
func (t Tree) Differ(other Tree) []string {
	var paths []string
	for path, sum := range t {
		if theirs, there := other[path]; !there || theirs != sum {
			paths = append(paths, path)
		}
	}
	for path := range other {
		if _, here := t[path]; !here {
			paths = append(paths, path)
		}
	}
	slices.Sort(paths)
	return paths
}
