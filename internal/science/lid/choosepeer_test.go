//go:build unix

package lid

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"os/exec"
	"strconv"
	"testing"

	"rootbell/internal/base/plane"
)

// kits are lids with more holes than their water feeds: a straight one, and
// such whose rows are not quite straight.
var kits = []struct {
	rows, columns, plants int
	pitch, sigma          float64
}{
	{3, 5, 5, 110, 0},
	{3, 5, 6, 110, 0.05},
	{4, 5, 7, 90, 0.08},
	{4, 6, 8, 90, 0.08},
	{5, 6, 10, 90, 0.08},
}

// kitTimes is how often ours is asked, so that its processor time can be read.
const kitTimes = 200

// BenchmarkHoleChoice measures the processor time of this search and of a
// general solver of mixed-integer programs for the same lids. Quality is the
// share of the lids in which both come to the same least distance and ours is
// proved.
func BenchmarkHoleChoice(b *testing.B) {
	python, err := exec.LookPath("/usr/bin/python3")
	if err != nil {
		b.Skip("needs Debian's python3 with scipy")
	}
	type question struct {
		Points [][2]float64 `json:"points"`
		K      int          `json:"k"`
	}
	var ask []question
	var lids [][]plane.Point
	for i, kit := range kits {
		holes := jittered(uint64(i), kit.columns, kit.rows, kit.pitch, kit.sigma)
		q := question{K: kit.plants}
		for _, h := range holes {
			q.Points = append(q.Points, [2]float64{h.X, h.Y})
		}
		ask, lids = append(ask, q), append(lids, holes)
	}
	for b.Loop() {
		ours, same := 0.0, 0
		var found []Chosen
		for i, holes := range lids {
			began := processorSeconds(b)
			var c Chosen
			for range kitTimes {
				if c, err = Choose(context.Background(), holes, kits[i].plants, nil); err != nil {
					b.Fatal(err)
				}
			}
			ours += (processorSeconds(b) - began) / kitTimes
			found = append(found, c)
		}
		peer := 0.0
		for i, answer := range dispersionPeer(b, python, ask) {
			peer += answer.Seconds
			if found[i].Proved && answer.Proved && math.Abs(found[i].Spacing-answer.Spacing) < 1e-4 {
				same++
			}
		}
		b.ReportMetric(ours, "ours-s")
		b.ReportMetric(peer, "peer-s")
		b.ReportMetric(50, "goal")
		b.ReportMetric(float64(same)/float64(len(lids)), "quality")
	}
}

type dispersion struct {
	Spacing, Seconds float64
	Proved           bool
}

func dispersionPeer(b *testing.B, python string, ask any) []dispersion {
	b.Helper()
	in, err := json.Marshal(ask)
	if err != nil {
		b.Fatal(err)
	}
	cmd := exec.Command(python, "../../../bench/peers/dispersion.py", strconv.Itoa(int(peerLimit.Seconds())))
	cmd.Stdin = bytes.NewReader(in)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		b.Skipf("the peer did not run: %v: %s", err, stderr.String())
	}
	var answers []dispersion
	if err := json.Unmarshal(out, &answers); err != nil {
		b.Fatal(err)
	}
	return answers
}

// The lids of the benchmark that are small enough, held against every subset.
func TestTheBenchmarksChoicesAreTheBest(t *testing.T) {
	for i, kit := range kits {
		holes := jittered(uint64(i), kit.columns, kit.rows, kit.pitch, kit.sigma)
		if len(holes) > 20 {
			continue // too many subsets to try them all
		}
		c, err := Choose(context.Background(), holes, kit.plants, nil)
		if err != nil || !c.Proved || math.Abs(c.Spacing-byTrial(holes, kit.plants, nil)) > 1e-9 {
			t.Errorf("kit %d: %+v, %v", i, c, err)
		}
	}
}
