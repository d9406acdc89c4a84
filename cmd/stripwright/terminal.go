package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"

	"stripwright/nest"
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

// progressLine shows how a search goes on, on a terminal only and not before it
// has taken patience.
type progressLine struct {
	to    io.Writer // nil: nowhere
	wait  *time.Timer
	lock  sync.Mutex
	text  string
	due   bool // patience is over
	ended bool
}

// patience is how long a search goes on in silence.
const patience = 500 * time.Millisecond

func (s stream) progress() *progressLine {
	l := &progressLine{text: "searching"}
	if terminal(s.err) {
		l.to = s.err
		l.wait = time.AfterFunc(patience, func() { l.say("") })
	}
	return l
}

// show tells the best found so far, the bound and the gap between them.
func (l *progressLine) show(f nest.Found) { l.say(told(f)) }

// say prints a text once patience is over; an empty one prints the last.
func (l *progressLine) say(text string) {
	l.lock.Lock()
	defer l.lock.Unlock()
	if text == "" {
		l.due = true
	} else {
		l.text = text
	}
	if l.to != nil && l.due && !l.ended {
		fmt.Fprintf(l.to, "\r\x1b[K%s", l.text)
	}
}

// clear takes the line off the screen.
func (l *progressLine) clear() {
	l.lock.Lock()
	defer l.lock.Unlock()
	l.ended = true
	if l.wait != nil {
		l.wait.Stop()
	}
	if l.to != nil && l.due {
		fmt.Fprint(l.to, "\r\x1b[K")
	}
}

// told puts a step of the search into words.
func told(f nest.Found) string {
	gap := fmt.Sprintf("gap %.2f %%", 100*f.Gap())
	if !f.Lengths {
		return fmt.Sprintf("searching: best %.2f, at least %.2f, %s", f.Best, f.Bound, gap)
	}
	return fmt.Sprintf("searching: best %.2f m, at least %.2f m, %s", f.Best/1000, f.Bound/1000, gap)
}
