//go:build unix

package lid

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"testing"
	"time"

	"rootbell/internal/base/plane"
)

// peerCases are the ten that are run each time; ROOTBELL_PEER=all takes the
// whole table, a minute or two for each seed. ROOTBELL_SEEDS gives the number
// of seeds, one if not set.
var peerCases = []struct {
	domain string
	n      []int
}{
	{"rect_1_1", []int{10, 13}},
	{"rect_4_3", []int{10, 15}},
	{"rect_3_2", []int{12, 16}},
	{"rect_2_1", []int{13}},
	{"lidA_circle", []int{10, 13}},
	{"lidB_rect", []int{11}},
}

func casesForPeer(tb testing.TB) []spacing {
	all := spacings(tb)
	if os.Getenv("ROOTBELL_PEER") == "all" {
		return all
	}
	return slices.DeleteFunc(all, func(c spacing) bool {
		for _, p := range peerCases {
			if p.domain == c.domain && slices.Contains(p.n, c.n) {
				return false
			}
		}
		return true
	})
}

func seedsForPeer() int {
	if k, err := strconv.Atoi(os.Getenv("ROOTBELL_SEEDS")); err == nil && k > 0 {
		return k
	}
	return 1
}

// peerLimit is how long either side works on a case before it gives up.
const peerLimit = 60 * time.Second

// BenchmarkLidTimeToValue measures how long this search and a general-purpose
// solver take, in processor time, until each first reaches the table's spacing
// within 1e-6. Only the benchmark knows the table; the search's own stopping
// rule does not.
func BenchmarkLidTimeToValue(b *testing.B) {
	python, err := exec.LookPath("/usr/bin/python3")
	if err != nil {
		b.Skip("needs Debian's python3 with scipy")
	}
	cases := casesForPeer(b)
	for b.Loop() {
		var ours, peer []float64
		reached := 0
		for seed := range seedsForPeer() {
			sum := 0.0
			for _, c := range cases {
				s, ok := secondsToValue(b, c, uint64(seed+1))
				sum += s
				if ok {
					reached++
				}
			}
			ours = append(ours, sum)
			peer = append(peer, peerSeconds(b, python, cases, seed+1))
		}
		b.ReportMetric(median(ours), "ours-s")
		b.ReportMetric(median(peer), "peer-s")
		b.ReportMetric(200, "goal")
		b.ReportMetric(float64(reached)/float64(len(cases)*seedsForPeer()), "quality")
	}
}

func median(v []float64) float64 {
	slices.Sort(v)
	return (v[len(v)/2] + v[(len(v)-1)/2]) / 2
}

func secondsToValue(b *testing.B, c spacing, seed uint64) (float64, bool) {
	b.Helper()
	d := domains()[c.domain]
	began := processorSeconds(b)
	r, err := NewRegion(d.bounds, d.keep)
	if err != nil {
		b.Fatal(err)
	}
	s := newSolver(r, c.n, nil, seed)
	wanted := c.d * d.scale * (1 - 1e-6) / s.unit
	ctx, cancel := context.WithTimeout(context.Background(), peerLimit)
	defer cancel()
	if _, err := s.search(ctx, 1_000_000, wanted); err != nil {
		return peerLimit.Seconds(), false
	}
	return processorSeconds(b) - began, true
}

// peerSeconds puts the same cases to the peer and adds up its seconds; a case
// that it did not reach counts with the limit.
func peerSeconds(b *testing.B, python string, cases []spacing, seed int) float64 {
	b.Helper()
	type zone = []any
	type question struct {
		Box    [4]float64 `json:"box"`
		Zones  []zone     `json:"zones"`
		N      int        `json:"n"`
		Target float64    `json:"target"`
	}
	var ask []question
	for _, c := range cases {
		d := domains()[c.domain]
		box := d.region(b).Box()
		q := question{
			Box: [4]float64{box.Min.X, box.Min.Y, box.Max.X, box.Max.Y}, Zones: []zone{},
			N: c.n, Target: c.d * d.scale,
		}
		for _, k := range d.keep {
			switch s := k.Shape.(type) {
			case plane.Circle:
				q.Zones = append(q.Zones, zone{"circle", s.Centre.X, s.Centre.Y, s.Radius + k.Clearance})
			case plane.Rect:
				q.Zones = append(q.Zones, zone{"rect", s.Min.X, s.Min.Y, s.Max.X, s.Max.Y, k.Clearance})
			}
		}
		ask = append(ask, q)
	}
	in, err := json.Marshal(ask)
	if err != nil {
		b.Fatal(err)
	}
	cmd := exec.Command(python, "../../../bench/peers/packing.py", strconv.Itoa(seed), strconv.Itoa(int(peerLimit.Seconds())))
	cmd.Stdin = bytes.NewReader(in)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		b.Skipf("the peer did not run: %v: %s", err, stderr.String())
	}
	var took []*float64
	if err := json.Unmarshal(out, &took); err != nil {
		b.Fatal(err)
	}
	sum := 0.0
	for _, t := range took {
		if t == nil {
			sum += peerLimit.Seconds()
			continue
		}
		sum += *t
	}
	return sum
}
