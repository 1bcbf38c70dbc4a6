//go:build !race

package markdown

const hostileSize = 100_000 // bytes of each hostile page
