package markdown

// Rest lets go of the tree, which is most of what a document holds in memory. What was found in the text stays. Nobody
// may be printing the document meanwhile.
func (d *Document) Rest() {
	if d.root == nil {
		return
	}
	d.root = nil
	for _, h := range d.Headings {
		h.node = nil
	}
}

// Awake gives the document with its tree. One at rest is read again; it stays at rest, and its blocks, figures and
// links have the same places in their lists.
func (d *Document) Awake() *Document {
	if d.root != nil {
		return d
	}
	r := newReading(d.Source, d.body)
	r.parse(pageParser())
	return r.doc
}
