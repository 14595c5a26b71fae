package program

import (
	"net"
	"os/exec"
	"strings"
	"testing"
)

// ssh-audit lists every offered algorithm with its known weaknesses. It warns of algorithms that are newer than itself,
// which are listed here.
func TestNoWeakAlgorithmIsOffered(t *testing.T) {
	program, err := exec.LookPath("ssh-audit")
	if err != nil {
		t.Skip("no ssh-audit here: install it (Debian: apt-get install ssh-audit)")
	}
	b := startBooth(t)
	host, port, err := net.SplitHostPort(b.addr)
	if err != nil {
		t.Fatal(err)
	}
	// its exit code also counts warnings about unknown algorithms
	out, _ := exec.Command(program, "-n", "-p", port, host).Output()
	young := map[string]bool{
		"mlkem768x25519-sha256":        true, // FIPS 203 and X25519
		"kex-strict-s-v00@openssh.com": true, // not an algorithm: announces protection against dropped messages
	}
	offered := 0
	for line := range strings.Lines(string(out)) {
		kind, rest, named := strings.Cut(line, ") ")
		name, _, _ := strings.Cut(rest, " ")
		switch {
		case strings.Contains(line, "[fail]"), strings.Contains(line, "[warn]") && !(named && young[name] &&
			strings.Contains(rest, "unknown algorithm")):
			t.Errorf("weak: %s", line)
		case kind == "(rec" && strings.HasPrefix(rest, "-"): // its recommendation to remove one
			t.Errorf("weak: %s", line)
		case kind == "(kex" || kind == "(key" || kind == "(enc" || kind == "(mac":
			offered++
		}
	}
	if offered < 8 {
		t.Errorf("only %d algorithms were looked at:\n%s", offered, out)
	}
	t.Logf("%d algorithms:\n%s", offered, out)
}
