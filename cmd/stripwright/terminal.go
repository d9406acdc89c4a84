package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"stripwright/geometry/length"
)

// terminal says whether a stream is a terminal.
func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0 && os.Getenv("TERM") != "dumb"
}

// painted shows the first line in green or red on a terminal, unless NO_COLOR
// is set; the words say the same.
func (s stream) painted(text string, sound bool) string {
	if !terminal(s.out) || os.Getenv("NO_COLOR") != "" {
		return text
	}
	first, rest, _ := strings.Cut(text, "\n")
	colour := "32"
	if !sound {
		colour = "31"
	}
	return "\x1b[1;" + colour + "m" + first + "\x1b[0m\n" + rest
}

// progressLine shows how a search goes on, on a terminal only.
type progressLine struct {
	to   io.Writer // nil: nowhere
	last time.Time
}

func (s stream) progress() *progressLine {
	if !terminal(s.err) {
		return &progressLine{}
	}
	return &progressLine{to: s.err}
}

// show prints the best found so far and the bound, 0 when there is none yet.
func (l *progressLine) show(best, bound float64) {
	if l.to == nil || time.Since(l.last) < 100*time.Millisecond {
		return
	}
	l.last = time.Now()
	text := "best so far " + length.MM(best)
	if bound > 0 {
		text += ", at least " + length.MM(bound)
	}
	fmt.Fprintf(l.to, "\r\x1b[K%s", text)
}

func (l *progressLine) clear() {
	if l.to != nil && !l.last.IsZero() {
		fmt.Fprint(l.to, "\r\x1b[K")
	}
}
