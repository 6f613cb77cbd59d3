package plan

// Site is what there is where the tubs are to stand. Nobody is asked to know it
// by heart: ask is an answer.
type Site struct {
	// Whether there is a socket within reach, so that no extension lead is needed.
	Socket Answer `plan:"socket" words:"yes,no,ask" default:"ask"`
	// Whether that socket is protected by a residual-current device: RCD, or GFCI.
	RCD Answer `plan:"rcd" words:"yes,no,ask" default:"ask"`
	// Whether the school lets the class eat what it grows.
	Kitchen Answer `plan:"kitchen" words:"yes,no,ask" default:"ask"`
}

// Answer is yes, no, or ask: nobody knows yet. The zero value is one left out,
// which counts as ask.
type Answer string

// The answers.
const (
	AnswerYes Answer = "yes"
	AnswerNo  Answer = "no"
	AnswerAsk Answer = "ask"
)

// readText takes true and false too, as a tick does.
func (a *Answer) readText(text string, f Key) error {
	switch text {
	case "true":
		text = string(AnswerYes)
	case "false":
		text = string(AnswerNo)
	}
	word, err := readWord(text, f)
	if err == nil {
		*a = Answer(word)
	}
	return err
}
