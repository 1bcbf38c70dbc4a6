package site

import (
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/page"
)

// href is the way from a page to what a link leads to.
func href(from page.Address, to book.Target) string {
	switch to.Kind {
	case book.ToPage:
		return wayToPart(from, to.Page, to.Text)
	case book.ToFile:
		return from.ToPath(to.Text)
	}
	return to.Text
}

// wayToPart is the way to a page, or to a part of it.
func wayToPart(from, to page.Address, part string) string {
	way := ""
	if to != from {
		way = from.To(to)
	}
	if part == "" && way != "" {
		return way
	}
	return way + "#" + part
}

// sourcesAddress is where the bibliography of a language is.
func sourcesAddress(language string) page.Address {
	return page.Address{Kind: kind.Sources, Language: language, Name: "sources"}
}

// missing is the page for an address that is not there. A server looks for it by the name of its file.
var missing = page.Address{Kind: kind.Missing}

// homeOf is the home page that a page leads back to, that of its language.
func homeOf(address page.Address) page.Address {
	return page.Address{Kind: kind.Home, Language: address.Language}
}
