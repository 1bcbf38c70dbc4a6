package site

// citeConstants notes the sources that the constants of a page's calculations name.
func (p *press) citeConstants(d *draft) {
	for _, b := range d.work.Sheets {
		for _, k := range b.Sheet.Constants {
			if k.OnlySlips {
				continue
			}
			for _, id := range k.Sources {
				p.cite(id, d)
			}
		}
	}
}
