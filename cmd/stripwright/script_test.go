package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"stripwright": func() { os.Exit(runMain()) },
	})
}

// Scripts in testdata/script run the program as a person does: one for each
// command and each kind of message. They find the demo jobs in $JOBS. The
// command "edit FILE OLD NEW" replaces text in a file, and "code N CMD…" wants
// the exit code N.
func TestScripts(t *testing.T) {
	jobs, err := filepath.Abs(filepath.Join("..", "..", "testdata", "jobs"))
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join("testdata", "script"),
		Setup: func(e *testscript.Env) error {
			e.Setenv("JOBS", jobs)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"edit": edit,
			"code": code,
		},
	})
}
