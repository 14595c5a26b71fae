package cli

import (
	"os"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// TestMain makes maps and pictures coarse, which saves time: the commands are the same for any size.
func TestMain(m *testing.M) {
	deep.Roomy()
	mapSize, dotsPerInch = calc.CoarseWindow, 30
	os.Exit(m.Run())
}
