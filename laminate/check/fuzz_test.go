package check

import (
	"encoding/json"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"stripwright/laminate"
)

// FuzzPlan spoils a good plan's JSON at random places, many at once, and holds
// that judging it never fails and gives the same twice.
func FuzzPlan(f *testing.F) {
	data, err := json.Marshal(lshape(f))
	if err != nil {
		f.Fatal(err)
	}
	for seed := range uint64(40) {
		f.Add(seed, byte(seed%12))
	}
	f.Fuzz(func(t *testing.T, seed uint64, times byte) {
		var doc any
		if err := json.Unmarshal(data, &doc); err != nil {
			t.Fatal(err)
		}
		r := rand.New(rand.NewPCG(seed, 1))
		for range times {
			doc = spoil(r, doc)
		}
		spoiltData, err := json.Marshal(doc)
		if err != nil {
			t.Fatal(err)
		}
		var p laminate.Plan
		if json.Unmarshal(spoiltData, &p) != nil {
			return
		}
		one, two := Plan(p), Plan(p)
		if !reflect.DeepEqual(one, two) {
			t.Fatalf("judged twice:\n%v\n%v", one, two)
		}
	})
}

// spoil changes one value somewhere in a JSON document.
func spoil(r *rand.Rand, v any) any {
	if r.IntN(6) == 0 {
		return other(r, v)
	}
	switch v := v.(type) {
	case map[string]any:
		if k := anyKey(r, v); k != "" {
			v[k] = spoil(r, v[k])
		}
	case []any:
		if n := len(v); n > 0 {
			i := r.IntN(n)
			v[i] = spoil(r, v[i])
		}
	default:
		return other(r, v)
	}
	return v
}

func anyKey(r *rand.Rand, m map[string]any) string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	if len(keys) == 0 {
		return ""
	}
	slices.Sort(keys)
	return keys[r.IntN(len(keys))]
}

// other gives a value of the same kind that differs.
func other(r *rand.Rand, v any) any {
	switch v := v.(type) {
	case float64:
		return []any{0.0, -v, v + 1, v * 1000, 1e300, -1e5, v + 0.004, v + 0.006, float64(int(v))}[r.IntN(9)]
	case string:
		return []string{"", "P01-S01", "P07-S01", "glass", "down", "up", "end", "side", "price", v + "x"}[r.IntN(10)]
	case bool:
		return !v
	case []any:
		return otherList(r, v)
	case map[string]any:
		delete(v, anyKey(r, v))
	}
	return v
}

func otherList(r *rand.Rand, v []any) any {
	switch n := len(v); {
	case n == 0:
		return []any{}
	case r.IntN(3) == 0:
		return v[:r.IntN(n)]
	case r.IntN(2) == 0:
		return append(slices.Clone(v), v[r.IntN(n)])
	}
	r.Shuffle(len(v), func(i, j int) { v[i], v[j] = v[j], v[i] })
	return v
}
