package book

import (
	"maps"
	"sync"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// withoutRoom makes a plain edition with no room for texts, and calls a function when all pages are read.
func withoutRoom(o Options, read func()) (map[string]string, message.List) {
	made, one := map[string]string{}, new(sync.Mutex)
	p := newPress(o, func(s *Settings) Edition { read(); return newPlain(s) })
	p.room = newTextRoom(0)
	p.out = &taker{put: func(f output.File) error {
		one.Lock()
		defer one.Unlock()
		made[f.Path] = string(f.Bytes)
		return nil
	}}
	p.make()
	return made, p.messages
}

// What is made, and each message with its lines, is the same when texts are let go and read again.
func TestTextsAreReadAgain(t *testing.T) {
	for name, b := range map[string]string{"whole": guide("B", 2, "Text."), "fault": guide("B", 2, "Use 40 lb N/ac."),
		"no part": guide("B", 2, "[A](a.md#nowhere)")} {
		o := Options{Content: content(map[string]string{"a": guide("A", 1, "[B](b.md)"), "b": b}), Name: "content"}
		want, said := pressed(o, newPlain)
		got, again := withoutRoom(o, func() {})
		if len(said) == 0 && !maps.Equal(got, want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
		if len(again) != len(said) || (name == "whole") != (len(said) == 0) {
			t.Fatalf("%s: %v, want %v", name, again, said)
		}
		for i, m := range again {
			if m.Text != said[i].Text || m.Span != said[i].Span || string(m.Source.Text) != string(said[i].Source.Text) {
				t.Errorf("%s: %v, want %v", name, m, said[i])
			}
		}
	}
}

// A text that changed before it was read again is a fault, whatever is in it then.
func TestTextChangesWhileItIsLetGo(t *testing.T) {
	for _, saved := range []string{"", "Text alone.\n", "---\ntitle: A\n---\n", guide("Another", 1, "Other text.")} {
		files := content(map[string]string{"a": guide("A", 1, "[B](b.md)"), "b": guide("B", 2, "Text.")})
		_, messages := withoutRoom(Options{Content: files, Name: "content"}, func() {
			files["guides/b.md"].Data = []byte(saved)
		})
		changing := message.Changing(nil)
		found := false
		for _, m := range messages {
			found = found || m.ID == changing.ID && m.Source.Name == "content/guides/b.md"
			if m.ID == "page-failed" {
				t.Errorf("%q: %v", saved, m)
			}
		}
		if !found || !message.HasFault(messages) {
			t.Errorf("%q: %v", saved, messages)
		}
	}
}
