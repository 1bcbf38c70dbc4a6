package main

import "testing"

func TestReadFuzz(t *testing.T) {
	got := readFuzz([]byte(`fuzz: elapsed: 0s, gathering baseline coverage: 0/20 completed
fuzz: elapsed: 3s, execs: 12100 (4033/sec), new interesting: 54 (total: 74)
fuzz: elapsed: 6s, execs: 18133 (2009/sec), new interesting: 89 (total: 109)
--- FAIL: FuzzParse (6.01s)
    Failing input written to testdata/fuzz/FuzzParse/771e938e4458e983
`))
	if want := (fuzzResult{18133, 89, "/^771e938e4458e983$"}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	target := fuzzTarget{folder: "calc/unit", name: "FuzzParse"}
	if got, want := target.repeat(got.input), "go test ./calc/unit -run='^FuzzParse$/^771e938e4458e983$'"; got != want {
		t.Error(got)
	}
}

// Every part of the program that reads what somebody wrote has a target.
func TestFuzzTargetsAreThere(t *testing.T) {
	t.Chdir("../..")
	for _, wanted := range []string{
		"cmd/acreleaf/internal/markdown", "cmd/acreleaf/internal/page", "cmd/acreleaf/internal/yamltext",
		"cmd/acreleaf/internal/config", "cmd/acreleaf/internal/worksheet", "FuzzDefine", "FuzzBind", "calc/unit",
		"FuzzParseQuantity", "FuzzParseRange", "calc/prose", "calc/formula", "cmd/acreleaf/internal/rows", "FuzzJob",
		"wasm", "FuzzAnyProgram", "cmd/acreleaf/internal/message", "FuzzPrint", "FuzzMake",
	} {
		targets, err := findFuzzTargets([]string{wanted})
		if err != nil || len(targets) == 0 {
			t.Errorf("%s: %d targets, %v", wanted, len(targets), err)
		}
	}
	if _, err := findFuzzTargets([]string{"FuzzNothing"}); err == nil {
		t.Error("a target that is not there is taken")
	}
}
