package docs

import (
	"os/exec"
	"strings"
	"testing"
)

// The systemd unit stays hardened: its exposure is at most 1.5 of 10.
func TestUnitIsHardened(t *testing.T) {
	program, err := exec.LookPath("systemd-analyze")
	if err != nil {
		t.Skip("no systemd-analyze here")
	}
	out, err := exec.Command(program, "security", "--offline=true", "--threshold=15", "--no-pager",
		"brazebooth.service").CombinedOutput()
	if strings.Contains(string(out), "unrecognized option") {
		t.Skip("this systemd-analyze rates no file")
	}
	if err != nil || !strings.Contains(string(out), "Overall exposure level") {
		t.Errorf("%v\n%s", err, out)
	}
}
