// Package dxf reads the lines of a DXF drawing, text or binary, in steps that
// can be looked at one by one:
//
//	bytes -> groups     scan.go, binary.go    a code, its value, the line it stands on
//	groups -> File      file.go, tables.go    header, layers, blocks, entities of model space
//	entity -> lines     lines.go, …           in drawing units, curves turned into points
//
// The words are those of the published DXF reference: group code, entity,
// block, layer, extrusion, bulge. Read are LINE, ARC, CIRCLE, ELLIPSE,
// LWPOLYLINE, POLYLINE in the plane, SPLINE and INSERT. Things that are never
// an outline (text, dimensions, points, hatches, paper space, what is off,
// frozen or invisible) are left out and counted; solids, surfaces, meshes and
// whatever is tilted out of the plane are refused by name.
//
// Everything is read strictly: a number that is not one, a group without its
// value and a file without its end are problems with the line they stand on.
// The package does not know millimetres and joins nothing.
package dxf
