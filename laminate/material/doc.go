// Package material is the library of fibres and resins: generic figures from
// which thickness, weight and stiffness are reckoned where a job states none.
//
// The figures stand in library.csv, one a line, each with the span in which
// materials sold under that name lie and with its source; "from memory" means
// that no source was opened. A job may add kinds of its own, or put single
// figures in the place of the library's (Library.With).
//
// # Words
//
//	fibre    e-glass, carbon, flax …: the material, not a product
//	resin    epoxy, polyester, vinylester: cured, without filler
//	content  share of fibre in a laminate by volume, by form of cloth and fibre
//
// Every figure taken from here is Assumed and says so wherever it is printed: a
// data sheet goes before it. The package knows no products and works nothing
// out; package theory makes plies of fibre and resin, package content weighs
// them.
package material
