package content

// Thickness gives the thickness in mm of cloth of an areal weight in g/m², fibre
// of a density in g/cm³ being a share vf of the volume.
func Thickness(weight, fibre, vf float64) float64 { return weight / (1000 * vf * fibre) }

// VolumeOfMass turns a share of mass into one of volume: fibre and resin density
// in g/cm³.
func VolumeOfMass(mf, fibre, resin float64) float64 {
	return (mf / fibre) / (mf/fibre + (1-mf)/resin)
}

// MassOfVolume turns a share of volume into one of mass.
func MassOfVolume(vf, fibre, resin float64) float64 {
	return float64(vf*fibre) / (float64(vf*fibre) + float64((1-vf)*resin))
}

// Density gives that of the laminate in g/cm³.
func Density(vf, fibre, resin float64) float64 {
	return float64(vf*fibre) + float64((1-vf)*resin)
}

// ResinHeld gives the resin in g/m² that fills cloth of an areal weight.
func ResinHeld(weight, fibre, resin, vf float64) float64 {
	return Thickness(weight, fibre, vf) * 1000 * (1 - vf) * resin
}

// perMillimetre is the workshop rule for carbon, infused or prepreg and well
// compacted: so many g/m² of cloth make a millimetre (common practice, no
// source).
const perMillimetre = 1000.0

// Workshop gives the thickness in mm by the workshop rule, for carbon only.
func Workshop(weight float64) float64 { return weight / perMillimetre }
