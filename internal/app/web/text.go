package web

import (
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// textBody is the plan's document itself.
type textBody struct {
	ID       string
	Example  bool
	Base     int
	Text     string
	Problems []plan.Problem
	Lines    []lineView
	Findings []findingView
}

// lineView is one line of the text with its number, for links to a line.
type lineView struct {
	No   int
	Text string
	Bad  bool
}

func (s *Server) showText(w http.ResponseWriter, r *http.Request) {
	o, ok := s.open(w, r)
	if !ok {
		return
	}
	s.textPage(w, r, http.StatusOK, o, string(o.Text), o.Problems)
}

func (s *Server) textPage(w http.ResponseWriter, r *http.Request, status int, o *opened, text string, problems []plan.Problem) {
	body := textBody{ID: o.ID, Example: o.Example, Base: o.Revision.Number, Text: text, Problems: problems}
	bad := map[int]bool{}
	for _, p := range problems {
		bad[p.Line] = true
	}
	for i, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		body.Lines = append(body.Lines, lineView{i + 1, line, bad[i+1]})
	}
	var a *garden.Assessment
	if o.Plan != nil {
		var err error
		if a, err = s.assess(r.Context(), o, lid.Quick); err != nil {
			s.failed(w, r, err)
			return
		}
		for _, f := range a.Findings {
			body.Findings = append(body.Findings, findingView{Finding: f, Level: f.Level.String(), Where: fmt.Sprintf("line %d", f.Line), Address: fmt.Sprintf("#line-%d", f.Line)})
		}
	}
	f := s.frameOf(r, o, a, "text", "Plan as text")
	f.Message = messages[r.URL.Query().Get("said")]
	f.Script = []string{"text.js"}
	s.show(w, status, "text", f, body)
}

// saveText stores the document as it was typed or uploaded. A text with
// problems is shown again with each at its line, and nothing is stored.
func (s *Server) saveText(w http.ResponseWriter, r *http.Request) {
	if strings.HasPrefix(r.PathValue("garden"), examplePrefix) {
		s.readOnly(w, r)
		return
	}
	text, uploaded, err := postedText(r)
	if err != nil {
		s.refuse(w, r, http.StatusRequestEntityTooLarge, "The text was too long or broken, so nothing was read.", "A plan is at most 256 KiB of text. Go back and try again.")
		return
	}
	base, err := strconv.Atoi(r.FormValue("base"))
	if err != nil || base < 1 {
		s.refuse(w, r, http.StatusBadRequest, "This form does not say which plan it began from.", "Open the page again and type it there.")
		return
	}
	o, err := s.garden(r.Context(), r.PathValue("garden"), base, viewing{})
	if err != nil {
		s.failed(w, r, err)
		return
	}
	if _, problems := plan.Parse("plan", []byte(text)); len(problems) > 0 {
		s.textPage(w, r, http.StatusUnprocessableEntity, o, text, problems)
		return
	}
	why := "typed as text"
	if uploaded {
		why = "read from a file"
	}
	if s.save(w, r, o.ID, base, []byte(text), nil, why) {
		http.Redirect(w, r, "/g/"+o.ID+"/text?said=saved", http.StatusSeeOther)
	}
}

// postedText is the text of the form, or of the file that was chosen. A browser
// sends line ends as CR LF.
func postedText(r *http.Request) (text string, uploaded bool, err error) {
	if strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/form-data") {
		if err := r.ParseMultipartForm(mostBytes); err != nil {
			return "", false, err
		}
		if file, _, err := r.FormFile("file"); err == nil {
			b, err := io.ReadAll(file)
			_ = file.Close() // it was only read
			if err != nil {
				return "", false, err
			}
			if len(b) > 0 {
				return string(b), true, nil
			}
		}
	} else if err := r.ParseForm(); err != nil {
		return "", false, err
	}
	return strings.ReplaceAll(r.FormValue("text"), "\r\n", "\n"), false, nil
}

// downloadText is the document as a file.
func (s *Server) downloadText(w http.ResponseWriter, r *http.Request) {
	o, ok := s.open(w, r)
	if !ok {
		return
	}
	w.Header().Set("Content-Type", "application/yaml; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="`+fileName(o.Name)+`.yaml"`)
	_, _ = w.Write(o.Text)
}

// fileName keeps letters and digits of a garden's name.
func fileName(name string) string {
	out := strings.Trim(strings.Map(func(r rune) rune {
		if r < 128 && (r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9') {
			return r
		}
		return '-'
	}, name), "-")
	if out == "" {
		return "garden"
	}
	return out
}
