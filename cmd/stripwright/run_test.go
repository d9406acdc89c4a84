package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"stripwright/output"
)

const plate = `title: Plate
part: {outline: {rectangle: [900, 700]}, trim: 0}
fabrics:
  tape: {weight: 300 g/m2, rolls: [{id: T, width: 200}]}
schedule: [{fabric: tape, angle: 0}, {fabric: tape, angle: 90}]
joints: {stagger: 30, plies_between: 4}
`

// A cancelled run goes on with the best so far: sound, and marked stopped.
func TestInterrupted(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	var out, errs bytes.Buffer
	code := run(ctx, []string{"plan", "-", "--json"}, stream{strings.NewReader(plate), &out, &errs})
	if code != exitDone || !strings.Contains(out.String(), `"stopped": true`) {
		t.Errorf("exit code %d, stderr %q, stopped: %v", code, errs.String(), strings.Contains(out.String(), `"stopped"`))
	}
}

// A folder that cannot be written whole is not touched at all.
func TestFolderWholeOrNotAtAll(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	good := []output.File{{Name: "plan.json", Data: []byte(`{"format":"stripwright-plan"}`)}, {Name: "a.svg", Data: []byte("a")}}
	if err := writeFolder(dir, good); err != nil {
		t.Fatal(err)
	}
	bad := append(good[:1:1], output.File{Name: "../b.svg", Data: []byte("b")})
	if err := writeFolder(dir, bad); err == nil {
		t.Error("a name that leads out of the folder was taken")
	}
	twice := append(good[:2:2], good[1])
	if err := writeFolder(dir, twice); err == nil {
		t.Error("the same name twice was taken")
	}
	entries, err := os.ReadDir(filepath.Dir(dir))
	if err != nil || len(entries) != 1 {
		t.Errorf("left beside the folder: %v %v", entries, err)
	}
	if data, err := os.ReadFile(filepath.Join(dir, "a.svg")); err != nil || string(data) != "a" {
		t.Errorf("the old sheet is gone: %q %v", data, err)
	}
}
