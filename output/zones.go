package output

import (
	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/output/layup"
	"stripwright/output/svg"
)

// zoneTasks draw the thickness map of a part of several zones.
func zoneTasks(p laminate.Plan, sha string, n *names) []task {
	r := content.Of(p)
	if len(r.Zones) < 2 {
		return nil
	}
	return []task{{[]string{n.file("thickness-map", ".svg")}, func() ([][]byte, error) {
		return one(svg.Write(layup.Zones(p, r, sha)))
	}}}
}
