// Package svg reads the lines of an SVG drawing, in steps that can be looked at
// one by one:
//
//	bytes -> Element tree      xml.go                 strict XML, no entities of its own
//	attributes -> numbers      length.go, transform.go, style.go, pathdata.go
//	elements -> lines          walk.go, shapes.go, path.go, viewport.go
//
// The words are those of the SVG 2 recommendation: element, attribute, user
// unit, viewport, viewBox, transform, symbol, use. Lines come in millimetres
// with y up, as the drawing is seen, the lower left corner of the page at the
// origin.
//
// Read are path, rect, circle, ellipse, line, polyline and polygon, in groups,
// links, nested svg, symbol and use, with all transforms. Left out, and counted,
// is what is never an outline or is not to be seen: text, pictures, hidden,
// unpainted and fully transparent things, definitions. Whatever else would
// change an outline (a style sheet's finer points, geometry set by style) is
// refused by name.
//
// Path data is read strictly to its end: a viewer draws what comes before an
// error, a cutter must not.
package svg
