// Package contour makes regions of loose lines, in three steps:
//
//	lines -> contours    duplicates.go, join.go   ends that meet are joined, gaps closed within a limit
//	contours -> sound    sound.go                 no area, crossings
//	contours -> regions  nest.go                  by depth: outline, hole, island
//
// Everything is in millimetres. A line is what a drawing holds, a contour is a
// closed ring of lines, a region is an outline with its holes. The package
// knows no files: places are told by their coordinates.
package contour
