// Package measured tells what a finished panel is, from its weight, size and
// thickness: how much of it is fibre and resin, how much may be voids, and how
// that stands beside what was reckoned; and what a consumable took up.
//
//	Vf [%] = 0.1·Ar·N / (ρf·h)         fibre by volume: ASTM D3171, method II
//	Td     = 100 / (R/D + r/d)         density without voids: ASTM D2734
//	V  [%] = 100·(Td - Md) / Td        voids: ASTM D2734
//
// with Ar the areal weight of a ply in g/m², N plies, h mm, densities in g/cm³; R
// and r the percent of resin and fibre by weight, D and d their densities, Md
// that of the panel. All from memory.
//
// # How far a void figure can be trusted
//
// Voids are a small difference of large figures. Each figure that goes in may be
// off: cloth by its tolerance, thickness by its readings, weight by the scale.
// The estimate is worked out at both ends of each, one at a time and all at once;
// where the span of all at once reaches 0, or is wider than the estimate itself,
// the estimate is not to be trusted, and the report says so.
//
// A panel with a core is not judged: weigh a piece of its skin.
package measured
