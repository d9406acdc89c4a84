// Package book writes the lay-up book: one HTML file that works without a
// network, on a phone, a tablet and on paper.
//
// It holds the verdict and the totals, a page for each ply with its map, its
// joints as distances from named corners and its strips to tick off, the maps of
// the rolls, all joints through the thickness, cut list, order, checks and
// cautions. Without JavaScript every page shows one after the other; with it one
// page at a time, and ticks are kept on the device.
//
// The file brings its own style, script and drawings, and a content policy that
// allows nothing else: it asks for nothing from anywhere. Lettering is text that
// can be searched. The same plan gives the same bytes.
//
// Drawings are in units of the page, 1000 across, y down; a ground says how the
// part lies in them. The package decides nothing: what is measured comes from
// package layup, what is listed from package list.
package book
