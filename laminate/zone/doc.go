// Package zone divides the net part into zones: regions in which the same plies
// and cores lie. A part without patches, ply drops or cores of their own outline
// is one zone.
//
//	+-----------------+
//	|  Z1    +----+   |     Z1 the plies of the whole part
//	|        | Z2 |   |     Z2 those and a patch
//	|        +----+   |
//	+-----------------+
//
// The outlines are laid over each other between the heights at which one of them
// bends or two cross, where all edges are straight and keep their order: areas
// are exact but for rounding and add up to that of the net part. A Field is a
// trapezoid of a zone between two such heights.
//
// The package judges nothing and knows no thickness.
package zone
