package way

import (
	"context"
	"fmt"
	"strings"

	"stripwright/laminate"
	"stripwright/nest"
)

// costOfStraightEnds tells what cutting the ends straight costs in cloth: the same
// job, cut to shape, is planned by a quick search beside it.
func costOfStraightEnds(ctx context.Context, j laminate.Job, p laminate.Plan) laminate.Note {
	j.Rules.StraightEnds = false
	j.Search.Effort = laminate.Quick
	note := laminate.Note{Rule: "ends", Where: j.File.Name}
	shaped, err := Nested(ctx, j, nest.Settings{})
	if err != nil {
		note.Text = "ends are cut straight and trimmed on the tool; cut to shape the job could not be planned: " + err.Error()
		return note
	}
	var texts []string
	for k, c := range p.Cost {
		texts = append(texts, fmt.Sprintf("%s takes %s, cut to shape %s", c.Fabric, costWords(c), costWords(shaped.Cost[k])))
	}
	note.Text = "ends are cut straight and trimmed on the tool: " + strings.Join(texts, "; ") + " (by a quick search)"
	return note
}

func costWords(c laminate.Cost) string {
	if c.Measure == laminate.ByPrice {
		return fmt.Sprintf("%.2f", c.Used/1000)
	}
	return fmt.Sprintf("%.3f m", c.Used/1000)
}
