package plan

import _ "embed" // the schema

//go:generate go run rootbell/internal/garden/plan/schemagen ../../../docs/plan.md

//go:embed plan.schema.json
var schema string

// Schema is the document format as a JSON Schema (draft 2020-12), generated
// from this package's structs. It lets an editor offer keys and words, and is
// looser than Parse about numbers.
func Schema() string { return schema }
