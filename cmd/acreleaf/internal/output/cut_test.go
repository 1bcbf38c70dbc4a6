package output

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// A season of changes to one site: pages come, change and go, an asset changes its name, a page becomes a folder.
var (
	oldSite = pages(
		"assets/page.aaaa.css", "a",
		"index.html", "needs page.aaaa.css",
		"guides/soil/index.html", "soil needs page.aaaa.css",
		"guides/gone/index.html", "gone needs page.aaaa.css",
		"guides/same/index.html", "says the same",
		"manual", "a page without a folder needs page.aaaa.css",
	)
	newSite = pages(
		"assets/page.bbbb.css", "b",
		"index.html", "now needs page.bbbb.css",
		"guides/soil/index.html", "more soil needs page.bbbb.css",
		"guides/same/index.html", "says the same",
		"guides/new/deep/index.html", "new needs page.bbbb.css",
		"manual/index.html", "a folder needs page.bbbb.css",
	)
	foreign = tree{"public/CNAME": "mine", "public/guides/gone/mine.txt": "mine", "public/guides/soil/mine.txt": "mine"}
)

// A stage is a disk with the old site on it, and what must hold whenever a press of the new one ends.
type stage struct {
	name   string
	disk   *memory
	others tree // files of somebody else
	before tree // the old site, with the others
	after  tree // the new site, with the others
	mixes  bool // the files go in one by one
}

func stages(t *testing.T) []*stage {
	var all []*stage
	for name, s := range map[string]stage{
		"exchanged":      {},
		"two renames":    {disk: &memory{lacks: lacks{exchange: true}}},
		"copied":         {disk: &memory{lacks: lacks{links: true}}},
		"others in it":   {others: foreign, mixes: true},
		"no site before": {before: tree{}},
	} {
		s.name = name
		m := newMemory(s.others)
		if s.disk != nil {
			m.lacks = s.disk.lacks
		}
		if s.before == nil {
			press(t, m, oldSite)
		}
		s.before = seen(m)
		m.states = nil
		for _, n := range m.names {
			n.flushed = true
		}
		s.disk = m
		done := m.clone()
		press(t, done, newSite)
		s.after = seen(done)
		all = append(all, &s)
	}
	slices.SortFunc(all, func(a, b *stage) int { return strings.Compare(a.name, b.name) })
	return all
}

// press writes a site with nothing in its way, and leaves nothing else.
func press(t *testing.T, m *memory, files []File) {
	t.Helper()
	m.calls, m.failAt, m.stopAt, m.before = 0, 0, 0, nil
	if _, err := writerOn("/office/public", m).write(files, Mark{}); err != nil {
		t.Fatal(err)
	}
	for name := range m.tree("/office") {
		if strings.HasPrefix(name, ownPrefix) || strings.HasPrefix(name, "public/"+stagingName) {
			t.Fatalf("the press leaves %s", name)
		}
	}
	n := m.names["/office/public/"+manifestName]
	if n == nil {
		same(t, "what is written without a list", len(files), 0)
		return
	}
	list, _, err := decode(n.content)
	if err != nil {
		t.Fatal(err)
	}
	same(t, "listed", slices.Sorted(maps.Keys(list)), paths(files))
}

// seen is what readers can see, and without the list.
func seen(m *memory) tree { return readers(m.tree("/office/public")) }

// readers takes what is Acreleaf's own out of what is in the site's folder.
func readers(files tree) tree {
	for name := range files {
		if strings.HasPrefix(name, ownPrefix) {
			delete(files, name)
		}
	}
	return files
}

// check fails when a reader could meet anything but the old or the new site, or when somebody else's file is not there.
// In a mixture, each file must be whole, and no page without its style.
func (s *stage) check(t *testing.T, m *memory, when string) (mixed bool) {
	t.Helper()
	return s.checkTree(t, seen(m), when)
}

func (s *stage) checkTree(t *testing.T, got tree, when string) (mixed bool) {
	t.Helper()
	isOld, isNew := maps.Equal(got, s.before), maps.Equal(got, s.after)
	if !isOld && !isNew && !s.mixes {
		t.Fatalf("%s: neither the old site nor the new one: %v", when, slices.Sorted(maps.Keys(got)))
	}
	for name, content := range got {
		if strings.HasSuffix(name, "/") {
			continue
		}
		if content != s.before[name] && content != s.after[name] {
			t.Fatalf("%s: %s holds %q", when, name, content)
		}
		if _, asset, ok := strings.Cut(content, "needs "); ok && got["assets/"+asset] == "" {
			t.Fatalf("%s: %s needs %s, which is not there", when, name, asset)
		}
	}
	for name, content := range s.others {
		if got[strings.TrimPrefix(name, "public/")] != content {
			t.Fatalf("%s: %s was touched", when, name)
		}
	}
	return !isOld && !isNew
}

