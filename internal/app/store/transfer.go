package store

import (
	"bytes"
	"strings"
	"time"
)

// One garden with all its revisions travels as one plain text file:
//
//	rootbell garden 1
//	name: Fernhollow science room
//	created: 2027-01-11T08:30:00.000Z
//	revisions: 1
//
//	revision: 1
//	at: 2027-01-11T08:30:00.000Z
//	why: begun
//	lines: 2
//	|rootbell: 1
//	|garden: Fernhollow science room
//
//	sha256: (64 hexadecimal digits)
//
// A garden with a logbook is of version 2: 'readings: n' stands under the count
// of revisions, and after the last of these an empty line and n lines
//
//	reading: 2027-01-11T08:40:00.000Z {"id":"…", …}
//
// with the moment at which the row was written down and the row as JSON, in the
// order in which they were written down. A garden without readings is written
// as version 1, which older programs read.
//
// The first line names the format and its version. The heads stand in this
// order and each once; the revisions count from 1, an empty line stands before
// each and before the sum. A line of a plan follows a '|', or a '\' where it is
// the last and has no line end of its own; inside it a backslash is written \\
// and a carriage return \r. Moments are in UTC. The sum is over everything
// before its line. So the same garden always gives the same file, whatever the
// database, and its id stays behind: an imported garden is a new one.
//
// A reader takes lines that end as on Windows and a byte order mark as well,
// because editors and mail make them; everything else must be as it was.
const (
	transferName    = "rootbell garden "
	transferPlan    = "1" // plans alone
	transferLogbook = "2" // and readings
	transferTime    = "2006-01-02T15:04:05.000Z"
	transferSum     = "sha256"
)

// The limits of one garden on its way.
const (
	MostExport    = 64 << 20 // bytes
	mostRevisions = 100_000
	mostReadings  = 1_000_000
)

// letter is one garden on its way.
type letter struct {
	name      string
	created   time.Time
	revisions []Revision
	readings  []Written
}

var byteOrderMark = []byte("\ufeff")

// IsExport tells by its first line whether a file is a garden on its way, of
// whatever version.
func IsExport(text []byte) bool {
	return bytes.HasPrefix(bytes.TrimPrefix(text, byteOrderMark), []byte(transferName))
}

// CheckExport tells what is wrong with a garden on its way, as Import would.
func CheckExport(text []byte) error {
	_, err := parse(text)
	return err
}

var (
	escapes   = strings.NewReplacer(`\`, `\\`, "\r", `\r`)
	unescapes = strings.NewReplacer(`\\`, `\`, `\r`, "\r")
)
