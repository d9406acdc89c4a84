// Package laminate is the trade's model: what a job asks for (Job) and what is
// cut and laid (Plan). A Job is read from a job file, complete and without
// doubt; a Plan is the one record from which every sheet is drawn and which is
// checked by itself.
//
// Lengths are millimetres, areas mm², areal weights g/m², angles degrees.
// Regions of a Job and a Plan lie in the part frame unless said otherwise; see
// package geometry for frames and signs.
//
// The package decides nothing: joints are set by package nest, quantities are
// summed by package order, and the soundness of a plan is judged by package
// check.
package laminate
