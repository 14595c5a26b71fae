package cli

import (
	"os"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// TestMain has maps and pictures drawn coarse: a command is the same whatever the size of what it draws.
func TestMain(m *testing.M) {
	deep.Roomy()
	mapSize, dotsPerInch = calc.CoarseWindow, 30
	os.Exit(m.Run())
}
