package engine

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"acreleaf/calc/sheet"
	"acreleaf/wasm"
)

// Validate compiles programs and has wasm-validate, which shares nothing with us, look at each module. It ends the test
// when the tool is not there. A second program is in each module.
func Validate(t *testing.T, programs map[string]*sheet.Program, second ...*sheet.Program) {
	t.Helper()
	validator, err := exec.LookPath("wasm-validate")
	if err != nil {
		t.Fatal("wasm-validate is not installed: install the package wabt (on Debian: apt-get install wabt)")
	}
	file := filepath.Join(t.TempDir(), "one.wasm")
	for name, p := range programs {
		module, err := wasm.Compile(p, second...)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if err := os.WriteFile(file, module, 0o600); err != nil {
			t.Fatal(err)
		}
		if said, err := exec.Command(validator, file).CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", name, err, said)
		}
	}
}
