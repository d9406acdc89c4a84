package length

// Nearest gives the known word that the fewest edits lead to, or "" when none
// is near: more than a third of the word, or three letters, would have to
// change. An edit is a letter put in, left out, replaced or swapped with its
// neighbour. Of equally near words the first listed wins.
func Nearest(word string, known []string) string {
	best, most := "", min(3, 1+len(word)/3)
	for _, k := range known {
		if d := edits(word, k); d <= most && d < len(k) {
			best, most = k, d-1
		}
	}
	return best
}

// edits is the optimal string alignment distance in bytes.
func edits(a, b string) int {
	if len(a) > 64 || len(b) > 64 {
		return 64
	}
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row := make([]int, len(b)+1)
		row[0] = i
		for j := 1; j <= len(b); j++ {
			same := 1
			if a[i-1] == b[j-1] {
				same = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+same)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
