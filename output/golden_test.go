package output

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"stripwright/output/internal/handmade"
	"stripwright/output/list"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The files of a small plan, byte for byte, those of a PDF unpacked. A change of them is looked at, then
// written with -update.
func TestGolden(t *testing.T) {
	p := handmade.Small()
	files, err := Files(p, handmade.Hash)
	if err != nil {
		t.Fatal(err)
	}
	files = append(files, File{"summary.txt", []byte(list.Summary(p))})
	dir := filepath.Join("testdata", "golden")
	for _, f := range files {
		f.Data = plain(t, f)
		path := filepath.Join(dir, f.Name)
		if *update {
			if err := os.WriteFile(path, f.Data, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Errorf("%v: run with -update", err)
			continue
		}
		if !bytes.Equal(f.Data, want) {
			t.Errorf("%s differs from its golden file: %s", f.Name, firstDifference(f.Data, want))
		}
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != len(files) {
		t.Errorf("%d golden files, %d files made", len(entries), len(files))
	}
}

func firstDifference(got, want []byte) string {
	a, b := strings.Split(string(got), "\n"), strings.Split(string(want), "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return "line " + a[i][:min(len(a[i]), 120)] + " / want " + b[i][:min(len(b[i]), 120)]
		}
	}
	return "one is longer"
}
