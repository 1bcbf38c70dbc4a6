package pressed

import (
	_ "embed" // for wire.json
	"encoding/hex"
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// A Block is what a page carries for its script: the module, and the cells of it that the page writes and reads.
type Block struct {
	Module  []byte
	Inputs  []int // sorted
	Outputs []int // sorted; none of them is an input
}

// wireFile is what a page and its script agree on, as package wire of the program makes it: the check imports
// nothing of the program.
//
//go:embed wire.json
var wireFile []byte

// A contract is the part of wire.json that names cells.
type contract struct{ Inputs, Outputs, Data, Sheets, Tables []string }

var (
	dataBlock             = regexp.MustCompile(`(?s)<script\b[^>]*\bid=(?:"module"|module)(?:\s[^>]*)?>(.*?)</script>`)
	agreed                = readContract()
	inputCell, outputCell = oneOf(agreed.Inputs), oneOf(agreed.Outputs)
)

func readContract() (c contract) {
	if err := json.Unmarshal(wireFile, &c); err != nil {
		panic("wire.json: " + err.Error()) // it is made, and embedded
	}
	return c
}

// oneOf finds a cell that one of the attributes names.
func oneOf(attributes []string) *regexp.Regexp {
	return regexp.MustCompile(`\b(?:` + strings.Join(attributes, "|") + `)="(\d+)"`)
}

// data is the part of the data block that names cells. A pair is a cell and what goes with it.
type data struct {
	Module string `json:"m"` // hexadecimal
	Sheets []struct{ Refusals []int }
	Fixed  [][2]json.RawMessage
	Tables []struct {
		Down, Across [2]json.RawMessage
		Show         int
	}
}

// Block gives the data block of a page, or nil when the page has none.
func (f File) Block() (*Block, error) {
	found := dataBlock.FindSubmatch(f.Bytes)
	if found == nil {
		return nil, nil
	}
	var d data
	if err := json.Unmarshal(found[1], &d); err != nil {
		return nil, fmt.Errorf("%s: the data block of the page: %w", f.Path, err)
	}
	module, err := hex.DecodeString(d.Module)
	if err != nil {
		return nil, fmt.Errorf("%s: the module in the data block of the page: %w", f.Path, err)
	}
	if len(module) == 0 {
		return nil, fmt.Errorf("%s: the data block of the page holds no module", f.Path)
	}
	inputs, outputs := cellsIn(f.Bytes, inputCell), cellsIn(f.Bytes, outputCell)
	pairs := d.Fixed
	for _, table := range d.Tables {
		pairs = append(pairs, table.Down, table.Across)
		outputs[table.Show] = true
	}
	for _, pair := range pairs {
		var cell int
		if err := json.Unmarshal(pair[0], &cell); err != nil {
			return nil, fmt.Errorf("%s: the data block of the page: %w", f.Path, err)
		}
		inputs[cell] = true
	}
	for _, sheet := range d.Sheets {
		for _, cell := range sheet.Refusals {
			outputs[cell] = true
		}
	}
	maps.DeleteFunc(outputs, func(cell int, _ bool) bool { return inputs[cell] })
	block := &Block{Module: module, Inputs: slices.Sorted(maps.Keys(inputs)), Outputs: slices.Sorted(maps.Keys(outputs))}
	if len(block.Inputs) == 0 || len(block.Outputs) == 0 {
		return nil, fmt.Errorf("%s: the page names no cell to write to its module, or none to read", f.Path)
	}
	return block, nil
}

// cellsIn gives the cells that an attribute names anywhere in a page.
func cellsIn(html []byte, attribute *regexp.Regexp) map[int]bool {
	cells := map[int]bool{}
	for _, found := range attribute.FindAllSubmatch(html, -1) {
		if cell, err := strconv.Atoi(string(found[1])); err == nil {
			cells[cell] = true
		}
	}
	return cells
}
