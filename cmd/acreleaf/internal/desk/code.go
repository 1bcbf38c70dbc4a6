package desk

import (
	"strings"

	"acreleaf/cmd/acreleaf/internal/qrcode"
)

// quietZone is how many modules beside a code stay light, or a camera does not find it (ISO/IEC 18004).
const quietZone = 4

// Black on white, by numbers that no colour scheme of a terminal changes.
const (
	blackOnWhite = "\x1b[38;5;16;48;5;231m"
	asBefore     = "\x1b[0m"
)

// drawCode draws the QR code of an address in half blocks, two modules to a character, since those are as high as two
// of them are wide.
func drawCode(address string) string {
	rows, err := qrcode.Of(address)
	if err != nil {
		return "" // the address is there to be typed
	}
	dark := func(x, y int) bool {
		x, y = x-quietZone, y-quietZone
		return y >= 0 && y < len(rows) && x >= 0 && x < len(rows) && rows[y][x]
	}
	size := len(rows) + 2*quietZone
	var text strings.Builder
	for y := 0; y < size; y += 2 {
		text.WriteString("  " + blackOnWhite)
		for x := range size {
			switch top, bottom := dark(x, y), dark(x, y+1); {
			case top && bottom:
				text.WriteString("█")
			case top:
				text.WriteString("▀")
			case bottom:
				text.WriteString("▄")
			default:
				text.WriteString(" ")
			}
		}
		text.WriteString(asBefore + "\n")
	}
	return text.String()
}
