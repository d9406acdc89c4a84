// Package svg writes a scene as SVG true to scale: width and height in mm and
// the equal viewBox, so that one unit is one millimetre, one group per layer
// with the layer's name as id, lettering as outlines that are kept once per
// file and used again. Every lettering group carries its words as aria-label.
//
// It draws what the scene holds and nothing else.
package svg
