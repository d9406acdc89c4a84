package job

import _ "embed"

//go:embed starter.yaml
var starter []byte

// Starter gives a job file with comments to begin with: a deck hatch cover whose
// outline is written in the file, so that it is planned as it is.
func Starter() []byte { return append([]byte{}, starter...) }
