package bound

// equilibrium gives the mixture of arguments whose worst answer is best, nearly:
// both sides lean to what they regret not having done (regret matching; Hart and
// Mas-Colell, Econometrica 68, 2000; with regrets that never fall below zero).
func equilibrium(answers [][]float64) []float64 {
	n := len(answers[0])
	ours, theirs := newPlayer(n), newPlayer(len(answers))
	gain, loss := make([]float64, n), make([]float64, len(answers))
	mean := make([]float64, n)
	for step := 1; step <= gameSteps; step++ {
		ours.choose()
		theirs.choose()
		clear(gain)
		value := 0.0
		for j, a := range answers {
			loss[j] = ours.meets(a)
		}
		for _, j := range theirs.held {
			y := theirs.share[j]
			value += float64(y * loss[j])
			for i, v := range answers[j] {
				gain[i] += float64(y * v)
			}
		}
		for _, i := range ours.held {
			mean[i] += float64(float64(step) * ours.share[i])
		}
		ours.held, theirs.held = ours.held[:0], theirs.held[:0]
		for i, r := range ours.regrets {
			ours.regret(i, r+gain[i]-value)
		}
		for j, r := range theirs.regrets {
			theirs.regret(j, r+value-loss[j])
		}
	}
	normal(mean)
	return mean
}

// player is one side of the game.
type player struct {
	regrets []float64
	share   []float64 // of those that are held
	held    []int
}

func newPlayer(n int) *player {
	return &player{regrets: make([]float64, n), share: make([]float64, n), held: make([]int, 0, n)}
}

// choose shares out by the regrets; all have the same share where there are none.
func (p *player) choose() {
	sum := 0.0
	for _, i := range p.held {
		sum += p.regrets[i]
	}
	for _, i := range p.held {
		p.share[i] = p.regrets[i] / sum
	}
	if len(p.held) == 0 {
		for i := range p.share {
			p.share[i] = 1 / float64(len(p.share))
			p.held = append(p.held, i)
		}
	}
}

// meets gives what the shares come to.
func (p *player) meets(values []float64) float64 {
	sum := 0.0
	for _, i := range p.held {
		sum += float64(p.share[i] * values[i])
	}
	return sum
}

// regret sets how much not having played one is regretted, each after the one before.
func (p *player) regret(i int, much float64) {
	p.regrets[i] = max(0, much)
	if much > 0 {
		p.held = append(p.held, i)
	}
}

// normal scales shares so that they add up to one.
func normal(list []float64) {
	sum := 0.0
	for _, v := range list {
		sum += v
	}
	for i, v := range list {
		if sum > 0 {
			list[i] = v / sum
		} else {
			list[i] = 1 / float64(len(list))
		}
	}
}

// even gives so many equal shares.
func even(n int) []float64 {
	out := make([]float64, n)
	normal(out)
	return out
}
