package theory

// Constants are those of a plate of one material that would do the same: moduli
// in GPa along 0° (x) and 90° (y), shear, and Poisson's ratio xy.
type Constants struct {
	Ex, Ey, Gxy, Nuxy float64
}

// Membrane gives the constants in the plane of a free panel, which may bend
// under the load; of one that does not couple they are those of A alone.
func (s Stiffness) Membrane() Constants {
	return constants(s.inverse, 0, s.ThicknessMM*perGPa)
}

// Bending gives the constants in bending of a free panel. They differ from
// Membrane's by where in the thickness the layers lie.
func (s Stiffness) Bending() Constants {
	t := s.ThicknessMM
	return constants(s.inverse, 3, float64(t*t*t)*perGPa/12)
}

// Held gives the constants in the plane of a panel that is kept flat, by a rim or
// a core: those of A alone.
func (s Stiffness) Held() Constants {
	lower, ok := joined(s.A, Mat{}, s.D).cholesky()
	if !ok {
		return Constants{}
	}
	return constants(lower.inverse(), 0, s.ThicknessMM*perGPa)
}

// constants reads the compliances from a corner of an inverse; by is what they
// are multiplied by to be those of a material.
func constants(inverse six, corner int, by float64) Constants {
	xx, yy := inverse[corner][corner], inverse[corner+1][corner+1]
	xy, shear := inverse[corner][corner+1], inverse[corner+2][corner+2]
	return Constants{Ex: 1 / (xx * by), Ey: 1 / (yy * by), Gxy: 1 / (shear * by), Nuxy: -xy / xx}
}
