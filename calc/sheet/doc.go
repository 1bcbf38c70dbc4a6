// Package sheet holds calculations as data. A sheet is built once in Go from named givens, constants and terms; the
// same terms are then checked for dimensions, evaluated, compiled to WebAssembly, and printed as a formula and as
// words, so that what is shown cannot differ from what is computed.
//
// The package owns terms, the straight-line program they become, and graphs of linked sheets. It must not read
// files, know of pages, or name a crop: those belong above it.
package sheet
