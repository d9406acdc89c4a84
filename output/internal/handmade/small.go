package handmade

import (
	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// Small is a 400 × 300 plate with a slanting end, of one ply of three strips.
func Small() laminate.Plan {
	net := rings([]orb.Point{{0, 0}, {400, 0}, {340, 300}, {0, 300}})
	p := plan("Tooling plate", net, net, 0)
	return checked(Cut(p, []Ply{{Fabric: "biax450", Joints: []float64{120, 240}}}, 300))
}
