package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"acreleaf/cmd/check/internal/pressed"
	"acreleaf/cmd/check/internal/step"
)

// A killing is three versions of a site of many pages, and folders into which presses of them are killed.
type killing struct {
	acreleaf string
	dir      string
	sites    [3]pressed.Tree // as a press that nothing disturbs makes them
	took     time.Duration   // that one press takes
}

// othersFiles are what somebody else has in the folder of a site.
var othersFiles = map[string]string{"CNAME": "mine", "guides/p-30/notes.txt": "mine", "mine/more.txt": "mine"}

// killingPages is how many pages a site has.
const killingPages = 500

func newKilling(ctx context.Context, acreleaf, dir string) (*killing, error) {
	k := &killing{acreleaf: acreleaf, dir: dir}
	for v := range k.sites {
		if err := k.writeContent(v); err != nil {
			return nil, err
		}
		start := time.Now()
		plain := filepath.Join(dir, fmt.Sprintf("plain-%d", v))
		if said, err := k.press(ctx, v, plain).CombinedOutput(); err != nil {
			return nil, fmt.Errorf("%w: %s", err, said)
		}
		k.took = time.Since(start)
		var err error
		if k.sites[v], err = siteOf(plain); err != nil {
			return nil, err
		}
	}
	return k, nil
}

// siteOf is the state of a site without the list of its files and without what somebody else has there.
func siteOf(dir string) (pressed.Tree, error) {
	tree, err := pressed.Snapshot(dir)
	delete(tree, ".acreleaf-manifest")
	for name := range othersFiles {
		delete(tree, name)
	}
	for name := range tree {
		if strings.HasSuffix(name, "/") {
			delete(tree, name) // readers see no folder, only what is in it
		}
	}
	return tree, err
}

func (k *killing) content(version int) string {
	return filepath.Join(k.dir, fmt.Sprintf("content-%d", version))
}

// writeContent writes one version: some pages come and go, and some differ.
func (k *killing) writeContent(version int) error {
	guides := filepath.Join(k.content(version), "guides")
	if err := os.MkdirAll(guides, 0o755); err != nil {
		return err
	}
	for _, name := range []string{"site.yaml", "sources.yaml"} {
		text, err := os.ReadFile(filepath.Join("content", name))
		text, _, _ = bytes.Cut(text, []byte("\nsee:\n")) // leads to pages that are not here
		if err == nil {
			err = os.WriteFile(filepath.Join(k.content(version), name), text, 0o644)
		}
		if err != nil {
			return err
		}
	}
	page := func(name, title string, text int) error {
		said := fmt.Sprintf("---\ntitle: %s\nsummary: A page of many.\n---\n\nThis is text %c.\n", title, 'A'+text)
		return os.WriteFile(filepath.Join(k.content(version), name), []byte(said), 0o644)
	}
	err := page("home.md", "All pages", version)
	for n := 10 * version; n < 10*version+killingPages; n++ {
		text := version
		if n%3 == 0 {
			text = 0
		}
		err = errors.Join(err, page(fmt.Sprintf("guides/p-%d.md", n), fmt.Sprintf("Page %d", n), text))
	}
	return err
}

func (k *killing) press(ctx context.Context, version int, to string) *exec.Cmd {
	return exec.CommandContext(ctx, k.acreleaf, "press", "--from", k.content(version), "--to", to)
}

// counts are what was seen of kills.
type counts struct{ kills, old, new, mixed, others int }

func (c counts) String() string {
	return fmt.Sprintf("%d kills: %d left the old site, %d the new one, %d a mixture where other files stand; "+
		"%d files of others were looked at, and are as they were", c.kills, c.old, c.new, c.mixed, c.others)
}

