package measured

// FibrePercent gives the percent of fibre by volume after ASTM D3171, method II
// (from memory), of plies whose dry cloth weighs areal g/m² each: fibre density
// in g/cm³, thickness of the panel in mm.
func FibrePercent(areal float64, plies int, fibre, thickness float64) float64 {
	return 0.1 * areal * float64(plies) / (fibre * thickness)
}

// SolidDensity gives the density in g/cm³ that a laminate would have without
// voids, after ASTM D2734 (from memory): percent by weight and density of resin
// and of fibre.
func SolidDensity(resinPercent, resin, fibrePercent, fibre float64) float64 {
	return 100 / (resinPercent/resin + fibrePercent/fibre)
}

// VoidPercent gives the percent of voids by volume after ASTM D2734 (from
// memory): density without voids and as measured.
func VoidPercent(solid, measured float64) float64 { return 100 * (solid - measured) / solid }
