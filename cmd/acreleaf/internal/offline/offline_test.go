package offline_test

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/offline"
	"acreleaf/cmd/acreleaf/internal/output"
)

const unlisted = `<meta name="robots" content="noindex">`

var site = []output.File{
	{Path: "index.html", Bytes: []byte("home")},
	{Path: "guides/soil/index.html", Bytes: []byte("soil")},
	{Path: "workshops/report/leader/index.html", Bytes: []byte(unlisted + "notes")},
	{Path: "404.html", Bytes: []byte(unlisted + "missing")},
	{Path: "manual/rows.svg", Bytes: []byte("<svg/>")},
}

func made(t *testing.T, files []output.File) (list, worker output.File) {
	t.Helper()
	l := offline.NewList(output.File{Bytes: []byte("start();")})
	put := l.Through(func(output.File) error { return nil })
	for _, f := range files {
		if err := put(f); err != nil {
			t.Fatal(err)
		}
	}
	both := l.Files()
	if len(both) != 2 || both[1].Path != "worker.js" {
		t.Fatalf("made %v", both)
	}
	return both[0], both[1]
}

func TestListHasEachFile(t *testing.T) {
	text, _ := made(t, site)
	var list struct{ Files, Apart map[string][2]any }
	if err := json.Unmarshal(text.Bytes, &list); err != nil {
		t.Fatal(err)
	}
	if len(list.Files) != 3 || len(list.Apart) != 1 {
		t.Errorf("the list has %v", list)
	}
	for _, f := range site[:3] {
		one, known := list.Files[f.Path]
		if !known {
			one, known = list.Apart[f.Path]
		}
		sum := sha256.Sum256(f.Bytes)
		if !known || one != [2]any{hex.EncodeToString(sum[:])[:16], float64(len(f.Bytes))} {
			t.Errorf("%s is listed as %v", f.Path, one)
		}
	}
	if _, apart := list.Apart["workshops/report/leader/index.html"]; !apart {
		t.Error("the notes for the leader are among what everybody keeps")
	}
}

// The worker names the list, and changes with any byte of the edition, whatever the order in which files come.
func TestWorkerIsOfOneEdition(t *testing.T) {
	list, worker := made(t, site)
	if !strings.Contains(string(worker.Bytes), `"`+list.Path+`"`) || !strings.Contains(string(worker.Bytes), "start();") {
		t.Errorf("the worker is %s", worker.Bytes)
	}
	turned := []output.File{site[4], site[2], site[0], site[3], site[1]}
	if _, again := made(t, turned); string(again.Bytes) != string(worker.Bytes) {
		t.Error("the order of the files makes another worker")
	}
	for i, f := range site {
		changed := append([]output.File{}, site...)
		changed[i].Bytes = append([]byte("x"), f.Bytes...)
		_, other := made(t, changed)
		if same := string(other.Bytes) == string(worker.Bytes); same != (f.Path == "404.html") {
			t.Errorf("%s changed, and the worker is the same: %v", f.Path, same)
		}
	}
}

func TestThroughGivesTheError(t *testing.T) {
	full := errors.New("the disk is full")
	put := offline.NewList(output.File{}).Through(func(output.File) error { return full })
	if err := put(site[0]); !errors.Is(err, full) {
		t.Errorf("it gave %v", err)
	}
}
