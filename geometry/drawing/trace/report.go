package trace

import (
	"fmt"
	"sort"
	"strconv"
	"strings"
	"unicode"

	"github.com/paulmach/orb"
)

// Note is something that the reader did and the user should know: reading went
// on.
type Note struct {
	Rule  string `json:"rule"`  // one word: "unit", "gap", "left-out" …
	Where string `json:"where"` // file, and line or place if there is one
	Text  string `json:"text"`
}

// Problem is something that the reader could not take: nothing is laid up from
// the drawing until it is cured.
type Problem struct {
	Rule  string `json:"rule"`
	Where string `json:"where"`
	Text  string `json:"text"`
	Cure  string `json:"cure"`
}

// Error gives the whole sentence: where, what is wrong, and the cure.
func (p Problem) Error() string {
	return fmt.Sprintf("%s: %s: %s — %s", p.Where, p.Rule, p.Text, p.Cure)
}

// Problems and notes of one rule beyond mostOfRule are counted only, and so are
// all beyond mostTold.
const mostOfRule, mostTold = 8, 40

// Report collects what is to be said about one file.
type Report struct {
	File     string // the name used in every place
	Binary   bool   // places are bytes, not lines
	Notes    []Note
	Problems []Problem

	more    map[string]int // findings of each rule beyond the bound
	leftOut map[string]int
}

// Note adds a note about the file as a whole.
func (r *Report) Note(rule, text string, args ...any) {
	same := 0
	for _, n := range r.Notes {
		if n.Rule == rule {
			same++
		}
	}
	if same >= mostOfRule {
		r.count("notes (" + rule + ")")
		return
	}
	r.Notes = append(r.Notes, Note{rule, r.File, fmt.Sprintf(text, args...)})
}

// Problem adds a problem at a place made by Line or At, or r.File.
func (r *Report) Problem(rule, where, cure, text string, args ...any) {
	same := 0
	for _, p := range r.Problems {
		if p.Rule == rule {
			same++
		}
	}
	if same >= mostOfRule || len(r.Problems) >= mostTold {
		r.count("problems (" + rule + ")")
		return
	}
	r.Problems = append(r.Problems, Problem{rule, where, fmt.Sprintf(text, args...), cure})
}

// LeaveOut counts one thing that is never an outline, or is not to be seen.
func (r *Report) LeaveOut(what string) {
	if r.leftOut == nil {
		r.leftOut = map[string]int{}
	}
	what = Printable(what)
	if _, known := r.leftOut[what]; !known && len(r.leftOut) >= 30 {
		what = "of other kinds"
	}
	r.leftOut[what]++
}

// Printable gives a name from a file without control characters and not longer
// than 60 letters, fit for a sentence.
func Printable(s string) string {
	out := []rune{}
	for _, c := range s {
		if len(out) == 60 {
			return string(out) + "…"
		}
		if !unicode.IsPrint(c) {
			c = '?'
		}
		out = append(out, c)
	}
	return string(out)
}

// LeftOut says what was left out and how often, "2 TEXT, 1 DIMENSION", or "".
func (r *Report) LeftOut() string {
	return counted(r.leftOut)
}

// counted lists things with their numbers, in alphabetical order.
func counted(of map[string]int) string {
	var words []string
	for what := range of {
		words = append(words, what)
	}
	sort.Strings(words)
	for i, what := range words {
		words[i] = strconv.Itoa(of[what]) + " " + what
	}
	return strings.Join(words, ", ")
}

// Close adds the note of what was left out and the count of problems beyond
// the bound; call it once, at the end.
func (r *Report) Close() {
	if s := r.LeftOut(); s != "" {
		r.Note("left-out", "left out, never taken for an outline: %s", s)
	}
	if s := counted(r.more); s != "" {
		r.Note("more", "not told one by one: %s", s)
	}
}

func (r *Report) count(what string) {
	if r.more == nil {
		r.more = map[string]int{}
	}
	r.more[what]++
}

// Line names a line of the file, or a byte of a binary one.
func (r *Report) Line(n int) string {
	if r.Binary {
		return fmt.Sprintf("%s: byte %d", r.File, n)
	}
	return fmt.Sprintf("%s:%d", r.File, n)
}

// At names a place in the drawing by its coordinates in mm.
func (r *Report) At(p orb.Point) string { return r.File + ": at " + Place(p) }

// Count prints a number with its word, "1 gap" or "3 gaps".
func Count(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return strconv.Itoa(n) + " " + word
}

// Place prints coordinates to the hundredth of a millimetre: "(350, 12.25)".
func Place(p orb.Point) string { return "(" + Number(p[0]) + ", " + Number(p[1]) + ")" }

// Number prints a length to the hundredth without trailing zeros; a small one
// with three digits that count.
func Number(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	if v != 0 && strings.Trim(s, "-0.") == "" {
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}
