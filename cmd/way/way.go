package way

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"runtime/debug"

	"stripwright/laminate"
	"stripwright/laminate/check"
	"stripwright/laminate/order"
	"stripwright/laminate/planfile"
	"stripwright/nest"
	"stripwright/output"
)

// PlanFile is the name of the one record in a folder of sheets.
const PlanFile = "plan.json"

// Plan plans a job, works out its quantities and checks the result. The error
// is a *nest.Refusal when the rules cannot be met; a plan that fails its check
// comes without error, with the findings in it.
func Plan(ctx context.Context, j laminate.Job, s nest.Settings) (laminate.Plan, error) {
	p, err := Nested(ctx, j, s)
	if err != nil {
		return laminate.Plan{}, err
	}
	if j.Rules.StraightEnds {
		p.Notes = append(p.Notes, costOfStraightEnds(ctx, j, p))
	}
	return Checked(order.Fill(p, j)), nil
}

// room is how much of what is in use, in percent, may pile up as rubbish before
// it is collected while planning: a search makes much that lives briefly.
const room = 200

// Nested is nest.Plan with room for the search. It changes the setting of the
// whole program while it runs.
func Nested(ctx context.Context, j laminate.Job, s nest.Settings) (laminate.Plan, error) {
	defer debug.SetGCPercent(debug.SetGCPercent(room))
	return nest.Plan(ctx, j, s)
}

// Checked gives the plan with the findings of a new check in place of those it
// came with.
func Checked(p laminate.Plan) laminate.Plan {
	p.Checks = check.Plan(p)
	return p
}

// Sheets gives plan.json and everything that is drawn and listed from it.
func Sheets(p laminate.Plan) ([]output.File, error) {
	record, mark, err := recorded(p)
	if err != nil {
		return nil, err
	}
	files, err := output.Files(p, mark)
	if err != nil {
		return nil, fmt.Errorf("the sheets cannot be drawn: %w", err)
	}
	return append([]output.File{{Name: PlanFile, Data: record}}, files...), nil
}

// recorded gives plan.json and its hash.
func recorded(p laminate.Plan) (record []byte, mark string, err error) {
	record, err = planfile.Encode(p)
	if err != nil {
		return nil, "", fmt.Errorf("the plan cannot be written: %w", err)
	}
	sum := sha256.Sum256(record)
	return record, hex.EncodeToString(sum[:]), nil
}

// Templates draws plies and pieces at 1:1 on paper, "a4" or "letter".
func Templates(p laminate.Plan, names []string, paper string) ([]output.File, error) {
	if len(names) == 0 {
		return nil, nil
	}
	_, mark, err := recorded(p)
	if err != nil {
		return nil, err
	}
	return output.Templates(p, mark, names, output.Papers[paper])
}
