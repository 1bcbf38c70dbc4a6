// Package markdown reads a page's text and prints it as HTML.
//
// It owns the syntax: CommonMark 0.31.2 whole, with tables, footnotes and definition lists, and what Acreleaf has on
// top (worksheets, reckoners, worked and sourced figures, signals). It finds where every one of them is in the
// source, to the byte, so that messages of the packages above can point there. It must not know what a calculation,
// a source or another page is: the HTML of blocks and figures and the addresses of links come in as Fragments, the
// words of the interface as Words. It is the only package that knows goldmark and chroma.
//
// # How it is built
//
// One construct is one file, with what reads it and what prints it. A parser of ours stands around goldmark's, calls
// it, and keeps what goldmark forgets: the end of a link, the line of a fence, HTML that would be dropped. goldmark
// hands out many texts as slices of the page, so their place is known without a search (offsetIn). All that is found
// goes to the reading of the page, which the parsers find in goldmark's context. One goldmark parser serves all
// goroutines, and a page is parsed once and walked once, to be printed. A fuzz test holds that the parsers of ours
// change nothing in goldmark's CommonMark.
//
// # The HTML
//
//	heading    <div class="heading"><h2 id>…</h2><a class="self" href aria-label>§</a></div>
//	table      <div class="scroll" tabindex role="region" aria-label><table>[<caption>]…</table></div>
//	listing    <div class="scroll" tabindex role="region" aria-label><pre class="code"><code>…</code></pre></div>
//	example    <div class="example" role="group" aria-label><div class="written">…</div><div class="made">…</div></div>
//	signal     <aside class="signal caution" role="note" aria-label><p class="signal-word">CAUTION</p>…</aside>
//	footnote   <sup id><a class="note" href role="doc-noteref" aria-label>1</a></sup>, and at the end of the text
//	           <section class="notes" role="doc-endnotes" aria-label><ol><li id>… <a class="back" …>↩</a></li></ol>
//
// No style attribute, no script, no markup of the author's is ever printed. Classes lists the classes.
//
// # Decisions
//
// A line straight above a table, with no blank line between, is its caption: other viewers show it as a line above the
// table, which reads the same. An empty first head makes the first column the heads of the rows.
//
// There is no strikethrough: “~10 lb” is how growers write “about ten pounds”, and two of them in a sentence would
// strike out what is between. There are no task boxes, because a box without a label tells nobody anything.
//
// A heading's link to itself is beside the heading: inside it, a screen reader reads it out as part of the title.
package markdown
