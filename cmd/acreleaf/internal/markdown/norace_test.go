//go:build !race

package markdown

const raceFactor = 1
