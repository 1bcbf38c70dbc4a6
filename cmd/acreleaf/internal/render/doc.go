// Package render turns typed views into the bytes of a page: each kind of page of a site, the pages of a handout, and
// the pieces that are inside a page's text (worksheets, reckoners, exercises, tables, worked and sourced figures).
//
// It owns the HTML of the site and the words of its interface, and with them the HTML side of the contract with the
// page's script: ids, data- attributes, sentences that are hidden until they are needed. It must not compute,
// convert or round a number, choose an address or read a guide: a view says all of that already, as text. Every
// text of a view is escaped here, once; the only fields taken as they are have the type template.HTML.
//
// The frame of a page (head, masthead, foot) is a template, filled in once a site and kept as a form with blanks
// (form.go), because running a template for every guide of ten thousand costs more than all the rest of rendering.
// The pieces that are many and short are written directly.
package render
