package cli

import (
	"os"
	"testing"

	"brazebooth/calc"
)

// TestMain makes maps and pictures coarse, which saves time: the commands are the same for any size.
func TestMain(m *testing.M) {
	mapSize, dotsPerInch = calc.CoarseWindow, 30
	os.Exit(m.Run())
}
