package nest

import (
	"context"
	"os"
	"testing"

	"stripwright/job"
)

func BenchmarkDev(b *testing.B) {
	j, p := job.Read(os.Getenv("JOB"))
	if len(p) > 0 {
		b.Fatal(p)
	}
	for b.Loop() {
		Plan(context.Background(), j, Settings{})
	}
}
