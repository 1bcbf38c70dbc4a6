// Package markdown reads a page's text and prints it as HTML.
package markdown
