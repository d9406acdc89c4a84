package theory

import "math"

// Vec is a triple x, y, xy of strains, curvatures or loads.
type Vec [3]float64

// Mat is a symmetric matrix that turns one triple into another.
type Mat [3][3]float64

// Times gives m·v.
func (m Mat) Times(v Vec) Vec {
	var out Vec
	for i := range m {
		out[i] = float64(m[i][0]*v[0]) + float64(m[i][1]*v[1]) + float64(m[i][2]*v[2])
	}
	return out
}

// plus gives m + f·n.
func (m Mat) plus(n Mat, f float64) Mat {
	for i := range m {
		for j := range m[i] {
			m[i][j] += float64(n[i][j] * f)
		}
	}
	return m
}

func (v Vec) plus(w Vec, f float64) Vec {
	for i := range v {
		v[i] += float64(w[i] * f)
	}
	return v
}

// norm is the root of the sum of squares of the entries of m in the frame in
// which shear strain counts by half, twice in its two places: it does not change
// when the laminate is turned.
func (m Mat) norm() float64 {
	weight := [3]float64{1, 1, math.Sqrt2}
	sum := 0.0
	for i := range m {
		for j := range m[i] {
			e := m[i][j] * weight[i] * weight[j]
			sum += float64(e * e)
		}
	}
	return math.Sqrt(sum)
}

// six is the 6 × 6 stiffness of a laminate: A B over B D.
type six [6][6]float64

func joined(a, b, d Mat) six {
	var s six
	for i := range 3 {
		for j := range 3 {
			s[i][j], s[i][j+3] = a[i][j], b[i][j]
			s[i+3][j], s[i+3][j+3] = b[i][j], d[i][j]
		}
	}
	return s
}

// cholesky gives the lower triangle whose square is s; false where s is not
// positive definite: then there is no such material.
func (s six) cholesky() (l six, ok bool) {
	for i := range 6 {
		for j := 0; j <= i; j++ {
			sum := s[i][j]
			for k := range j {
				sum -= float64(l[i][k] * l[j][k])
			}
			if i == j {
				if !(sum > 1e-14*s[i][i]) || math.IsInf(sum, 0) {
					return l, false
				}
				l[i][i] = math.Sqrt(sum)
				continue
			}
			l[i][j] = sum / l[j][j]
		}
	}
	return l, true
}

// solve gives x of l·lᵀ·x = b.
func (l six) solve(b [6]float64) [6]float64 {
	for i := range 6 {
		for k := range i {
			b[i] -= float64(l[i][k] * b[k])
		}
		b[i] /= l[i][i]
	}
	for i := 5; i >= 0; i-- {
		for k := i + 1; k < 6; k++ {
			b[i] -= float64(l[k][i] * b[k])
		}
		b[i] /= l[i][i]
	}
	return b
}

// inverse gives the inverse of l·lᵀ, column by column.
func (l six) inverse() six {
	var out six
	for j := range 6 {
		var unit [6]float64
		unit[j] = 1
		for i, v := range l.solve(unit) {
			out[i][j] = v
		}
	}
	return out
}
