package book

import (
	"slices"
	"strings"
	"testing"
	"unsafe"
)

// Texts that are packed read as before, and are in one piece.
func TestPack(t *testing.T) {
	want := []string{"nitrate", "", "año", "top", "", "nitrate"}
	got := slices.Clone(want)
	var texts []*string
	for i := range got {
		got[i] = strings.Clone(got[i])
		texts = append(texts, &got[i])
	}
	pack(texts)
	if !slices.Equal(got, want) {
		t.Errorf("after packing the texts are %q, not %q", got, want)
	}
	start := unsafe.StringData(got[0])
	for i, at := 0, 0; i < len(got); i++ {
		if got[i] != "" && unsafe.StringData(got[i]) != (*byte)(unsafe.Add(unsafe.Pointer(start), at)) {
			t.Errorf("text %d is in a piece of its own", i)
		}
		at += len(got[i])
	}
	pack(nil)
}
