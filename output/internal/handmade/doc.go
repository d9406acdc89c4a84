// Package handmade builds plans for the tests of package output and those
// below: joints are set by hand, strips are cut with a general geometry library
// and pieces are laid on the roll in plain rows. It takes no part in planning.
package handmade
