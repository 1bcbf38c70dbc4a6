package handout

import (
	"strconv"
	"strings"

	qr "github.com/piglig/go-qr"

	"acreleaf/cmd/acreleaf/internal/render"
)

// codeOf is the QR code of an address. Its correction is the middle one of four, which reads from a creased card.
func codeOf(address string) (render.Code, error) {
	made, err := qr.EncodeText(address, qr.Medium)
	if err != nil {
		return render.Code{}, err
	}
	size := made.Size()
	var path strings.Builder
	for y := range size {
		for x := 0; x < size; {
			run := 0
			for x+run < size && made.Module(x+run, y) {
				run++
			}
			if run > 0 {
				h := "h" + strconv.Itoa(run)
				path.WriteString("M" + strconv.Itoa(x) + " " + strconv.Itoa(y) + h + "v1H" + strconv.Itoa(x) + "z")
			}
			x += max(run, 1)
		}
	}
	return render.Code{Address: address, Size: size, Path: path.String()}, nil
}
