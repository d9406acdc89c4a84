// Package svg reads the lines of an SVG drawing, in steps that can be looked at
// one by one:
//
//	bytes -> Element tree      xml.go                 strict XML, no entities of its own
//	attributes -> numbers      number.go, length.go, transform.go, pathdata.go
//	styles -> attributes       sheet.go, selector.go, styled.go; look.go: what is seen
//	elements -> lines          walk.go, shapes.go, use.go, viewport.go
//	lines -> lines seen        clip.go: windows that hide nothing, or cut
//
// The words are those of the SVG 2 recommendation: element, attribute, user
// unit, viewport, viewBox, transform, symbol, use. Lines come in millimetres
// with y up, as the drawing is seen, the lower left corner of the page at the
// origin.
//
// Read are path, rect, circle, ellipse, line, polyline and polygon, in groups,
// links, nested svg, symbol and use, with all transforms. Left out, and counted,
// is what is never an outline or is not to be seen: text, pictures, hidden,
// unpainted and fully transparent things, definitions, what lies outside its
// viewport or clip. Whatever else would change an outline (a mask, a clip that
// cuts it, an animation, a style sheet's finer points or one in another file) is
// refused by name.
//
// Path data is read strictly to its end: a viewer draws what comes before an
// error, a cutter must not.
package svg
