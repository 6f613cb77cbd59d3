package web

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"rootbell/internal/science/reading"
)

// mostAnswers bounds how often the answers of one form are gone through.
const mostAnswers = 20

// questionMark stands for one question and one way to answer it in a form. It
// holds for these words alone, so that another value is asked about anew.
func questionMark(q reading.Question, way string) string {
	sum := sha256.Sum256([]byte(q.Code + "\n" + q.Text + "\n" + way))
	return hex.EncodeToString(sum[:8])
}

// keepIt is the way to answer that keeps a value as doubtful.
const keepIt = "keep"

// answer applies the answers that came with the form, and leaves the questions
// that are still open in it.
func (f *logForm) answer(row reading.Row, beside reading.Beside) reading.Row {
	given := slices.Concat(f.values["answered"], f.values["answer"])
	for range mostAnswers {
		f.questions = reading.Ask(row, beside)
		next, answered := f.oneAnswer(row, given)
		if !answered {
			return row
		}
		row = next
	}
	return row
}

func (f *logForm) oneAnswer(row reading.Row, given []string) (reading.Row, bool) {
	for _, q := range f.questions {
		if slices.Contains(given, questionMark(q, keepIt)) {
			return q.Keep(row), true
		}
		for _, likely := range q.Likely {
			if slices.Contains(given, questionMark(q, likely.Label)) {
				return likely.Take(row), true
			}
		}
	}
	return row, false
}

// askView is a question at its field.
type askView struct {
	Text, Hint string
	Likely     []markView
	Keep       markView
	Field      string // id of the field to read again
}

// markView is one button of a question.
type markView struct{ Mark, Words string }

// asksAt are the questions about a field of the form.
func (f *logForm) asksAt(name string) []askView {
	var out []askView
	for _, q := range f.questions {
		if fieldNames[q.Field] != name {
			continue
		}
		v := askView{Text: q.Text, Hint: q.Hint, Keep: markView{questionMark(q, keepIt), "Keep it as doubtful"}, Field: "f-" + name}
		for _, likely := range q.Likely {
			v.Likely = append(v.Likely, markView{questionMark(q, likely.Label), "Yes, " + likely.Label})
		}
		out = append(out, v)
	}
	return out
}

// fieldNames are the fields of the form at which a problem or a question about
// a part of a row is told.
var fieldNames = map[reading.Field]string{
	reading.FieldTub: "tub", reading.FieldMoment: "moment", reading.FieldPH: "ph", reading.FieldEC: "ec", reading.FieldWater: "water",
	reading.FieldLevel: "level", reading.FieldAdded: "added", reading.FieldHeight: "height",
	reading.FieldLeaves: "counted", reading.FieldPicked: "picked", reading.FieldWeigh: "weigh",
	"depth": "level", "filled to the line with": "level", "EC of what was added": "added-ec",
	"by": "by", "pH read with": "ph-with", "pH step": "ph-step", "pH calibrated": "ph-calibrated",
	"EC read with": "ec-with", "EC scale": "ec-scale", "EC step": "ec-step", "EC checked": "ec-checked", "EC not at 25 °C": "ec-raw", "calibrated": "ph-calibrated",
	"leaves": "leaves", "roots": "roots", "roots smell": "roots", "seen": "seen", "done": "done", "note": "note",
}
