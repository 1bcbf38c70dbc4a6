package unit

import "fmt"

// parseFormula counts the atoms of a chemical formula such as NO3 or CO(NH2)2.
func parseFormula(text string) (map[string]int, error) {
	p := formulaParser{text: text}
	counts, err := p.group(0)
	if err != nil {
		return nil, err
	}
	if p.at < len(text) || len(counts) == 0 {
		return nil, fmt.Errorf("%q is not a chemical formula", text)
	}
	return counts, nil
}

type formulaParser struct {
	text string
	at   int
}

// group reads elements and bracketed groups up to a closing bracket or the end.
func (p *formulaParser) group(depth int) (map[string]int, error) {
	counts := map[string]int{}
	for p.at < len(p.text) && p.text[p.at] != ')' {
		inner, err := p.part(depth)
		if err != nil {
			return nil, err
		}
		n := p.count()
		for element, count := range inner {
			counts[element] += count * n
		}
	}
	return counts, nil
}

// part reads one element or one bracketed group, without the count after it.
func (p *formulaParser) part(depth int) (map[string]int, error) {
	c := p.text[p.at]
	switch {
	case c == '(' && depth < 4:
		p.at++
		inner, err := p.group(depth + 1)
		if err != nil {
			return nil, err
		}
		if p.at == len(p.text) {
			return nil, fmt.Errorf("a bracket is left open in the formula %q", p.text)
		}
		p.at++
		return inner, nil
	case 'A' <= c && c <= 'Z':
		start := p.at
		p.at++
		for p.at < len(p.text) && 'a' <= p.text[p.at] && p.text[p.at] <= 'z' {
			p.at++
		}
		return map[string]int{p.text[start:p.at]: 1}, nil
	}
	return nil, fmt.Errorf("%q is not a chemical formula", p.text)
}

// count reads how often the part before it stands; no number is once.
func (p *formulaParser) count() int {
	n := 0
	for p.at < len(p.text) && '0' <= p.text[p.at] && p.text[p.at] <= '9' && n < 1000 {
		n = 10*n + int(p.text[p.at]-'0')
		p.at++
	}
	if n == 0 {
		return 1
	}
	return n
}
