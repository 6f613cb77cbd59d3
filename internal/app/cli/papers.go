package cli

import (
	"fmt"

	"rootbell/internal/paper/pack"
	"rootbell/internal/paper/scene"
)

// stageNames are the stages that have papers.
func stageNames() []string {
	var out []string
	for _, s := range pack.Stages() {
		out = append(out, s.Name)
	}
	return out
}

// stageOf is the stage of a name; false for a word that is none.
func stageOf(name string) (stage pack.Stage, known bool) {
	for _, s := range pack.Stages() {
		if s.Name == name {
			return s, true
		}
	}
	return pack.Stage{}, false
}

// drawn makes every paper before any is written; the first that fails ends it.
func drawn(papers []pack.Paper, size scene.Size) ([]file, error) {
	var files []file
	for _, p := range papers {
		text, err := p.Draw(size)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p.Name, err)
		}
		files = append(files, file{p.Name, text})
	}
	return files, nil
}
