// Package panel tells how stiff each zone of a plan is, how it expands and how it
// warps when it cools: it brings the layers of package stack and the thicknesses
// of package content before the theory of package theory.
//
// The constants of a fabric's layers are its own where the job states them
// (elastic:), else the generic ones of its fibre in its resin at its share of
// fibre, which are marked as such wherever they are printed.
//
// Each zone is judged as if a whole plate were made like it. A zone with a core
// is a sandwich: it is judged as a whole, where the core only keeps the skins
// apart, and skin by skin.
//
// Warp is a warning with a number: how far a free panel of a metre would stand
// off for 100 K, cure shrinkage not included. It promises no shape.
package panel
