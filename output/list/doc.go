// Package list writes a plan as text: the summary for a terminal (Summary), the
// cut list (CutList) and the order (Order) as CSV files of RFC 4180, and what the
// laminate is in sections of sentences and tables (Stack, Material).
//
// # Names in CSV
//
// A spreadsheet that opens a CSV file turns 007 into 7, 1.10 into 1.1, 1e5 into
// 100000, 3-4 and 2024-01-02 into dates, and runs what begins with =, +, - or @
// as a formula. So every name that comes from the job stands behind a plain
// word that says what it is: "roll 007", "fabric 1.10", "job =A1". Such a cell
// is text in every spreadsheet; the name itself is what follows the first
// blank, exactly as in the job. Ids of pieces, P03-S02, need no such word.
// Numbers are plain, with a decimal point, without units: the heading names the
// unit.
//
// The package decides nothing and draws nothing.
package list
