package output

import (
	"bytes"
	"errors"
	"fmt"
	"hash/crc32"
	"io/fs"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"
)

// manifest is the list of what Acreleaf wrote into a site's folder, by slash path.
type manifest map[string]entry

// entry is what is remembered of one file.
type entry struct {
	hash    uint64
	size    int64
	time    int64 // modification time in nanoseconds since 1970, 0 when it proves nothing
	pending bool  // it was about to be written for the first time: it is ours only if its content has the hash
}

// matches says whether the file on the disk is, by its looks, the one remembered, so that it need not be read.
func (e entry) matches(info fs.FileInfo) bool {
	return e.time != 0 && e.time == info.ModTime().UnixNano() && e.size == info.Size()
}

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// hashOf tells contents apart. Two checksums that processors compute in hardware make 64 bits: enough against
// accidents, at memory speed; nobody gains by forging a file of a site that he can write to anyway.
func hashOf(content []byte) uint64 {
	return uint64(crc32.ChecksumIEEE(content))<<32 | uint64(crc32.Checksum(content, castagnoli))
}

// A file that is changed within one tick of the clock after we wrote it, to the same size, has the looks of ours. So
// a time that is this close to now is not remembered, and the file is read at the next press.
const (
	fineTick   = 20 * time.Millisecond
	coarseTick = 2 * time.Second // of disks that keep whole seconds, as USB sticks do
)

func newEntry(content []byte, hash uint64, info fs.FileInfo, now time.Time) entry {
	e := entry{hash: hash, size: int64(len(content)), time: info.ModTime().UnixNano()}
	tick := fineTick
	if info.ModTime().Nanosecond() == 0 {
		tick = coarseTick
	}
	if now.Sub(info.ModTime()) < tick {
		e.time = 0
	}
	return e
}

const manifestHead = "Files that Acreleaf wrote here, list 1. It removes only these. Do not edit.\n"

// encode writes one line an entry, sorted: state, hash, size, time, path.
func (m manifest) encode() []byte {
	b := []byte(manifestHead)
	for _, p := range slices.Sorted(maps.Keys(m)) {
		e := m[p]
		state := "kept "
		if e.pending {
			state = "new "
		}
		b = append(b, state...)
		b = strconv.AppendUint(b, e.hash, 16)
		b = strconv.AppendInt(append(b, ' '), e.size, 10)
		b = strconv.AppendInt(append(b, ' '), e.time, 10)
		b = append(append(append(b, ' '), p...), '\n')
	}
	return b
}

var errDamaged = errors.New("the list is damaged")

// decode reads what encode wrote, and trusts no path in it: a list that could lead outside the folder is damaged.
func decode(text []byte) (manifest, error) {
	body, ok := bytes.CutPrefix(text, []byte(manifestHead))
	if !ok {
		return nil, errDamaged
	}
	m := manifest{}
	for line := range strings.Lines(string(body)) {
		line, whole := strings.CutSuffix(line, "\n")
		p, e, err := decodeLine(line)
		if err != nil || !whole || checkPath(p) != "" {
			return nil, fmt.Errorf("%w: %q", errDamaged, line)
		}
		m[p] = e
	}
	return m, nil
}

func decodeLine(line string) (string, entry, error) {
	fields := strings.SplitN(line, " ", 5)
	if len(fields) != 5 || fields[0] != "kept" && fields[0] != "new" {
		return "", entry{}, errDamaged
	}
	hash, err1 := strconv.ParseUint(fields[1], 16, 64)
	size, err2 := strconv.ParseInt(fields[2], 10, 64)
	at, err3 := strconv.ParseInt(fields[3], 10, 64)
	return fields[4], entry{hash, size, at, fields[0] == "new"}, errors.Join(err1, err2, err3)
}
