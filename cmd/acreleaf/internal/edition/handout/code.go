package handout

import (
	"strconv"
	"strings"

	"acreleaf/cmd/acreleaf/internal/qrcode"
	"acreleaf/cmd/acreleaf/internal/render"
)

// codeOf is the QR code of an address as a path of SVG.
func codeOf(address string) (render.Code, error) {
	rows, err := qrcode.Of(address)
	if err != nil {
		return render.Code{}, err
	}
	var path strings.Builder
	for y, row := range rows {
		for x := 0; x < len(row); {
			run := 0
			for x+run < len(row) && row[x+run] {
				run++
			}
			if run > 0 {
				h := "h" + strconv.Itoa(run)
				path.WriteString("M" + strconv.Itoa(x) + " " + strconv.Itoa(y) + h + "v1H" + strconv.Itoa(x) + "z")
			}
			x += max(run, 1)
		}
	}
	return render.Code{Address: address, Size: len(rows), Path: path.String()}, nil
}
