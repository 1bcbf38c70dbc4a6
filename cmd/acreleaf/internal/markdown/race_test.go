//go:build race

package markdown

// raceFactor is how much longer the race detector lets everything take.
const raceFactor = 10
