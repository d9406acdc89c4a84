// Package outline draws what was read from a drawing, true to scale, as it is
// seen there: x to the right, y up. A person lays it beside the drawing on
// screen and sees a wrong unit, a mirrored part, a lost arc or a hole too many.
//
// On the sheet: the regions with their holes, each with its number (as the
// option --which of the command line counts them) when there are several;
// width and height in mm and in inches; the 0° arrow; the corners by the names
// that lay-up sheets give them, A with the datum's pennant; what is kept clear
// of joints, hatched; the layers, notes and problems in words.
//
// The package reads no file and judges nothing. What a job makes of the part
// (seen from the other side, turned, trimmed) is not on the sheet.
package outline
