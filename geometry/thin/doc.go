// Package thin leaves out vertices of densely drawn lines.
//
// It works on vertex numbers and a measure of distance alone, so that lines of
// millimetres and of whole micrometres are thinned by the same method. What
// becomes of a ring that crosses itself when thinned is its caller's concern.
package thin
