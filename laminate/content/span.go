package content

// Span is a figure with the least and the most that it may be, which are the
// figure itself where no spread is stated.
type Span struct {
	Value, Low, High float64
}

// Wide says whether there is a spread.
func (s Span) Wide() bool { return s.Low < s.High }

func exact(v float64) Span { return Span{v, v, v} }

func (s Span) plus(t Span) Span {
	return Span{s.Value + t.Value, s.Low + t.Low, s.High + t.High}
}

func (s Span) times(f float64) Span { return Span{s.Value * f, s.Low * f, s.High * f} }

// mapped gives f of a span; a falling f turns its ends.
func (s Span) mapped(f func(float64) float64) Span {
	a, b := f(s.Low), f(s.High)
	return Span{f(s.Value), min(a, b), max(a, b)}
}
