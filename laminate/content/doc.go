// Package content tells how thick and how heavy a laminate is and how much of it
// is fibre: cloth by cloth, ply by ply, zone by zone and for the whole part.
//
// # Words
//
//	areal weight    dry cloth, g/m²
//	fibre volume    share of the laminate's volume that is fibre, 0…1
//	fibre mass      the same of its mass
//	net part        what is weighed in the end; the blank is what is laid
//	span            a figure with the least and the most that it may be
//
// With areal weight W in g/m², fibre density ρf and resin density ρm in g/cm³:
//
//	t [mm] = W / (1000·Vf·ρf)                 thickness of the ply
//	t [mm] = W/1000·(1/ρf + (1-Mf)/(Mf·ρm))   the same from the fibre mass Mf
//	Vf     = (Mf/ρf) / (Mf/ρf + (1-Mf)/ρm)
//	ρ      = Vf·ρf + (1-Vf)·ρm
//
// as printed in a class society's rules for yachts, part B ch. 12 sec. 3 (read).
//
// The share of fibre is the fabric's own, or the resin's, or the usual one of its
// form and fibre from package material, which is then Assumed with the span in
// which it lies. What is missing is asked for in words and never invented: a
// fabric without fibre density has no thickness, a job without resin no weight.
//
// Voids are not reckoned; what a finished panel shows is for package measured.
package content
