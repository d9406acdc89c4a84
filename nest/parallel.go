package nest

import "sync"

// inParallel calls f for 0…n-1 on a number of goroutines. Results must be kept
// by index, so that they do not depend on the number.
func inParallel(workers, n int, f func(int)) {
	next := make(chan int)
	var done sync.WaitGroup
	for range min(workers, n) {
		done.Go(func() {
			for k := range next {
				f(k)
			}
		})
	}
	for k := range n {
		next <- k
	}
	close(next)
	done.Wait()
}
