//go:build unix

package output

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// stoppingVar names the folder that a program of its own presses into: this test's program, started again.
const stoppingVar = "ACRELEAF_TEST_STOPPING"

func TestMain(m *testing.M) {
	dir, lacking, stops := strings.Cut(os.Getenv(stoppingVar), "\n")
	if !stops {
		os.Exit(m.Run())
	}
	d := &stopping{realDisk{}, lacks{links: lacking == "links", exchange: lacking == "exchange"}}
	if _, err := writerOn(dir, d).write(newSite, Mark{From: "0b"}); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// stopping is the real disk, on which the program stops before each call that writes, and when half of a file is
// written.
type stopping struct {
	disk
	lacks lacks
}

// stop says what comes next and stops the program. It reads a byte, since another thread may be the first to stop.
func (*stopping) stop(call, name string) {
	fmt.Println(call, filepath.Base(name))
	if err := syscall.Kill(syscall.Getpid(), syscall.SIGSTOP); err != nil {
		panic(err)
	}
	if _, err := io.ReadFull(os.Stdin, make([]byte, 1)); err != nil {
		panic(err)
	}
}

func (d *stopping) Create(name string, content []byte) error {
	d.stop("create", name)
	half := len(content) / 2
	if err := d.disk.Create(name, content[:half]); err != nil {
		return err
	}
	d.stop("write", name)
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_APPEND, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(content[half:])
	return errors.Join(err, f.Close())
}

func (d *stopping) Link(from, to string) error {
	d.stop("link", to)
	if d.lacks.links {
		return wrong("link", to, syscall.EPERM)
	}
	return d.disk.Link(from, to)
}

func (d *stopping) Exchange(a, b string) error {
	d.stop("exchange", a)
	if d.lacks.exchange {
		return wrong("exchange", a, errors.ErrUnsupported)
	}
	return d.disk.Exchange(a, b)
}

func (d *stopping) Mkdir(name string) error {
	d.stop("mkdir", name)
	return d.disk.Mkdir(name)
}

func (d *stopping) Twin(name, of string) error {
	d.stop("mkdir", name)
	return d.disk.Twin(name, of)
}

func (d *stopping) Rename(from, to string) error {
	d.stop("rename", to)
	return d.disk.Rename(from, to)
}

func (d *stopping) Remove(name string) error {
	d.stop("remove", name)
	return d.disk.Remove(name)
}

func (d *stopping) Flush(names []string) error {
	d.stop("flush", names[0])
	return d.disk.Flush(names)
}

func (d *stopping) Lock(name string) (func(), error) {
	d.stop("lock", name)
	free, err := d.disk.Lock(name)
	return func() { d.stop("unlock", name); free() }, err
}
