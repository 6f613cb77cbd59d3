// Command schemagen writes plan.schema.json beside the plan's structs and the
// plan's documentation, both from the structs' tags and comments.
//
//	go run rootbell/internal/garden/plan/schemagen DOCS-FILE
package main

import (
	"encoding/json"
	"fmt"
	"os"

	"github.com/invopop/jsonschema"
)

const planPackage = "rootbell/internal/garden/plan"

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "schemagen:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("usage: schemagen DOCS-FILE, in the folder of the plan's package")
	}
	reflector := &jsonschema.Reflector{}
	if err := reflector.AddGoComments(planPackage, "./", jsonschema.WithFullComment()); err != nil {
		return err
	}
	w := &writer{comments: reflector.CommentMap, definitions: jsonschema.Definitions{}}
	text, err := json.MarshalIndent(w.root(), "", "  ")
	if err != nil {
		return err
	}
	if err := os.WriteFile("plan.schema.json", append(text, '\n'), 0o644); err != nil {
		return err
	}
	return os.WriteFile(args[0], []byte(w.documentation()), 0o644)
}
