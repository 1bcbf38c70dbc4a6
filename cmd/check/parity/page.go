package main

import (
	"context"
	"fmt"
	"slices"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"

	"acreleaf/cmd/check/internal/pressed"
	"acreleaf/wasm"
)

// engine runs the module of a pressed page in wazero. A pressed page no longer holds the program that its module was
// made from, so an engine that shares nothing with Chromium stands in for the native run; that wazero and the native
// run agree on every program is what the tests of package wasm show.
type engine struct {
	memory api.Memory
	call   api.Function
}

func (e engine) run(cells []float64) error {
	for i, v := range cells {
		if !e.memory.WriteFloat64Le(uint32(8*i), v) {
			return fmt.Errorf("the memory has no cell %d", i)
		}
	}
	if _, err := e.call.Call(context.Background()); err != nil {
		return err
	}
	for i := range cells {
		cells[i], _ = e.memory.ReadFloat64Le(uint32(8 * i))
	}
	return nil
}

// pageSubjects gives the module of each page that carries one.
func pageSubjects(site pressed.Site) ([]subject, error) {
	runtime := wazero.NewRuntime(context.Background())
	var all []subject
	for _, page := range site.Ending(".html") {
		block, err := page.Block()
		if err != nil {
			return nil, err
		}
		if block == nil {
			continue
		}
		config := wazero.NewModuleConfig().WithName("")
		instance, err := runtime.InstantiateWithConfig(context.Background(), block.Module, config)
		if err != nil {
			return nil, fmt.Errorf("%s: wazero refuses the module: %w", page.Path, err)
		}
		one := subject{name: page.Name(), module: block.Module, reads: block.Inputs, writes: block.Outputs}
		one.cells = 1 + max(slices.Max(one.reads), slices.Max(one.writes))
		one.machine = engine{
			memory: instance.ExportedMemory(wasm.MemoryName),
			call:   instance.ExportedFunction(wasm.FunctionName),
		}
		all = append(all, one)
	}
	return all, nil
}
