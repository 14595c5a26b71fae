package program

import (
	"os"

	"golang.org/x/sys/windows"
)

// carriesOut makes the console interpret escape sequences, and reports whether it can: consoles before Windows 10 show
// them as letters.
func carriesOut() bool {
	console := windows.Handle(os.Stdout.Fd())
	var mode uint32
	if err := windows.GetConsoleMode(console, &mode); err != nil {
		return false // it is not a console
	}
	return windows.SetConsoleMode(console, mode|windows.ENABLE_PROCESSED_OUTPUT|
		windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING) == nil
}
