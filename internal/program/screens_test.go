package program

import (
	"os/exec"
	"testing"
)

// A whole run as a user sees it: the program in a real terminal, keys in, screen out.
func TestThroughATerminal(t *testing.T) {
	for _, folder := range []string{"XDG_DATA_HOME", "XDG_STATE_HOME"} { // the very first start
		t.Setenv(folder, t.TempDir())
	}
	cmd := exec.Command("brazebooth")
	x := inPty(t, cmd, 80, 24)
	x.await("first walk")
	x.write(" ")
	x.await("2 of ")
	x.write("\x03") // the walk is shown once, however it ends
	if code := exitOf(t, cmd.Wait); code != 0 {
		t.Fatalf("the walk ended with %d", code)
	}
	cmd = exec.Command("brazebooth")
	x = inPty(t, cmd, 80, 24)
	x.await("↑↓ pick")
	x.write("\r18")
	x.await(" 18 ga ")
	x.write("\r\r\r")
	x.await("←→ pick")
	x.await("Strike a test bead")
	x.write("+")
	x.await("yours")
	x.write("\r")
	x.await("The edges, nearest first")
	x.write("\x1b")
	x.await("←→ pick")
	x.resize(60, 20)
	x.await("←→ pick")
	x.write("qq")
	if code := exitOf(t, cmd.Wait); code != 0 {
		t.Fatalf("the program ended with %d", code)
	}
}
