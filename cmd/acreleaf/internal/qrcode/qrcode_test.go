package qrcode

import (
	"bytes"
	"crypto/sha256"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write testdata/codes.txt")

const codes = "testdata/codes.txt"

// mostBytes are what each version from 1 to 20 holds with this correction: table 7 of ISO/IEC 18004.
var mostBytes = []int{14, 26, 42, 62, 84, 106, 122, 152, 180, 213, 251, 287, 331, 362, 412, 450, 504, 560, 624, 666}

// sample is a text of so many bytes: letters of addresses, and some of other languages. The check makes the same.
func sample(seed, length int) string {
	letters := []rune("abcdefghijklmnopqrstuvwxyz0123456789-._~:/?#=&%*ABCDEFñéí🌳")
	var text strings.Builder
	for i := 0; text.Len() < length; i++ {
		letter := string(letters[(seed*7919+i*i*31+i*seed)%len(letters)])
		if text.Len()+len(letter) > length {
			letter = "x"
		}
		text.WriteString(letter)
	}
	return text.String()
}

// The script of a page is compared with this list (cmd/check/browser/paper.mjs): for each version the shortest and the
// longest text, and others between.
func TestCodes(t *testing.T) {
	var list bytes.Buffer
	least := 0
	for i, most := range mostBytes {
		for n := range 16 {
			length := least + (most-least)*n/15
			if n == 14 {
				length = most - 1
			}
			seed := i*100 + n
			rows, err := Of(sample(seed, length))
			if err != nil {
				t.Fatal(err)
			}
			if want := 21 + 4*i; len(rows) != want {
				t.Errorf("%d bytes give %d modules a side, want %d", length, len(rows), want)
			}
			fmt.Fprintf(&list, "%d %d %d %s\n", seed, length, len(rows), sum(rows))
		}
		least = most + 1
	}
	if *update {
		if err := os.WriteFile(codes, list.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if want, err := os.ReadFile(codes); err != nil || !bytes.Equal(list.Bytes(), want) {
		t.Errorf("%s is not what this package gives (%v); run: go test ./cmd/acreleaf/internal/qrcode -update", codes, err)
	}
}

// sum is short for the modules of a code, a digit for each.
func sum(rows [][]bool) string {
	var digits []byte
	for _, row := range rows {
		for _, dark := range row {
			digit := byte('0')
			if dark {
				digit = '1'
			}
			digits = append(digits, digit)
		}
	}
	return fmt.Sprintf("%x", sha256.Sum256(digits))[:16]
}

func TestTooLong(t *testing.T) {
	if rows, err := Of(strings.Repeat("x", 3000)); err == nil {
		t.Errorf("3000 bytes give a code of %d modules a side", len(rows))
	}
}
