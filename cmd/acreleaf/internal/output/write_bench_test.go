package output

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
)

// site makes n pages of the given size, each in a folder of its own, with content that changes with the version.
func site(n, size int, version uint64) []File {
	random := rand.NewChaCha8([32]byte{byte(version)})
	files := make([]File, n)
	for i := range files {
		content := make([]byte, size)
		_, _ = random.Read(content) // never fails
		files[i] = File{fmt.Sprintf("guides/page-%d/index.html", i), content}
	}
	return files
}

const pageSize = 20 << 10

// BenchmarkBare is the floor: the same files, written by nothing but the system's calls.
func BenchmarkBare(b *testing.B) {
	files := site(1000, pageSize, 1)
	for b.Loop() {
		writeBare(b, b.TempDir(), files)
	}
}

func writeBare(tb testing.TB, dir string, files []File) {
	for _, f := range files {
		name := filepath.Join(dir, filepath.FromSlash(f.Path))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			tb.Fatal(err)
		}
		if err := os.WriteFile(name, f.Bytes, 0o644); err != nil {
			tb.Fatal(err)
		}
	}
}

func BenchmarkWriteNew(b *testing.B) {
	files := site(1000, pageSize, 1)
	for b.Loop() {
		write(b, b.TempDir(), files)
	}
}

func BenchmarkWriteChanged(b *testing.B) {
	dir := b.TempDir()
	versions := [][]File{site(1000, pageSize, 1), site(1000, pageSize, 2)}
	for i := 0; b.Loop(); i++ {
		write(b, dir, versions[i%2])
	}
}

func BenchmarkWriteUnchanged10000(b *testing.B) {
	dir := b.TempDir()
	files := site(10000, pageSize, 1)
	write(b, dir, files)
	write(b, dir, files)
	for b.Loop() {
		write(b, dir, files)
	}
}

func write(tb testing.TB, dir string, files []File) Report {
	tb.Helper()
	report, err := Write(dir, files, Mark{})
	if err != nil {
		tb.Fatal(err)
	}
	return report
}
