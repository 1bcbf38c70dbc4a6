package wasm_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"acreleaf/wasm"
	"acreleaf/wasm/wasmtest"
)

func TestOutsideValidatorAcceptsEveryModule(t *testing.T) {
	validator, err := exec.LookPath("wasm-validate")
	if err != nil {
		t.Fatal("wasm-validate is not installed: install the package wabt (on Debian: apt-get install wabt)")
	}
	dir := t.TempDir()
	for seed := range uint64(randomPrograms) {
		module, err := wasm.Compile(wasmtest.Program(seed))
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(dir, fmt.Sprintf("%d.wasm", seed))
		if err := os.WriteFile(file, module, 0o600); err != nil {
			t.Fatal(err)
		}
		if said, err := exec.Command(validator, file).CombinedOutput(); err != nil {
			t.Errorf("program %d: %v\n%s", seed, err, said)
		}
	}
}
