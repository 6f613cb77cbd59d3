package cli

import (
	"fmt"

	"rootbell/internal/garden"
	"rootbell/internal/paper/pack"
	"rootbell/internal/paper/scene"
)

// buildPapers makes every paper of the day of building before any is written;
// the first that fails ends it.
func buildPapers(a *garden.Assessment, size scene.Size) ([]file, error) {
	var files []file
	for _, p := range pack.Build(a) {
		text, err := p.Draw(size)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p.Name, err)
		}
		files = append(files, file{p.Name, text})
	}
	return files, nil
}
