package output

import "testing"

func TestSmoke(t *testing.T) {
	dir := t.TempDir()
	for range 3 {
		r, err := Write(dir, []File{{"a/b/index.html", []byte("x")}, {"assets/x.css", []byte("y")}})
		t.Log(r, err)
	}
	r, err := Write(dir, []File{{"a/b", []byte("x")}})
	t.Log(r, err)
	r, err = Write(dir, nil)
	t.Log(r, err)
}
