// Package theory is classical lamination theory: from the layers of a laminate,
// each with its angle, thickness and elastic constants, to the stiffness of the
// whole, its expansion, and how a laminate that is not a mirror warps when it
// cools.
//
// # Words
//
//	layer    fibre at one angle with its resin; a ply of stitched cloth is several
//	Q        stiffness of a layer along and across its fibre, GPa
//	A, B, D  stiffness of the laminate: stretching (N/mm), coupling (N), bending (N·mm)
//	free     a panel that nothing holds: it may bend while it is stretched
//	warp     curvature of a free panel by a change of temperature
//
// Layers are listed from the tool up. Heights z are measured from the middle of
// the laminate, upwards; angles are those of package geometry. A strain or load
// is a triple x, y, xy; shear strain is the engineering one.
//
//	    z
//	    ^   +--------------------+  layer n
//	    |   +--------------------+
//	----+---|--- middle ---------|---> x, 0°
//	        +--------------------+
//	        +--------------------+  layer 1, on the tool
//
// # How cloth is taken
//
// Woven cloth counts as its two directions at one height; its crimp, which makes
// it softer, is not reckoned. Mat counts as fibre in all directions at one height.
// A sandwich core keeps its skins apart and does nothing else: its shear, by
// which a real panel bends more, is not reckoned.
//
// Where nobody states the constants of a layer, Generic makes them of fibre and
// resin by published micromechanics. They are estimates: beside measured plies,
// moduli across the fibre and in shear come out low by a tenth to a third, and
// expansion across it high by up to two fifths.
//
// The theory is linear and thin-walled: no shear through the thickness, no
// strength, no cure shrinkage, no moisture. For an unsymmetric laminate it gives
// a saddle where a thin panel in fact takes one of two cylinders: its curvature
// is a warning with a number, never a shape.
//
// Formulas: Jones, Mechanics of Composite Materials, 2nd ed. 1999, ch. 2 to 4,
// and Kaw, Mechanics of Composite Materials, 2nd ed. 2006, ch. 2 to 4 (from
// memory).
package theory
