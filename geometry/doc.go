// Package geometry holds the flat shapes and frames that a lay-up is made of:
// regions with holes, angles of roll directions, whole micrometres, and the
// turn from the part to a ply. It knows no plies and no cloth.
//
// Lengths are float64 millimetres, areas mm². Coordinates lie on a grid of one
// micrometre (0.001 mm): they are snapped once on reading and once on turning
// into a ply's frame, so that decisions on stagger and width are made on whole
// micrometres and "exactly 50 mm" is legal.
//
// # Frames and signs
//
// Part frame: x to the right (0°), y up, seen from above onto the laying side.
// Angles are counter-clockwise positive.
//
//	y                    90°
//	|   part              |  /  +45°
//	|  +------+           | /
//	|  |      |           |/
//	|  +------+    -------+------- 0°
//	+---------- x         |\
//	                      | \  -45°
//
// Ply frame: the part frame turned by minus the ply's angle, so that strips run
// along +x and side joints are lines of constant y.
//
// Roll frame: u along the roll from its free end, v across the usable width
// from the right-hand edge when standing at the free end and looking along the
// roll, the fabric's face up.
//
//	v = usable width  +-----------------------------~
//	                  |  u -->                       ~   roll
//	v = 0             +-----------------------------~
//	               free end
//
// A ply's angle is the roll direction as it lies in the part, seen from above,
// whichever face is up. A piece of a face-up ply is its strip in the ply frame,
// moved, and turned 0° or 180°. A piece of a face-down ply is the strip
// mirrored across the roll direction (v to -v) first:
//
//	strip in the ply frame          piece on the roll, face up
//	   +--------+                        +-----------+
//	  /         |      face up:         /            |   same
//	 +----------+                      +-------------+
//
//	   +--------+                      +-------------+
//	  /         |      face down:       \            |   mirrored, v to -v
//	 +----------+                        +-----------+
package geometry
