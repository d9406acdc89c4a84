package way

import (
	"context"
	"strings"
	"testing"

	"stripwright/job"
	"stripwright/laminate/planfile"
	"stripwright/laminate/stack"
	"stripwright/nest"
)

// [0/45/-45/90] of one cloth, by hand: no mirror, as much at 45 as at -45.
func TestUnsymmetricJobIsToldSo(t *testing.T) {
	line := stack.Read(planned(t, "job_unsymmetric")).Line()
	if !strings.HasPrefix(line, "stack: 4 plies, 4 layers: not symmetric (coupling 0.") || !strings.HasSuffix(line, "; balanced") {
		t.Error(line)
	}
}

// A schedule code is planned as its plies, and the stack report of the plan read
// back from its file is the report of the plan.
func TestCodeToStackReport(t *testing.T) {
	j, problems := job.Parse("plate.yaml", []byte(`title: Tooling plate
units: mm
part:
  outline: {rectangle: [600, 400]}
  trim: 0
  drawn_from: laying side
fabrics:
  woven 200: {weight: 200 g/m2, fibre: carbon, form: woven, face_is: smooth side, rolls: [{id: W, width: 1000}]}
  triax 800: {weight: 800 g/m2, fibre: carbon, layers: [0, 45, -45], face_is: stitch side, rolls: [{id: T, width: 1000}]}
schedule:
  - {fabric: woven 200, code: "[0f]"}
  - {fabric: triax 800, code: "[0_4]"}
  - {fabric: triax 800, code: "[0_3]", face: down}
  - {fabric: woven 200, code: "[0f]"}
joints: {stagger: 50, plies_between: 4}
`), nil)
	for _, p := range problems {
		t.Fatal(p)
	}
	p, err := Plan(context.Background(), j, nest.Settings{})
	if err != nil {
		t.Fatal(err)
	}
	r := stack.Read(p)
	if want := "stack: 9 plies, 23 layers: close to symmetric, not symmetric (coupling 0.054); balanced"; r.Line() != want {
		t.Errorf("%s", r.Line())
	}
	data, err := planfile.Encode(p)
	if err != nil {
		t.Fatal(err)
	}
	again, _, err := planfile.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if a, b := printed(stack.Report(p)), printed(stack.Report(again)); a != b {
		t.Errorf("the report of the plan read back is another:\n%s\n%s", a, b)
	}
}

func printed(sections []stack.Section) string {
	var b strings.Builder
	for _, s := range sections {
		b.WriteString(s.Heading + "\n" + strings.Join(s.Lines, "\n") + "\n")
		for _, row := range s.Table {
			b.WriteString(strings.Join(row, " | ") + "\n")
		}
	}
	return b.String()
}
