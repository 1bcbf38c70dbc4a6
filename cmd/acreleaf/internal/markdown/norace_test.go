//go:build !race

package markdown

const hostileSize = 200_000 // bytes of each hostile page
