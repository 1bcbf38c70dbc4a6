package schema

import "acreleaf/cmd/acreleaf/internal/worksheet"

// drawingShape is the schema of a drawing.
func drawingShape() object {
	return table("The lines between the fences of a drawing.", worksheet.DrawingKeys(), map[string]form{
		"of":    needShaped("The name of the worksheet that it draws.", filled),
		"title": bare(need("A title in place of the usual one.")),
	})
}