var stateWords = regexp.MustCompile("What was there before is |All that is new is in place|A part of what is new is |" +
	"Nothing was |The old site is in ")

// Every call to the disk fails, the first, the second and so on until the press has no more, in each of five ways.
func TestEveryCallFails(t *testing.T) {
	half := func(content []byte) []byte { return content[:len(content)/2] }
	all := func(content []byte) []byte { return content }
	failed, mixtures, handled := 0, 0, 0
	for _, s := range stages(t) {
		for name, f := range map[string]failure{
			"no room": {syscall.ENOSPC, nil}, "no right": {syscall.EACCES, nil}, "a fault": {syscall.EIO, nil},
			"cut short": {syscall.ENOSPC, half}, "an error at closing": {syscall.EIO, all},
		} {
			for at := 1; ; at++ {
				m := s.disk.clone()
				m.failAt, m.fail = at, f
				_, err := writerOn("/office/public", m).write(newSite, Mark{})
				if !m.failed {
					break
				}
				failed++
				when := fmt.Sprintf("%s, %s at call %d (%v)", s.name, name, at, err)
				one := *s
				one.mixes = s.mixes || err != nil && strings.Contains(err.Error(), siteMixed)
				if one.check(t, m, when) {
					mixtures++
				}
				one.told(t, m, err, when)
				if err == nil {
					handled++
				}
				press(t, m, newSite)
				same(t, when+", then a press", seen(m), s.after)
				if t.Failed() {
					return
				}
			}
		}
	}
	t.Logf("%d failures: %d that the press needs not heed, %d mixtures where other files stand", failed, handled, mixtures)
	if failed < 1000 {
		t.Errorf("only %d calls failed", failed)
	}
}

// told sees that an error is a sentence, and true.
func (s *stage) told(t *testing.T, m *memory, err error, when string) {
	t.Helper()
	got := seen(m)
	switch {
	case err == nil:
		same(t, when, got, s.after)
	case !stateWords.MatchString(err.Error()) || !strings.Contains(err.Error(), "/office/"):
		t.Fatalf("%s: this is no sentence", when)
	case strings.Contains(err.Error(), oldSiteWhole):
		same(t, when, got, s.before)
	case strings.Contains(err.Error(), newSiteWhole):
		same(t, when, got, s.after)
	}
}

// The program is killed at every call, or the power fails: then names outlast up to one of the changes since the last
// flush, and bytes that were not flushed are lost or others. The next press, of the old site, the new one or none,
// must put all in order.
func TestPressCutAtEveryCall(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	cuts, mixtures := 0, 0
	for _, s := range stages(t) {
		for at := 1; ; at++ {
			m := s.disk.clone()
			m.stopAt = at
			if _, err := writerOn("/office/public", m).write(newSite, Mark{}); err == nil && m.calls < at {
				break
			}
			states := len(m.states)
			disks := map[string]*memory{"killed": m.clone()}
			for _, state := range []int{0, states, random.IntN(states + 1), random.IntN(states + 1)} {
				disks[fmt.Sprintf("lost from change %d of %d", state, states)] = m.cutPower(state, false, random)
				disks[fmt.Sprintf("garbled from change %d of %d", state, states)] = m.cutPower(state, true, random)
			}
			for how, disk := range disks {
				cuts++
				when := fmt.Sprintf("%s, cut at call %d, %s", s.name, at, how)
				shown := disk.clone()
				if shown.names["/office/public"] == nil { // between two renames: any next command puts the site back
					if w := writerOn("/office/public", shown); w.begin() == nil {
						w.Drop()
					}
				}
				if s.check(t, shown, when) {
					mixtures++
				}
				for _, next := range [][]File{newSite, oldSite, nil} {
					again := disk.clone()
					press(t, again, next)
					clean := newMemory(s.others)
					press(t, clean, next)
					same(t, when+", then a press", seen(again), seen(clean))
				}
				if t.Failed() {
					return
				}
			}
		}
	}
	t.Logf("%d cuts, %d mixtures where other files stand", cuts, mixtures)
	if cuts < 2000 || mixtures == 0 {
		t.Errorf("only %d cuts", cuts)
	}
}
