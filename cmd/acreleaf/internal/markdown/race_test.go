//go:build race

package markdown

// The race detector makes everything five to ten times as slow, so that hostile pages are shorter under it.
const hostileSize = 50_000
