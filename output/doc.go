// Package output gives all files that are made from a plan: cut maps, lay-up
// sheets, lists. It draws and lists, and decides nothing: what is laid where,
// how much is bought and whether the plan is sound stand in the plan.
//
// Packages below: sheet (what drawings are made of); cutmap and layup (compose
// drawings), page (what all paper shares), paper, rim, label and template (compose
// paper); svg, dxf and pdf (write scenes); list (text, CSV, JSON); book (HTML). The
// same plan gives the same bytes.
package output
