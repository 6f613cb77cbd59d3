package web

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"slices"
	"strings"
)

//go:embed static templates
var files embed.FS

// styleOrder puts the words of the look first; what belongs to one page follows
// by name.
var styleOrder = []string{"tokens.css", "base.css"}

// Styles that only their own pages load, so that the others stay light.
const (
	paperStyle = "paper.css"
	mixStyle   = "mix.css"
	classStyle = "class.css"

	seasonStyle = "season.css"
	lessonStyle = "lessons.css"
	chooseStyle = "choose.css"
)

// assets are the pages' own style sheet, scripts and icon. Their address holds
// a sum of all of them, so that a browser may keep them for ever and still
// never shows old ones.
type assets struct {
	sum   string
	style []byte
	file  map[string][]byte
}

func readAssets() (*assets, error) {
	a := &assets{file: map[string][]byte{}}
	entries, err := fs.ReadDir(files, "static")
	if err != nil {
		return nil, err
	}
	var styles []string
	hash := sha256.New()
	for _, e := range entries {
		text, err := fs.ReadFile(files, "static/"+e.Name())
		if err != nil {
			return nil, err
		}
		hash.Write(text)
		if path.Ext(e.Name()) == ".css" && e.Name() != paperStyle && e.Name() != mixStyle && e.Name() != seasonStyle && e.Name() != lessonStyle && e.Name() != chooseStyle && e.Name() != troubleStyle && e.Name() != classStyle {
			styles = append(styles, e.Name())
		}
		a.file[e.Name()] = text
	}
	rank := func(name string) int {
		if i := slices.Index(styleOrder, name); i >= 0 {
			return i
		}
		return len(styleOrder)
	}
	slices.SortStableFunc(styles, func(x, y string) int { return rank(x) - rank(y) })
	for _, name := range styles {
		a.style = append(a.style, a.file[name]...)
	}
	a.file["rootbell.css"] = a.style
	a.sum = hex.EncodeToString(hash.Sum(nil))[:12]
	return a, nil
}

// at is the address of one of the files.
func (a *assets) at(name string) string { return "/own/" + a.sum + "/" + name }

func (a *assets) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	text, ok := a.file[r.PathValue("name")]
	if !ok || r.PathValue("sum") != a.sum {
		http.NotFound(w, r)
		return
	}
	kind := mime.TypeByExtension(path.Ext(r.PathValue("name")))
	if strings.HasSuffix(r.PathValue("name"), ".js") {
		kind = "text/javascript; charset=utf-8"
	}
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	_, _ = w.Write(text)
}
