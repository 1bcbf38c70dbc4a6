package main

import (
	"slices"
	"strings"
	"testing"
)

// stream is what go test -json prints, shortened: a package that passes, one with a failed test and a skipped one,
// one that does not build, one that breaks off, and one without tests.
const stream = `
{"ImportPath":"a/broken","Action":"build-output","Output":"broken.go:3:1: syntax error\n"}
{"ImportPath":"a/broken","Action":"build-fail"}
{"Action":"start","Package":"a/good"}
{"Action":"run","Package":"a/good","Test":"TestOne"}
{"Action":"output","Package":"a/good","Test":"TestOne","Output":"=== RUN TestOne\n"}
{"Action":"pass","Package":"a/good","Test":"TestOne/part"}
{"Action":"pass","Package":"a/good","Test":"TestOne"}
{"Action":"output","Package":"a/good","Output":"PASS\n"}
{"Action":"output","Package":"a/good","Output":"ok  \ta/good\t0.1s\n"}
{"Action":"pass","Package":"a/good"}
{"Action":"output","Package":"a/bad","Test":"TestTwo","Output":"two_test.go:9: wrong\n"}
{"Action":"fail","Package":"a/bad","Test":"TestTwo"}
{"Action":"output","Package":"a/bad","Test":"TestThree","Output":"three_test.go:9: no tool\n"}
{"Action":"skip","Package":"a/bad","Test":"TestThree"}
{"Action":"output","Package":"a/bad","Output":"FAIL\ta/bad\t0.1s\n"}
{"Action":"fail","Package":"a/bad"}
{"Action":"output","Package":"a/broken","Output":"FAIL\ta/broken [build failed]\n"}
{"Action":"fail","Package":"a/broken","FailedBuild":"a/broken"}
{"Action":"output","Package":"a/stopped","Output":"panic: out of memory\n"}
{"Action":"output","Package":"a/stopped","Output":"FAIL\ta/stopped\t0.1s\n"}
{"Action":"fail","Package":"a/stopped"}
{"Action":"output","Package":"a/none","Output":"?   \ta/none\t[no test files]\n"}
{"Action":"skip","Package":"a/none"}
`

func TestReadTests(t *testing.T) {
	report, err := readTests([]byte(strings.TrimSpace(stream)))
	if err != nil {
		t.Fatal(err)
	}
	// Failed: a test, a skipped test, a package that does not build, a package that broke off.
	if report.passed != 2 || report.failed != 4 {
		t.Errorf("%d passed, %d failed; want 2 and 4", report.passed, report.failed)
	}
	want := []string{
		"ok  \ta/good\t0.1s", "FAIL\ta/bad\t0.1s", "FAIL\ta/broken [build failed]", "FAIL\ta/stopped\t0.1s",
		"?   \ta/none\t[no test files]",
	}
	if !slices.Equal(report.closing, want) {
		t.Errorf("closing lines %q\nwant %q", report.closing, want)
	}
	shown := report.failures.String()
	for _, line := range []string{"syntax error", "two_test.go:9: wrong", "no tool", "out of memory"} {
		if !strings.Contains(shown, line) {
			t.Errorf("the failures do not show %q:\n%s", line, shown)
		}
	}
	if strings.Contains(shown, "TestOne") {
		t.Errorf("the failures show a test that passed:\n%s", shown)
	}
	if _, err := readTests([]byte("go: no such tool")); err == nil {
		t.Error("a line that is no event passed")
	}
}

func TestReadCounts(t *testing.T) {
	out := "▶ a test\n  ✔ part (1ms)\nℹ tests 5\nℹ pass 3\nℹ fail 1\nℹ cancelled 0\nℹ skipped 1\nℹ todo 0\n" +
		"ℹ duration_ms 12.5\n"
	counts, err := readCounts([]byte(out))
	if err != nil || counts["pass"] != 3 || counts["fail"] != 1 || counts["skipped"] != 1 {
		t.Errorf("counts %v, %v", counts, err)
	}
	if _, err := readCounts([]byte("Error: no such file\n")); err == nil {
		t.Error("a run that did not end passed")
	}
}
