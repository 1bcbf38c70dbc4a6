package wasm_test

import (
	"fmt"
	"testing"

	"acreleaf/calc/sheet"
	"acreleaf/wasm/wasmtest"
	"acreleaf/wasm/wasmtest/engine"
)

func TestOutsideValidatorAcceptsEveryModule(t *testing.T) {
	programs := map[string]*sheet.Program{}
	for seed := range uint64(randomPrograms) {
		programs[fmt.Sprintf("program %d", seed)] = wasmtest.Program(seed)
	}
	engine.Validate(t, programs)
}
