//go:build !race

package web_test

import (
	"bufio"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"rootbell/internal/app/store"
	"rootbell/internal/garden/plan"
)

// program is the program itself, as a teacher runs it: it can be killed and
// started again over the same database and at the same address.
type program struct {
	*testing.T
	binary, data, listen string
	base                 string
	running              *exec.Cmd
}

func start(t *testing.T) *program {
	t.Helper()
	folder := t.TempDir()
	p := &program{T: t, binary: filepath.Join(folder, "rootbell"), data: filepath.Join(folder, "gardens.db"), listen: "127.0.0.1:0"}
	if out, err := exec.Command("go", "build", "-o", p.binary, "rootbell/cmd/rootbell").CombinedOutput(); err != nil {
		t.Fatalf("the program does not build: %v\n%s", err, out)
	}
	p.run()
	t.Cleanup(p.kill)
	return p
}

// run starts the program and waits until it says where it is.
func (p *program) run() {
	p.Helper()
	p.running = exec.Command(p.binary, "serve", "--data", p.data, "--listen", p.listen)
	p.running.Stderr = os.Stderr
	out, err := p.running.StdoutPipe()
	if err != nil {
		p.Fatal(err)
	}
	if err := p.running.Start(); err != nil {
		p.Fatal(err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		p.Fatalf("the program says nothing: %v", err)
	}
	p.base = strings.TrimSuffix(strings.TrimSpace(line[strings.Index(line, "http://"):]), "/")
	p.listen = strings.TrimPrefix(p.base, "http://")
}

// kill ends the program as a power cut would.
func (p *program) kill() {
	if p.running == nil {
		return
	}
	_ = p.running.Process.Kill()
	_ = p.running.Wait()
	p.running = nil
}

// saved is a value of the only garden's plan, read from the database while the
// program is down.
func (p *program) saved(path string) string {
	p.Helper()
	st, err := store.Open(context.Background(), p.data, moment)
	if err != nil {
		p.Fatal(err)
	}
	defer func() { _ = st.Close() }()
	gardens, err := st.Gardens(context.Background())
	if err != nil || len(gardens) != 1 {
		p.Fatalf("%d gardens, want one: %v", len(gardens), err)
	}
	rev, err := st.Revision(context.Background(), gardens[0].ID, 0)
	if err != nil {
		p.Fatal(err)
	}
	typed, _, _, _ := plan.Value(rev.Text, path)
	return typed
}

// TestNothingIsLostWhenTheProgramIsKilled kills the program twice in the middle
// of typing: on the first page, and on Build after something was saved.
func TestNothingIsLostWhenTheProgramIsKilled(t *testing.T) {
	p := start(t)
	b := browse(t, p.base)
	b.log.mayHear("net::ERR_")
	b.visit("/")
	b.write("tubs[0].inside.top[0]", "55")
	b.write("tubs[0].inside.top[1]", "37")
	p.kill()
	b.write("tubs[0].inside.height", "26")
	p.run()
	b.visit("/")
	b.until(fieldOf("tubs[0].inside.height") + `.value === "26"`)
	if b.value("tubs[0].inside.top[0]") != "55" || b.value("tubs[0].inside.top[1]") != "37" {
		t.Error("what was typed before the program died did not come back")
	}
	for name, entry := range begun["metric"] {
		if strings.HasPrefix(name, "tubs") && name != "tubs[0].crop" {
			b.write(name, entry[0])
		}
	}
	b.follow("#begin .btn.first")

	b.write("tubs[0].inside.height", "25")
	b.follow("#build .btn.first")
	b.write("tubs[0].inside.height", "24.5")
	p.kill()
	if got := p.saved("tubs[0].inside.height"); got != "25 cm" {
		t.Errorf("saved was 25 cm, after the kill it is %q", got)
	}
	b.write("tubs[0].lid.size[0]", "57.5")
	b.until(`document.getElementById("status").textContent.includes("does not answer")`)
	p.run()
	b.do(chromedp.Reload())
	b.full()
	if got := b.value("tubs[0].inside.height"); got != "24.5" {
		t.Errorf("height came back as %q, want the 24.5 that was typed", got)
	}
	if got := b.value("tubs[0].lid.size[0]"); got != "57.5" {
		t.Errorf("the lid came back as %q, want the 57.5 that was typed", got)
	}
	b.follow("#build .btn.first")
	p.kill()
	if got := p.saved("tubs[0].inside.height") + ", " + p.saved("tubs[0].lid.size[0]"); got != "24.5 cm, 57.5 cm" {
		t.Errorf("in the plan are %s, want 24.5 cm, 57.5 cm", got)
	}
}

func TestAReloadLosesNothingTyped(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/build")
	b.write("tubs[0].inside.height", "25")
	b.follow("#build .btn.first")
	b.write("tubs[0].inside.height", "24")
	b.dragged(1, 50, 0)
	b.full()
	holes := b.holes()
	b.do(chromedp.Reload())
	b.full()
	if got := b.value("tubs[0].inside.height"); got != "24" {
		t.Errorf("height came back as %q", got)
	}
	if now := b.holes(); len(b.fixed()) != 1 || len(now) != len(holes) || !at(holes, now[b.fixed()[0]-1].X, now[b.fixed()[0]-1].Y) {
		t.Errorf("the moved hole did not come back: %v, fixed %v; before %v", now, b.fixed(), holes)
	}
	if got := o.value(id, "tubs[0].inside.height"); got != "25 cm" {
		t.Errorf("what was only typed is in the plan: %q", got)
	}

	b.visit("/g/" + id + "/text")
	b.click("#text")
	b.keys("x")
	typed := ask[string](b, `document.getElementById("text").value`)
	b.do(chromedp.Reload())
	b.settled()
	if got := ask[string](b, `document.getElementById("text").value`); got != typed {
		t.Errorf("the text came back as\n%s\nwant\n%s", got, typed)
	}
}
