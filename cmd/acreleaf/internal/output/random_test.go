package output

import (
	"fmt"
	"math/rand/v2"
	"strings"
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

// Presses of random sites are cut at random calls by the power, again and again. Whatever was left, the last press must
// give its site and keep the one file of somebody else, if there is one.
func TestRandomPresses(t *testing.T) {
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 1))
	for range 2000 {
		others := tree{}
		if random.IntN(2) == 0 {
			others["public/j/mine.txt"] = "mine"
		}
		m := newMemory(others)
		m.lacks = lacks{random.IntN(4) == 0, random.IntN(4) == 0}
		var story []string
		for range 4 {
			files := randomSite(random)
			m.calls, m.stopAt = 0, 1+random.IntN(150)
			story = append(story, fmt.Sprintf("%s cut at %d", paths(files), m.stopAt))
			_, _ = writerOn("/office/public", m).write(files, Mark{})
			m = m.cutPower(random.IntN(len(m.states)+1), random.IntN(2) == 0, random)
		}
		last := randomSite(random)
		story = append(story, fmt.Sprintf("%s", paths(last)))
		press(t, m, last)
		clean := newMemory(others)
		press(t, clean, last)
		same(t, strings.Join(story, ", "), seen(m), seen(clean))
		if t.Failed() {
			return
		}
	}
}
