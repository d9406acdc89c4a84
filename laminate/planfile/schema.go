package planfile

import _ "embed"

//go:embed plan.schema.json
var schema []byte

// Schema gives the JSON Schema (draft 2020-12) of plan.json. The bytes are a
// copy.
func Schema() []byte { return append([]byte(nil), schema...) }
