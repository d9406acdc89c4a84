package main

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden summaries of the demo jobs anew")

// What each demo job prints is held to the letter beside the job file. A better
// layout changes it: write it anew with -update, and read the difference.
func TestSummaries(t *testing.T) {
	jobs, err := filepath.Glob(filepath.Join("..", "..", "testdata", "jobs", "*.yaml"))
	if err != nil || len(jobs) < 3 {
		t.Fatalf("%v %v", jobs, err)
	}
	for _, name := range jobs {
		t.Run(filepath.Base(name), func(t *testing.T) {
			var out, errs bytes.Buffer
			code := run(context.Background(), []string{"plan", name}, stream{strings.NewReader(""), &out, &errs})
			if code != exitDone || errs.Len() > 0 {
				t.Fatalf("exit code %d: %s", code, errs.String())
			}
			golden := strings.TrimSuffix(name, ".yaml") + ".summary"
			if *update {
				if err := os.WriteFile(golden, out.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if out.String() != string(want) {
				t.Errorf("printed:\n%s\nexpected:\n%s", out.String(), want)
			}
		})
	}
}
