package main

import (
	"bytes"
	"context"
	"fmt"
	"os/exec"
	"path/filepath"
)

// pairCounts are what was seen of pairs of presses that began at once.
type pairCounts struct{ pairs, won, inTurn int }

func (p pairCounts) String() string {
	return fmt.Sprintf("%d pairs of presses at once: in %d one wins and the other says who is writing, in %d the second "+
		"began after the first was done; the site is the winner's each time", p.pairs, p.won, p.inTurn)
}

// pairs begins two presses of different versions into one folder at once, again and again.
func (k *killing) pairs(ctx context.Context, times int) (p pairCounts, err error) {
	to := filepath.Join(k.dir, "pairs", "public")
	there := 0
	if said, err := k.press(ctx, there, to).CombinedOutput(); err != nil {
		return p, fmt.Errorf("%w: %s", err, said)
	}
	for range times {
		p.pairs++
		versions := [2]int{(there + 1) % len(k.sites), (there + 2) % len(k.sites)}
		presses, outputs := [2]*exec.Cmd{}, [2]bytes.Buffer{}
		for i, v := range versions {
			presses[i] = k.press(ctx, v, to)
			presses[i].Stderr = &outputs[i]
			if err := presses[i].Start(); err != nil {
				return p, err
			}
		}
		var winners []int
		for i, press := range presses {
			if press.Wait() == nil {
				winners = append(winners, versions[i])
			} else if !bytes.Contains(outputs[i].Bytes(), []byte("error: another acreleaf is writing ")) {
				return p, fmt.Errorf("pair %d: a press fails and says: %s", p.pairs, outputs[i].String())
			}
		}
		found, err := siteOf(to)
		if err != nil {
			return p, err
		}
		switch len(winners) {
		case 0:
			return p, fmt.Errorf("pair %d: neither press wins", p.pairs)
		case 1:
			p.won++
			there = winners[0]
		default:
			p.inTurn++
			there = winners[0]
			if len(found.Differ(k.sites[there])) > 0 {
				there = winners[1]
			}
		}
		if err := same("a mixture", found.Differ(k.sites[there])); err != nil {
			return p, fmt.Errorf("pair %d: %w", p.pairs, err)
		}
	}
	return p, nil
}
