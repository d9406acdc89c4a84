package laminate

// FibreKind is a kind of fibre with what its plies are reckoned from: of the
// library (package material) or written in the job. A figure that nobody stated
// is unknown. Moduli are in GPa, expansion in 1e-6/K; 1 is along the fibre, 2
// across it.
type FibreKind struct {
	Name        string `json:"name"`
	DensityGCM3 Figure `json:"density_gcm3,omitzero"`
	E1          Figure `json:"e1_gpa,omitzero"`
	E2          Figure `json:"e2_gpa,omitzero"`
	G12         Figure `json:"g12_gpa,omitzero"`
	Nu12        Figure `json:"nu12,omitzero"`
	Alpha1      Figure `json:"alpha1_1e6_per_k,omitzero"`
	Alpha2      Figure `json:"alpha2_1e6_per_k,omitzero"`
}

// ResinKind is a kind of resin, cured: of the library or written in the job. It
// is the same in all directions.
type ResinKind struct {
	Name        string `json:"name"`
	DensityGCM3 Figure `json:"density_gcm3,omitzero"`
	E           Figure `json:"e_gpa,omitzero"`
	Nu          Figure `json:"nu,omitzero"`
	Alpha       Figure `json:"alpha_1e6_per_k,omitzero"`
}