// kill presses one version over another and kills the press, again and again, and then presses the version in peace.
func (k *killing) kill(ctx context.Context, times int, withOthers bool) (c counts, err error) {
	to := filepath.Join(k.dir, fmt.Sprintf("killed-%v", withOthers), "public")
	if withOthers {
		if err := plantOthers(to); err != nil {
			return c, err
		}
	}
	if said, err := k.press(ctx, 0, to).CombinedOutput(); err != nil {
		return c, fmt.Errorf("%w: %s", err, said)
	}
	there := 0
	for c.kills < times {
		next := (there + 1) % len(k.sites)
		press := k.press(ctx, next, to)
		if err := press.Start(); err != nil {
			return c, err
		}
		time.Sleep(time.Duration(rand.Int64N(int64(k.took + k.took/8))))
		_ = press.Process.Kill()
		if press.Wait() == nil {
			there = next // it was done
			continue
		}
		c.kills++
		mixed, err := k.look(to, there, next, withOthers, &c)
		if err != nil {
			return c, fmt.Errorf("kill %d: %w", c.kills, err)
		}
		if err := k.mend(ctx, next, to, mixed); err != nil {
			return c, fmt.Errorf("kill %d: %w", c.kills, err)
		}
		there = next
	}
	return c, nil
}

// look sees what a killed press left.
func (k *killing) look(to string, there, next int, withOthers bool, c *counts) (mixed bool, err error) {
	if withOthers {
		if err := lookAtOthers(to); err != nil {
			return false, err
		}
		c.others += len(othersFiles)
	}
	found, err := siteOf(to)
	if err != nil {
		return false, err
	}
	for name := range found {
		if strings.HasPrefix(name, ".acreleaf-") {
			delete(found, name)
		}
	}
	switch {
	case len(found.Differ(k.sites[there])) == 0:
		c.old++
		return false, nil
	case len(found.Differ(k.sites[next])) == 0:
		c.new++
		return false, nil
	case !withOthers:
		return false, same("neither the old site nor the new one", found.Differ(k.sites[next]))
	}
	c.mixed++
	for name, sum := range found {
		if sum != k.sites[there][name] && sum != k.sites[next][name] {
			return true, fmt.Errorf("%s is neither the old page nor the new one", name)
		}
	}
	return true, nil
}

// mend presses in peace, after which all must be right. A mixture must have been told of.
func (k *killing) mend(ctx context.Context, version int, to string, mixed bool) error {
	said, err := k.press(ctx, version, to).CombinedOutput()
	if err != nil {
		return fmt.Errorf("the next press: %w: %s", err, said)
	}
	if mixed && !bytes.Contains(said, []byte("was cut short")) {
		return fmt.Errorf("the next press does not say that the last one was cut short: %s", said)
	}
	found, err := siteOf(to)
	if err != nil {
		return err
	}
	entries, err := os.ReadDir(filepath.Dir(to))
	if err == nil && len(entries) != 1 {
		err = fmt.Errorf("the next press leaves %v beside the site", entries)
	}
	return errors.Join(err, same("the next press does not make it whole", found.Differ(k.sites[version])))
}

func plantOthers(to string) error {
	for name, text := range othersFiles {
		file := filepath.Join(to, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			return err
		}
	}
	return nil
}

func lookAtOthers(to string) error {
	for name, text := range othersFiles {
		if found, err := os.ReadFile(filepath.Join(to, filepath.FromSlash(name))); err != nil || string(found) != text {
			return fmt.Errorf("a file of somebody else was touched: %s holds %q, %v", name, found, err)
		}
	}
	return nil
}

// killed is a short form of go run ./cmd/check faults for every day.
func (b *bench) killed(ctx context.Context, r *step.Record) error {
	k, err := newKilling(ctx, b.acreleaf, b.kills)
	if err != nil {
		return err
	}
	for _, withOthers := range []bool{false, true} {
		c, err := k.kill(ctx, 3, withOthers)
		if err != nil {
			return err
		}
		r.Note("  %v", c)
	}
	pairs, err := k.pairs(ctx, 2)
	r.Note("  %v", pairs)
	return err
}
