package output

import (
	"bytes"
	"errors"
	"fmt"
	"hash/crc32"
	"maps"
	"path"
	"slices"
	"strconv"
	"strings"
)

// manifest is the list of what Acreleaf wrote into a site's folder, by slash path.
type manifest map[string]entry

// entry is what is remembered of one file.
type entry struct {
	hash    uint64
	pending bool // it was about to be written for the first time: it is ours only if its content has the hash
}

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// hashOf tells contents apart. Two checksums that processors compute in hardware make 64 bits: enough against
// accidents, at memory speed; nobody gains by forging a file of a site that he can write to anyway.
func hashOf(content []byte) uint64 {
	return uint64(crc32.ChecksumIEEE(content))<<32 | uint64(crc32.Checksum(content, castagnoli))
}

// A Mark says what a site was made from, so that a press with nothing changed can be told from any other.
type Mark struct {
	From  string // a hash of all that went in; "" when it is not known
	Pages int    // how many pages were made
}

const (
	manifestHead = "Files that Acreleaf wrote here, list 2. It removes only these. Do not edit.\n"
	markHead     = "from "
)

// encode writes the mark, and one line an entry, sorted: state, hash, path. There is no time in it, so that two presses
// of one site give the same bytes.
func (m manifest) encode(mark Mark) []byte {
	b := []byte(manifestHead)
	if mark.From != "" {
		b = fmt.Appendf(b, "%s%s %d\n", markHead, mark.From, mark.Pages)
	}
	for _, p := range slices.Sorted(maps.Keys(m)) {
		e := m[p]
		state := "kept "
		if e.pending {
			state = "new "
		}
		b = append(b, state...)
		b = strconv.AppendUint(b, e.hash, 16)
		b = append(append(append(b, ' '), p...), '\n')
	}
	return b
}

var errDamaged = errors.New("the list is damaged")

// decode reads what encode wrote, and trusts no path in it: a list that could lead outside the folder is damaged.
func decode(text []byte) (manifest, Mark, error) {
	body, ok := bytes.CutPrefix(text, []byte(manifestHead))
	if !ok {
		return nil, Mark{}, errDamaged
	}
	m, mark := manifest{}, Mark{}
	if rest, marked := bytes.CutPrefix(body, []byte(markHead)); marked {
		line, after, _ := bytes.Cut(rest, []byte{'\n'})
		if _, err := fmt.Sscanf(string(line), "%s %d", &mark.From, &mark.Pages); err != nil {
			return nil, Mark{}, fmt.Errorf("%w: %q", errDamaged, line)
		}
		body = after
	}
	for line := range strings.Lines(string(body)) {
		line, whole := strings.CutSuffix(line, "\n")
		p, e, err := decodeLine(line)
		if err != nil || !whole || checkPath(p) != "" {
			return nil, Mark{}, fmt.Errorf("%w: %q", errDamaged, line)
		}
		m[p] = e
	}
	return m, mark, nil
}

// settled is the list of files that are all in place.
func (m manifest) settled() manifest {
	list := make(manifest, len(m))
	for name, e := range m {
		list[name] = entry{hash: e.hash}
	}
	return list
}

// folders gives the folders that files of the list are in.
func (m manifest) folders() map[string]bool {
	above := map[string]bool{}
	for name := range m {
		for p := path.Dir(name); p != "." && !above[p]; p = path.Dir(p) {
			above[p] = true
		}
	}
	return above
}

func decodeLine(line string) (string, entry, error) {
	fields := strings.SplitN(line, " ", 3)
	if len(fields) != 3 || fields[0] != "kept" && fields[0] != "new" {
		return "", entry{}, errDamaged
	}
	hash, err := strconv.ParseUint(fields[1], 16, 64)
	return fields[2], entry{hash, fields[0] == "new"}, err
}
