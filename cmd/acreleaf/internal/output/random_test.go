package output

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// randomSite draws files from a few names that get in each other's way: files, folders and files below them.
func randomSite(random *rand.Rand) []File {
	names := []string{"a", "a/b", "a/b/c", "a/b/c/d", "a/e", "f/g/h", "f", "f/g", "i", "assets/x", "assets/y"}
	for {
		var files []File
		for _, name := range names {
			if random.IntN(3) == 0 {
				files = append(files, File{name, fmt.Appendf(nil, "%s %d", name, random.IntN(3))})
			}
		}
		if len(Check(paths(files))) == 0 {
			return files
		}
	}
}

// Presses of random sites are cut at random steps, again and again. Whatever was left, the last press must give its
// site and keep the one foreign file.
func TestRandomPresses(t *testing.T) {
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 1))
	for range 40 {
		dir := t.TempDir()
		plant(t, dir, tree{"j/mine.txt": "mine"})
		var story []string
		for range 4 {
			files, cut := randomSite(random), random.IntN(30)
			story = append(story, fmt.Sprintf("%s cut at %d", paths(files), cut))
			_, _ = writerOn(dir, &cutDisk{realDisk{}, cut}).write(files, Mark{})
		}
		last := randomSite(random)
		story = append(story, fmt.Sprintf("%s", paths(last)))
		if _, err := Write(dir, last, Mark{}); err != nil {
			t.Fatalf("%v\nafter %q", err, story)
		}
		clean := t.TempDir()
		plant(t, clean, tree{"j/mine.txt": "mine"})
		write(t, clean, last)
		same(t, fmt.Sprintf("%q", story), readTree(t, dir).withoutList(), readTree(t, clean).withoutList())
		if t.Failed() {
			return
		}
	}
}
