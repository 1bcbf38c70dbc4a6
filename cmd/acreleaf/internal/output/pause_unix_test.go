//go:build unix

package output

import (
	"bufio"
	"errors"
	"flag"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"
)

var pause = flag.Duration("pause", 0, "how long a press stays stopped at each step of writing")

// A press is a program that is stopped, for -pause, at each step of its writing. Whenever it is, others see the old
// site or the new one, and a second press says who is writing and changes nothing.
func TestAPauseAtEachStep(t *testing.T) {
	for _, s := range stages(t) {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			v := &visit{stage: s, dir: filepath.Join(t.TempDir(), "public"), calls: map[string]int{}}
			plant(t, filepath.Dir(v.dir), s.others)
			if len(s.before) > 0 {
				if _, err := Write(v.dir, oldSite, Mark{From: "0a"}); err != nil {
					t.Fatal(err)
				}
			}
			v.press(t)
			same(t, "the site", v.shown(t), s.after)
			if beside := readTree(t, filepath.Dir(v.dir)); len(beside) != len(readTree(t, v.dir))+1 {
				t.Errorf("the press leaves %v", slices.Sorted(maps.Keys(beside)))
			}
			t.Logf("%s: %d pauses of %v, before %s: %d show the old site, %d the new one, %d a mixture where other files "+
				"stand, %d no site between two renames; %d times a second press says who is writing", s.name, v.steps, *pause,
				strings.Trim(fmt.Sprint(v.calls), "map[]"), v.old, v.new, v.mixed, v.away, v.refused)
			if v.steps < 30 || v.new < 1 || v.refused != v.steps-1 || (v.mixed > 0) != s.mixes ||
				(v.away == 1) != s.disk.lacks.exchange {
				t.Error("those are others than must be")
			}
		})
	}
}

// A visit is what others see while a press is stopped.
type visit struct {
	*stage
	dir                                   string
	steps, old, new, mixed, away, refused int
	calls                                 map[string]int
}

// press runs the press to its end, and looks around at each stop.
func (v *visit) press(t *testing.T) {
	t.Helper()
	lacking := ""
	if v.disk.lacks.links {
		lacking = "links"
	} else if v.disk.lacks.exchange {
		lacking = "exchange"
	}
	program := exec.Command(os.Args[0])
	program.Env = append(os.Environ(), stoppingVar+"="+v.dir+"\n"+lacking)
	program.Stderr = os.Stderr
	told, err := program.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	goOn, err := program.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := program.Start(); err != nil {
		t.Fatal(err)
	}
	process := program.Process.Pid
	defer func() { _ = program.Process.Kill() }() // when the test is over before the press
	for lines := bufio.NewScanner(told); ; {
		var status syscall.WaitStatus
		if _, err := syscall.Wait4(process, &status, syscall.WUNTRACED, nil); errors.Is(err, syscall.EINTR) {
			continue
		} else if err != nil {
			t.Fatal(err)
		}
		if !status.Stopped() {
			if status.ExitStatus() != 0 {
				t.Fatalf("the press ends with %v", status)
			}
			return
		}
		if !lines.Scan() {
			t.Fatal("the press stops and does not say where")
		}
		v.look(t, lines.Text(), process)
		time.Sleep(*pause)
		v.look(t, lines.Text(), process)
		v.count(t, lines.Text())
		if _, err := goOn.Write([]byte{0}); err != nil {
			t.Fatal(err)
		}
		if err := syscall.Kill(process, syscall.SIGCONT); err != nil {
			t.Fatal(err)
		}
	}
}

// look begins a second press, and sees whether the site is what its mark says.
func (v *visit) look(t *testing.T, step string, writer int) {
	t.Helper()
	before := readTree(t, filepath.Dir(v.dir))
	w, err := Begin(v.dir)
	var h *held
	switch {
	case err == nil && strings.HasPrefix(step, "lock "): // it has the folder not yet
		w.Drop()
	case !errors.As(err, &h) || h.why != writing || h.by.process != writer ||
		!strings.HasPrefix(err.Error(), "another acreleaf is writing "):
		t.Fatalf("before %s, a second press says: %v", step, err)
	}
	same(t, "before "+step+", after a second press", readTree(t, filepath.Dir(v.dir)), before)
	for from, site := range map[string]tree{"0a": v.before, "0b": v.after} {
		if _, _, current := Current(v.dir, from); current && !maps.Equal(v.shown(t), site) {
			t.Fatalf("before %s, a mixture is taken for the site %s", step, from)
		}
	}
}

// count counts a step by what readers see.
func (v *visit) count(t *testing.T, step string) {
	t.Helper()
	call, _, _ := strings.Cut(step, " ")
	v.calls[call]++
	v.steps++
	if call != "lock" {
		v.refused++
	}
	if _, err := os.Lstat(v.dir); err != nil && len(v.before) > 0 {
		v.away++ // the old site is whole, and any next command puts it back
		same(t, "the old site", readers(readTree(t, filepath.Join(filepath.Dir(v.dir), stagingName+"-public", former))),
			v.before)
		return
	}
	got := v.shown(t)
	switch mixed := v.checkTree(t, got, "before "+step); {
	case mixed:
		v.mixed++
	case maps.Equal(got, v.after):
		v.new++
	case v.new > 0:
		t.Fatalf("before %s, the old site is there again", step)
	default:
		v.old++
	}
}

// shown is what readers can see of the site's folder.
func (v *visit) shown(t *testing.T) tree {
	t.Helper()
	if _, err := os.Lstat(v.dir); err != nil {
		return tree{}
	}
	return readers(readTree(t, v.dir))
}
